import type { CompressorConfig } from './config/compressor.ts';
import type { CycleConfig } from './config/cycle.ts';
import type { CoreConfig, ExchangerConfig } from './config/exchangers.ts';
import type { HeatSinkConfig, LineConfig, LoopItem, PumpConfig } from './config/loop.ts';

/** What decides the flow in the loop of a car. */
export type LoopConfig = Pick<
  Config,
  'core' | 'exchanger' | 'secondExchanger' | 'heatSink' | 'loop' | 'coolant' | 'lines' | 'pump' | 'secondPump'
>;

/** A flow that was measured, with the coolant and the first pump's voltage at which it was; m3/s, K. */
interface MeasuredFlow {
  readonly flow: number;
  readonly temperature: number;
  readonly voltageRatio: number;
  /** the loop that it was measured on, which stays that one however the car is changed; absent: the car's own */
  readonly on?: LoopConfig;
}

/**
 * What the model is built from: a checked scenario in SI units, deeply read-only.
 *
 * Temperatures in K, pressures absolute in Pa, flows in kg/s (air) or m3/s (coolant), speeds in rpm because the
 * laws of compressor and engine are written in it. Everything past this type may trust it.
 */
export interface Config {
  readonly name: string;
  /** before the first phase; K, Pa, 0 to 1 */
  readonly ambient: { readonly temperature: number; readonly pressure: number; readonly relativeHumidity: number };
  /** closed room round the car: m3, m3/s, J per kg of engine air; absent: the air outside does not change */
  readonly room?: { readonly volume: number; readonly extraction: number; readonly heatPerAir: number };
  /** K; Pa at kg/s, falling with flow squared */
  readonly intake: { readonly pickUp: number; readonly drop: number; readonly dropAtFlow: number };
  /** m3; volumetric efficiency eta_v0 (T/referenceTemperature)^temperatureExponent */
  readonly engine: {
    readonly displacement: number;
    readonly volumetricEfficiency: number;
    readonly referenceTemperature: number;
    readonly temperatureExponent: number;
  };
  readonly compressor: CompressorConfig;
  readonly bypass: {
    readonly throttle: 'upstream' | 'downstream';
    /** share of the recirculated air that is taken behind the plenum, the rest before the core */
    readonly shareAfterCore: number;
    /** Pa at kg/s; the drop goes with flow squared */
    readonly drop: number;
    readonly dropAtFlow: number;
    /** recirculated over engine air with the valve open; 0 in a displacement compressor, whose swept volume sets it */
    readonly recirculation: number;
  };
  /** J/K and W/K */
  readonly casing: {
    readonly heatCapacity: number;
    readonly toDischargeAir: number;
    readonly toBay: number;
    readonly toPlenum: number;
    readonly toCoreFlange: number;
    readonly toOil: number;
  };
  /** J/K and W/K */
  readonly plenum: {
    readonly heatCapacity: number;
    readonly toChargeAir: number;
    readonly toEngine: number;
    readonly toBay: number;
  };
  readonly core: CoreConfig;
  readonly exchanger?: ExchangerConfig;
  readonly secondExchanger?: ExchangerConfig;
  readonly heatSink?: HeatSinkConfig;
  /** in flow order, the reservoir last; each part named is there */
  readonly loop: readonly LoopItem[];
  /** volume share of the glycol before mixing at 20 degC, 0 = water; K; Pa gauge */
  readonly coolant: {
    readonly glycol: 'ethylene' | 'propylene';
    readonly glycolByVolume: number;
    readonly propertiesAt: number;
    readonly capPressure: number;
  };
  /** at most one after each part, in flow order */
  readonly lines: readonly LineConfig[];
  readonly pump: PumpConfig;
  readonly secondPump?: PumpConfig;
  readonly measuredFlow?: MeasuredFlow;
  /** m3, kg, W/K per kg of it, W/K */
  readonly reservoir: {
    readonly coolantVolume: number;
    /** m3 up to the overflow; absent: room for all */
    readonly vesselVolume?: number;
    /** level over the pump's inlet, m */
    readonly heightAbovePump: number;
    /** layers from the bottom up, each mixed; 1 = all of it mixed, as it is with ice */
    readonly layers: number;
    /** where coolant enters and leaves, 0 at the bottom to 1 at the level */
    readonly returnHeight: number;
    readonly drawOffHeight: number;
    readonly iceMass: number;
    readonly meltConductance: number;
    readonly gain: number;
    readonly gainFrom: 'bay' | 'outside';
  };
  /** s at kg/s, s, share 0 to 1 */
  readonly sensor: {
    readonly timeConstantMoving: number;
    readonly atFlow: number;
    readonly timeConstantStill: number;
    readonly airShare: number;
  };
  /** K */
  readonly start: {
    readonly coolant: number;
    readonly reservoir: number;
    readonly metal: number;
    readonly casing: number;
    readonly plenum: number;
    readonly sensor: number;
  };
  /** the shop's own: K, change of spark advance in degrees of crank, change of torque as a share; ascending */
  readonly chargeTable?: readonly {
    readonly chargeTemperature: number;
    readonly spark: number;
    readonly torque: number;
  }[];
  /** true charge temperature that a pull must stay at or under, K */
  readonly limit: { readonly chargeTemperature: number };
  readonly cycle: CycleConfig;
  readonly numerics: {
    /** largest error of a step in any watched cell, K */
    readonly tolerance: number;
    /** longest step in a pull and elsewhere, s */
    readonly longestStepInPull: number;
    readonly longestStep: number;
  };
}
