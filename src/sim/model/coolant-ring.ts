import { type Coolant, createCoolant } from '../fluids/coolant.ts';
import { findRoot } from '../kernels/root-finding.ts';
import { type PhaseConfig, phasesOf } from '../scenario/config/cycle.ts';
import type { LinePlace, LoopItem, LoopPart } from '../scenario/config/loop.ts';
import type { Config } from '../scenario/config.ts';
import type { Stage } from '../solver/stage-system.ts';
import type { Extremes } from './cell-block.ts';
import { Core } from './core.ts';
import { ExchangerRun } from './exchanger-run.ts';
import { LineRun, type LineStretch } from './line-run.ts';
import { CoreResistance, HeatSink, Pump } from './loop-devices.ts';
import type { LoopElement, LoopSurroundings } from './loop-element.ts';
import { freeFlow, solveLoopFlow } from './loop-flow.ts';
import { ParallelWays, type Row, riseOf } from './parallel-ways.ts';

/** What a phase says about the loop. */
export type LoopSetting = Pick<
  PhaseConfig,
  'pumpVoltageRatio' | 'secondPumpVoltageRatio' | 'isExchangerBypassed' | 'isHeatSinkOn'
>;

/** A measured flow may lie this far from the curves: resistance over theirs. */
const LEAST_FACTOR = 1e-3;
const MOST_FACTOR = 1e3;

/**
 * The coolant loop: a ring of parts from the reservoir to the core and on to the reservoir, two ways beside each other
 * where the scenario has them. Parts with metal are blocks of cells; the model keeps the reservoir.
 *
 * Density and heat capacity are constant in a run, so that heat carried in equals heat carried out to rounding;
 * viscosity follows each stretch of line, and with it the flow. A measured flow scales all resistances by one factor,
 * found on the loop that it was measured on.
 */
export class CoolantRing {
  readonly coolant: Coolant;
  readonly density: number;
  readonly heatCapacity: number;
  /** lowest of the run, Pa: it decides when the coolant boils */
  readonly outsidePressure: number;
  /** K at the pressure of the cap */
  readonly boilingPoint: number;
  readonly core: Core;
  readonly exchangers: { exchanger?: ExchangerRun; secondExchanger?: ExchangerRun } = {};
  readonly pumps: { pump?: Pump; secondPump?: Pump } = {};
  readonly heatSink: HeatSink | undefined;
  /** stretches of all lines in flow order */
  readonly stretches: readonly LineStretch[];
  /**
   * what the resistances of the scenario are multiplied by, so that the loop on which a flow was measured meets it;
   * 1 without one; NaN where none meets it, and they stay as they are
   */
  readonly resistanceFactor: number;
  /** elements from the reservoir to the core, and from the core to the reservoir */
  readonly toCore: Row;
  readonly fromCore: Row;
  /** every element once round, the core's resistance among them */
  readonly round: Row;
  /** numbers in the state, counted from 0 */
  readonly size: number;
  /** m3/s */
  flow = 0;
  /** W/K carried round the loop */
  coolantRate = 0;
  /** coolant arriving at the reservoir */
  return = 0;
  private readonly lines: readonly LineRun[];
  private readonly allPumps: readonly Pump[];
  private readonly config: Config;
  private readonly isSmooth: boolean;
  private readonly rise = (flow: number): number => riseOf(this.round, flow);

