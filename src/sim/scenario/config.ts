import type { CoreShape } from '../correlations/core-geometry.ts';

/**
 * What the model is built from: a checked scenario in SI units, deeply read-only.
 *
 * Temperatures in K, pressures absolute in Pa, flows in kg/s (air) or m3/s (coolant), speeds in rpm because the
 * laws of compressor and engine are written in it. Everything past this type may trust it.
 */

/** `reference * (flow / atFlow) ^ exponent`; on the coolant side never below `floor * reference`. */
interface ConductancePower {
  readonly kind: 'power';
  /** W/K at `atFlow` */
  readonly reference: number;
  /** kg/s */
  readonly atFlow: number;
  readonly exponent: number;
  /** share of `reference` that remains without flow, 0 to 1; 0 on the air side */
  readonly floor: number;
}

/** A curve through points, straight between them in logarithms, its end slopes held beyond; never below `floor`. */
interface ConductanceTable {
  readonly kind: 'table';
  /** kg/s, ascending, at least two */
  readonly flow: readonly number[];
  /** W/K */
  readonly value: readonly number[];
  /** W/K that remain without flow */
  readonly floor: number;
}

export type ConductanceLaw = ConductancePower | ConductanceTable;

/** Air drop of the core; Pa, kg/s, kg/m3. */
export type AirDropLaw =
  /** drop (m/atFlow)^exponent (atDensity/rho) */
  | {
      readonly kind: 'power';
      readonly drop: number;
      readonly atFlow: number;
      readonly atDensity: number;
      readonly exponent: number;
    }
  /** ( curve(m) + acceleration m^2 (T_out - T_in)/T_mean )/rho, the curve as in a table of conductance */
  | {
      readonly kind: 'table';
      /** kg/s, ascending, at least two */
      readonly flow: readonly number[];
      /** Pa kg/m3 at constant density; all 0 in a core without drop */
      readonly dropTimesDensity: readonly number[];
      /** 1/m4: air that cools slows down and regains pressure */
      readonly acceleration: number;
    };

/** Cores and exchangers by a factor: the coolant's drop goes with this power of the flow. */
export const COOLANT_DROP_EXPONENT = 1.8;

/** Coolant drop of one exchanger: factor Q^1.8, Pa at 1 m3/s; or a curve as in a table of conductance, m3/s and Pa. */
export type CoolantDropLaw =
  | { readonly kind: 'power'; readonly factor: number }
  | { readonly kind: 'table'; readonly flow: readonly number[]; readonly drop: readonly number[] };

/** One straight stretch of coolant line: round bore, its bends, and the losses it adds. */
export interface LineSegment {
  /** m */
  readonly length: number;
  /** m */
  readonly bore: number;
  /** sum of loss coefficients on this bore: bends, fittings, and the change of bore into this segment */
  readonly lossCoefficient: number;
}

export interface LineConfig {
  readonly after: LinePlace;
  readonly segments: readonly LineSegment[];
  /** m */
  readonly roughness: number;
  /** coolant to wall, W/(m K) */
  readonly coolantToWall: number;
  /** wall to bay air, W/(m K) */
  readonly wallToBay: number;
  /** J/(m K) */
  readonly wallHeatCapacity: number;
}

/** Parts that the coolant can go through, each once at most. */
export const LOOP_PARTS = [
  'pump',
  'core',
  'exchanger',
  'reservoir',
  'secondPump',
  'secondExchanger',
  'heatSink',
] as const;
export type LoopPart = (typeof LOOP_PARTS)[number];
/** What a line leaves: a part, or the place where the first or the second pair of ways comes together. */
export const LINE_PLACES = [...LOOP_PARTS, 'ways', 'secondWays'] as const;
export type LinePlace = (typeof LINE_PLACES)[number];
/** as sentences name them */
export const PART_WORDS: Readonly<Record<LinePlace, string>> = {
  pump: 'pump',
  core: 'core',
  exchanger: 'front exchanger',
  reservoir: 'tank',
  secondPump: 'second pump',
  secondExchanger: 'second exchanger',
  heatSink: 'heat sink',
  ways: 'two ways',
  secondWays: 'second two ways',
};
/** One of two ways beside each other, its parts in flow order; at least one. */
export type LoopWay = readonly LoopPart[];
/** A part, or two ways between which the coolant divides. */
export type LoopItem = LoopPart | readonly [LoopWay, LoopWay];

interface CompressorLosses {
  readonly quoted: {
    readonly efficiency: number;
    /** rpm of the compressor */
    readonly speed: number;
    readonly pressureRatio: number;
    /** K */
    readonly inletTemperature: number;
    /** Pa */
    readonly inletPressure: number;
  };
  /** W_idle = power (rpm / speed)^exponent (p1 / 100 kPa) */
  readonly idlePower: { readonly power: number; readonly speed: number; readonly exponent: number };
  /** W_mech = power (rpm / idlePower.speed)^exponent; `toCasing` of it warms the casing, the rest leaves with the oil */
  readonly mechanicalLoss: { readonly power: number; readonly exponent: number; readonly toCasing: number };
}

export interface DisplacementConfig extends CompressorLosses {
  readonly kind: 'displacement';
  /** m3 per compressor revolution */
  readonly sweptVolume: number;
  /** compressor revolutions per engine revolution */
  readonly driveRatio: number;
  /** volumetric efficiency is 1 - leak (PR - 1) / (rpm / 1000) */
  readonly leak: number;
  /** absent: isentropic work over one inner efficiency; 1 = external compression */
  readonly builtInVolumeRatio?: number;
  /** Pa that a controlled bypass holds in a pull; absent: it floats */
  readonly targetManifoldPressure?: number;
}

interface ByHead extends CompressorLosses {
  readonly quoted: CompressorLosses['quoted'] & {
    /** kg/s */
    readonly flow: number;
  };
  /** one boost that the machine is known to make; Pa, rpm, K, Pa */
  readonly typedBoost: {
    readonly outletPressure: number;
    readonly speed: number;
    readonly inletTemperature: number;
    readonly inletPressure: number;
  };
}

export interface CentrifugalConfig extends ByHead {
  readonly kind: 'centrifugal';
  /** compressor revolutions per engine revolution */
  readonly driveRatio: number;
}

export interface TurbineDrivenConfig extends ByHead {
  readonly kind: 'turbine-driven';
  /** rpm; at this speed the target is given up */
  readonly highestSpeed: number;
  /** Pa, held in a pull */
  readonly targetManifoldPressure: number;
}

export type CompressorConfig = DisplacementConfig | CentrifugalConfig | TurbineDrivenConfig;

/** Manifold pressure that is held in a pull, by a bypass or by a turbine [Pa]; undefined where it floats. */
export const heldPressure = (compressor: CompressorConfig): number | undefined =>
  compressor.kind === 'centrifugal' ? undefined : compressor.targetManifoldPressure;

/** A core described by its measures, and all that its laws follow from. SI. */
export interface CoreGeometryConfig {
  readonly shape: CoreShape;
  /** ports at the same end of the stack (U) or at opposite ends (Z) */
  readonly arrangement: 'U' | 'Z';
  /** groups of neighbouring layers that get their own share of the coolant */
  readonly sheets: number;
  /** what the scenario can reach, lowest and highest: kg/s of charge air, m3/s of coolant */
  readonly airFlows: readonly [number, number];
  readonly coolantFlows: readonly [number, number];
  /** where properties are taken, K */
  readonly airTemperature: number;
  readonly coolantTemperature: number;
  readonly air: { readonly heatCapacity: number; readonly viscosity: number; readonly conductivity: number };
  readonly coolant: {
    readonly density: number;
    readonly heatCapacity: number;
    readonly viscosity: number;
    readonly conductivity: number;
  };
  /** what is typed over what the geometry gives; 1 where nothing is typed */
  readonly factors: Readonly<Record<GeometryFactor, number>>;
  /** Pa at 1 m3/s with flow^1.8, typed: stands in place of the three drops of the geometry */
  readonly coolantDropFactor?: number;
  /** share of the face that the opening leaves to the air */
  readonly exposedShare: number;
}

/** What a measured point may scale. */
export type GeometryFactor =
  | 'airConductance'
  | 'coolantConductance'
  | 'airDrop'
  | 'metalHeatCapacity'
  | 'coolantVolume';

/** What the scenario says about one cross-flow exchanger (core or front exchanger), metal and both sides. */
export interface CellBlockConfig {
  readonly airConductance: ConductanceLaw;
  readonly coolantConductance: ConductanceLaw;
  /** J/K of the whole metal */
  readonly metalHeatCapacity: number;
  /** m3 */
  readonly coolantVolume: number;
  readonly coolantDrop: CoolantDropLaw;
  readonly cellsAlongAir: number;
  readonly cellsAlongCoolant: number;
}

/** Passes, sheets and cores; shares of sheets add up to 1 each. */
export interface CoreLayout {
  readonly passes: 1 | 2;
  /** two passes: whether the coolant enters where the air leaves */
  readonly isCounter: boolean;
  /** coolant that mixes where it turns round, m3 */
  readonly turnVolume: number;
  /** groups of layers that get like coolant: share of the layers, share of the coolant */
  readonly sheets: readonly { readonly layers: number; readonly flow: number }[];
  /** cores beside each other in the air: one after the other in the coolant, or beside each other there too */
  readonly inSeries: 1 | 2;
  readonly sideBySide: 1 | 2;
  /** air velocity along the coolant over its mean, a value for each column of cells; absent: even */
  readonly airVelocity?: readonly number[];
}