  constructor(config: Config) {
    this.config = config;
    this.coolant = createCoolant(config.coolant.glycolByVolume, config.coolant.glycol);
    this.density = this.coolant.density(config.coolant.propertiesAt);
    this.heatCapacity = this.coolant.heatCapacity(config.coolant.propertiesAt);
    this.outsidePressure = lowestPressure(config);
    this.boilingPoint = this.coolant.boilingPoint(this.outsidePressure + config.coolant.capPressure);
    const perVolume = this.density * this.heatCapacity;
    this.core = new Core(config.core, 0, perVolume);
    let offset = this.core.size;
    const lines: LineRun[] = [];
    let heatSink: HeatSink | undefined;

    const lineAfter = (place: LinePlace): LoopElement[] => {
      const line = config.lines.find(({ after }) => after === place);
      if (line === undefined) return [];
      const run = new LineRun(line, offset, this.density, perVolume);
      offset += run.size;
      lines.push(run);
      return [run];
    };
    const exchangerAt = (part: 'exchanger' | 'secondExchanger'): LoopElement => {
      const run = new ExchangerRun(given(config[part]), part, offset, this.density, perVolume);
      offset += run.block.size;
      this.exchangers[part] = run;
      return run;
    };
    const pumpAt = (part: 'pump' | 'secondPump'): LoopElement => {
      const pump = new Pump(given(config[part]), part);
      this.pumps[part] = pump;
      return pump;
    };
    const elementAt = (part: LoopPart): LoopElement => {
      if (part === 'exchanger' || part === 'secondExchanger') return exchangerAt(part);
      if (part === 'pump' || part === 'secondPump') return pumpAt(part);
      if (part === 'core') return new CoreResistance(config.core);
      heatSink = new HeatSink(given(config.heatSink));
      return heatSink;
    };
    const withLine = (part: LoopPart): LoopElement[] => [elementAt(part), ...lineAfter(part)];
    let pairs = 0;
    const elementsOf = (item: LoopItem): LoopElement[] => {
      if (typeof item === 'string') return withLine(item);
      const place = pairs++ === 0 ? 'ways' : 'secondWays';
      return [new ParallelWays(item[0].flatMap(withLine), item[1].flatMap(withLine), place), ...lineAfter(place)];
    };

    const { loop } = config;
    const coreAt = loop.indexOf('core');
    this.toCore = [...lineAfter('reservoir'), ...loop.slice(0, coreAt).flatMap(elementsOf)];
    const [coreResistance, ...behind] = withLine('core');
    this.fromCore = [...behind, ...loop.slice(coreAt + 1, -1).flatMap(elementsOf)];
    this.round = [...this.toCore, coreResistance, ...this.fromCore];
    this.heatSink = heatSink;
    this.lines = lines;
    this.stretches = lines.flatMap(({ stretches }) => stretches);
    this.size = offset;
    const { pump, secondPump } = this.pumps;
    this.allPumps = [pump, secondPump].filter((each) => each !== undefined);
    this.isSmooth = this.allPumps.every(({ config: { curve } }) => curve.kind === 'parabola');
    this.resistanceFactor = this.factorOfMeasuredFlow();
    this.scaleResistances(Number.isNaN(this.resistanceFactor) ? 1 : this.resistanceFactor);
  }

  /**
   * Solves the loop flow for the stretches' mean temperatures, found in `scalars` from `first` on. They are guesses:
   * where a step is tried that is far too long they leave the liquid, which no accepted state does.
   */
  setFlow(setting: LoopSetting, scalars: Float64Array, first: number): void {
    const { stretches } = this;
    for (let k = 0; k < stretches.length; k++) stretches[k].viscosity = this.viscosityAt(scalars[first + k]);
    this.set(setting);
    this.flow = this.solvedFlow();
    this.coolantRate = this.flow * this.density * this.heatCapacity;
    for (const element of this.round) element.setFlow(this.flow, this.coolantRate);
  }

  /**
   * Flow with all coolant at one temperature [K], kept within the liquid; sets viscosities and shares of the ways to
   * it. m3/s.
   */
  flowAt(setting: LoopSetting, temperature: number): number {
    for (const stretch of this.stretches) stretch.viscosity = this.viscosityAt(temperature);
    this.set(setting);
    return this.solvedFlow();
  }

  /** Reservoir outlet to core inlet: returns the coolant temperature entering the core. */
  sweepToCore(stage: Stage, reservoir: number, near: LoopSurroundings): number {
    let temperature = reservoir;
    for (const element of this.toCore) temperature = element.sweep(stage, temperature, near);
    return temperature;
  }

  /** Core outlet to the reservoir's inlet. */
  sweepFromCore(stage: Stage, coreOutlet: number, near: LoopSurroundings): void {
    let temperature = coreOutlet;
    for (const element of this.fromCore) temperature = element.sweep(stage, temperature, near);
    this.return = temperature;
  }

  /** The same walk for a known state: all outlets, without solving anything. */
  marchToCore(state: Float64Array, reservoir: number, near: LoopSurroundings): number {
    let temperature = reservoir;
    for (const element of this.toCore) temperature = element.march(state, temperature, near);
    return temperature;
  }

  marchFromCore(state: Float64Array, coreOutlet: number, near: LoopSurroundings): void {
    let temperature = coreOutlet;
    for (const element of this.fromCore) temperature = element.march(state, temperature, near);
    this.return = temperature;
  }

  /** W from the bay into all line walls. */
  get lineHeat(): number {
    let heat = 0;
    for (const line of this.lines) heat += line.heat;
    return heat;
  }

  /** W from the cooling air of all exchangers into their metal (negative while it cools). */
  get exchangerHeat(): number {
    return (this.exchangers.exchanger?.heat ?? 0) + (this.exchangers.secondExchanger?.heat ?? 0);
  }

  /** W of all pumps into the coolant. */
  get pumpHeat(): number {
    return (this.pumps.pump?.heat ?? 0) + (this.pumps.secondPump?.heat ?? 0);
  }

  /** Places of all blocks that the step control watches. */
  watchedPlaces(): Int32Array[] {
    return [...this.core.watchedPlaces(), ...this.round.flatMap(({ watchedPlaces }) => watchedPlaces)];
  }

  watchFronts(state: Float64Array, duration: number): void {
    this.core.watchFront(state, this.coolantRate * duration);
    for (const element of this.round) element.watchFront(state, duration);
  }

  /** Heat stored above `reference` [J]; finds the extremes of the coolant and of the core's metal on the way. */
  survey(state: Float64Array, reference: number, extremes: Extremes): number {
    let heat = 0;
    for (const element of this.round) heat += element.survey(state, reference, extremes);
    // Only the core's metal is asked for.
    extremes.coldestMetal = Number.POSITIVE_INFINITY;
    return heat + this.core.survey(state, reference, extremes);
  }

  /** The first part, from the core on, that holds coolant of just this temperature; in words. */
  placeOf(state: Float64Array, temperature: number): string {
    if (this.core.holdsCoolantAt(state, temperature)) return 'in the core';
    const places = [...this.fromCore, ...this.toCore].map((element) => element.placeOf(state, temperature));
    return places.find((place) => place !== '') ?? '';
  }

  /** Of the liquid: beyond its ends the nearer of them counts. */
  private viscosityAt(temperature: number): number {
    return this.coolant.viscosity(Math.min(this.boilingPoint, Math.max(this.coolant.freezingPoint, temperature)));
  }

  private set({ pumpVoltageRatio, secondPumpVoltageRatio, isExchangerBypassed, isHeatSinkOn }: LoopSetting): void {
    const { pump, secondPump } = this.pumps;
    const { exchanger, secondExchanger } = this.exchangers;
    if (pump) pump.voltageRatio = pumpVoltageRatio;
    if (secondPump) secondPump.voltageRatio = secondPumpVoltageRatio;
    if (exchanger) exchanger.isBypassed = isExchangerBypassed;
    if (secondExchanger) secondExchanger.isBypassed = isExchangerBypassed;
    if (this.heatSink) this.heatSink.isOn = isHeatSinkOn;
  }

  private solvedFlow(): number {
    let most = 0;
    for (const { config, voltageRatio } of this.allPumps) most += freeFlow(config, voltageRatio);
    return most === 0 ? 0 : solveLoopFlow(this.rise, most, this.flow, this.isSmooth);
  }

  private scaleResistances(factor: number): void {
    for (const element of this.round) element.scaleResistance(factor);
  }

  /** Leaves the resistances as they were. */
  private factorOfMeasuredFlow(): number {
    const { measuredFlow } = this.config;
    if (measuredFlow === undefined) return 1;
    if (measuredFlow.on !== undefined) return new CoolantRing(asMeasured(this.config)).resistanceFactor;
    const { flow, temperature, voltageRatio } = measuredFlow;
    for (const stretch of this.stretches) stretch.viscosity = this.coolant.viscosity(temperature);
    this.set(meterSetting(voltageRatio));
    let factor = 1;
    const scaleTo = (next: number): void => {
      this.scaleResistances(next / factor);
      factor = next;
    };
    const found = findRoot(
      (logarithm) => {
        scaleTo(Math.exp(logarithm));
        return this.rise(flow);
      },
      Math.log(LEAST_FACTOR),
      Math.log(MOST_FACTOR),
      1e-12,
      0,
    );
    scaleTo(1);
    return Math.exp(found);
  }
}

/** The car with the loop on which its flow was measured. */
export function asMeasured(config: Config): Config {
  if (config.measuredFlow === undefined) return config;
  const { on, ...measuredFlow } = config.measuredFlow;
  return { ...config, ...on, measuredFlow };
}

/** The loop as a flow meter reads it: every pump at the voltage of the measurement, every way open. */
export function meterSetting(voltageRatio: number): LoopSetting {
  return {
    pumpVoltageRatio: voltageRatio,
    secondPumpVoltageRatio: voltageRatio,
    isExchangerBypassed: false,
    isHeatSinkOn: true,
  };
}

/** A part that the loop names stands in the configuration. */
function given<Part>(part: Part | undefined): Part {
  if (part === undefined) throw new Error('the loop names a part that the configuration lacks');
  return part;
}

/** Lowest pressure outside in the whole cycle [Pa]. */
export function lowestPressure({ ambient, cycle }: Config): number {
  return Math.min(ambient.pressure, ...phasesOf(cycle).flatMap(({ outsidePressure: { from, to } }) => [from, to]));
}