export interface CoreConfig extends CellBlockConfig {
  readonly airDrop: AirDropLaw;
  /** absent: the core is given by test points */
  readonly geometry?: CoreGeometryConfig;
  /** where a law of the geometry goes beyond what it was published for, or is scaled to a measured point; in words */
  readonly marks: readonly string[];
  /** W/K, metal to bay air, spread evenly */
  readonly toBay: number;
  /** share of the air that passes the core without touching it, 0 to below 1 */
  readonly leakPast: number;
  /** narrowest air passage between compressor outlet and plenum, m2; absent: its Mach number is not looked at */
  readonly airPortArea?: number;
  readonly layout: CoreLayout;
  /** whether vapour condenses on metal below the charge's dew point */
  readonly condensation: boolean;
}

export interface ExchangerConfig extends CellBlockConfig {
  /** m2 */
  readonly faceArea: number;
}

export interface PumpConfig {
  /** head [Pa] against flow [m3/s] at voltage ratio 1: a parabola H0 (1 - (Q/Q0)^2), or straight lines through points */
  readonly curve:
    | { readonly kind: 'parabola'; readonly shutOffPressure: number; readonly freeFlow: number }
    | { readonly kind: 'points'; readonly flow: readonly number[]; readonly pressure: readonly number[] };
  /** W at voltage ratio 1 */
  readonly electricalPower: number;
  /** share of the electrical power that ends in the coolant, 0 to 1 */
  readonly shareIntoCoolant: number;
  /** Pa above vapour pressure at its inlet, below which it cavitates */
  readonly suctionNeeded: number;
  /** V at the pump for its curve, ohm of both wires; absent: its voltage is given as a ratio */
  readonly wiring?: { readonly ratedVoltage: number; readonly resistance: number };
}

/** Heat that an extra sink draws from coolant leaving it at a temperature, straight between points; W, K, both rising. */
export interface HeatSinkConfig {
  readonly temperature: readonly number[];
  readonly heat: readonly number[];
}

export const PHASE_KINDS = ['idle', 'cruise', 'pull', 'cooldown', 'hot soak'] as const;
export type PhaseKind = (typeof PHASE_KINDS)[number];

/** Engine running with the bypass open. */
export const isPartLoad = (kind: PhaseKind): boolean => kind !== 'pull' && kind !== 'hot soak';

/** Start and end value of a quantity that runs linearly through a phase. */
export interface Ramp {
  readonly from: number;
  readonly to: number;
}

export interface ExchangerAirConfig {
  /** m/s at the face */
  readonly speed: Ramp;
  /** K added to the air around the car by what stands before it */
  readonly pickUp: Ramp;
}

export interface PhaseConfig {
  readonly name: string;
  /** pull: wide open, valve closed. hot soak: engine off. The others: part load, valve open, manifold pressure given */
  readonly kind: PhaseKind;
  /** s */
  readonly duration: number;
  /** rpm; 0 in a hot soak */
  readonly engineSpeed: Ramp;
  /** Pa; only part load uses it */
  readonly manifoldPressure: Ramp;
  /** air at the exchanger, and at the second */
  readonly exchangerAir: ExchangerAirConfig;
  readonly secondExchangerAir: ExchangerAirConfig;
  /** whether the coolant passes by the exchangers */
  readonly isExchangerBypassed: boolean;
  readonly isHeatSinkOn: boolean;
  /** K; Pa; 0 to 1 */
  readonly outsideTemperature: Ramp;
  readonly outsidePressure: Ramp;
  readonly relativeHumidity: number;
  /** K above the air around the car */
  readonly bayAboveOutside: number;
  /** K */
  readonly engineMetalTemperature: number;
  /** K */
  readonly oilTemperature: number;
  /** voltage at the pump over its rated voltage; 0 = pump off */
  readonly pumpVoltageRatio: number;
  readonly secondPumpVoltageRatio: number;
  /** V at the battery, where the ratios follow from it */
  readonly supplyVoltage?: number;
}

export interface CycleConfig {
  readonly before: readonly PhaseConfig[];
  readonly block: readonly PhaseConfig[];
  readonly repeats: number;
  readonly after: readonly PhaseConfig[];
}

/** Every phase of a cycle in order, those of the repeated block once. */
export function phasesOf({ before, block, after }: CycleConfig): PhaseConfig[] {
  return [...before, ...block, ...after];
}

/** How many of some phases are pulls. */
export const pullsIn = (phases: readonly PhaseConfig[]): number => phases.filter(({ kind }) => kind === 'pull').length;

/** Pulls of a whole cycle, those of the repeated block as often as it is repeated. */
export function pullsOfCycle({ before, block, repeats, after }: CycleConfig): number {
  return pullsIn(before) + repeats * pullsIn(block) + pullsIn(after);
}

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
    /** recirculated over engine air with the valve open; 0 in a displacement machine, whose swept volume sets it */
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
