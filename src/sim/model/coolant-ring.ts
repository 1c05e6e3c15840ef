import { type Coolant, createCoolant } from '../fluids/coolant.ts';
import { AIR_GAS_CONSTANT, AIR_HEAT_CAPACITY } from '../fluids/moist-air.ts';
import type { CellBlockConfig, Config, CoolantDropLaw, LineConfig } from '../scenario/config.ts';
import type { Stage } from '../solver/stage-system.ts';
import { type BlockRates, CellBlock, type Extremes } from './cell-block.ts';
import { conductanceAt } from './conductance.ts';
import { Core } from './core.ts';
import { type FlowResistance, solveLoopFlow } from './loop-flow.ts';

/** One line cell is at most this long [m]; a stretch has at least {@link FEWEST_LINE_CELLS}. */
const LINE_CELL_LENGTH = 0.07;
const FEWEST_LINE_CELLS = 4;

/** Air at the front exchanger's face in one instant. */
export interface ExchangerAir {
  /** m/s */
  speed: number;
  /** K */
  temperature: number;
  /** Pa */
  pressure: number;
}

/** One stretch of line of one bore: a row of cells, wall beside coolant. */
export interface LineStretch {
  readonly block: CellBlock;
  readonly rates: BlockRates;
  readonly coolantConductance: number;
  readonly wallToBay: number;
  /** m3 and m */
  readonly volume: number;
  readonly length: number;
}

/**
 * The coolant loop in flow order: reservoir -> line -> pump -> line -> core -> line -> front exchanger -> line ->
 * reservoir, or without an exchanger from the core by one line to the reservoir. Parts with metal are blocks of cells; the reservoir is one mixed volume that the model keeps.
 *
 * Density and heat capacity are constant in a run, so that heat carried in equals heat carried out to rounding;
 * viscosity follows each stretch of line, and with it the flow.
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
  readonly exchanger?: CellBlock;
  /** stretches of all four lines in flow order */
  readonly stretches: readonly LineStretch[];
  /** numbers in the state, counted from `offset` */
  readonly size: number;
  /** m3/s */
  flow = 0;
  /** W/K carried round the loop */
  coolantRate = 0;
  /** W into the coolant at the pump */
  pumpHeat = 0;
  /** coolant arriving at the reservoir */
  return = 0;
  /** W from the bay into all line walls, after {@link sweepFromCore} */
  lineHeat = 0;
  exchangerAirRate = 0;
  exchangerAirIn = 0;
  private readonly config: Config;
  private readonly resistances: readonly FlowResistance[];
  private readonly viscosities: Float64Array;
  private readonly dropFactor: number;
  private readonly dropCurves: readonly CoolantDropLaw[];
  private readonly exchangerRates = emptyRates();
  /** index of the first stretch of each line */
  private readonly firstStretch: readonly number[];

  constructor(config: Config) {
    this.config = config;
    this.coolant = createCoolant(config.coolant.glycolByVolume, config.coolant.glycol);
    this.density = this.coolant.density(config.coolant.propertiesAt);
    this.heatCapacity = this.coolant.heatCapacity(config.coolant.propertiesAt);
    this.outsidePressure = lowestPressure(config);
    this.boilingPoint = this.coolant.boilingPoint(this.outsidePressure + config.coolant.capPressure);
    let offset = 0;
    const place = (nx: number, ny: number, metal: number, volume: number) => {
      const block = new CellBlock(nx, ny, offset, metal, volume * this.density * this.heatCapacity);
      offset += block.size;
      return block;
    };
    const placePart = (part: CellBlockConfig) =>
      place(part.cellsAlongAir, part.cellsAlongCoolant, part.metalHeatCapacity, part.coolantVolume);
    this.core = new Core(config.core, offset, this.density * this.heatCapacity);
    offset += this.core.size;
    if (config.exchanger) this.exchanger = placePart(config.exchanger);
    const stretches: LineStretch[] = [];
    const resistances: FlowResistance[] = [];
    const firstStretch: number[] = [];
    for (const line of config.lines) {
      firstStretch.push(stretches.length);
      for (const segment of line.segments) {
        const cells = Math.max(FEWEST_LINE_CELLS, Math.ceil(segment.length / LINE_CELL_LENGTH));
        const volume = (Math.PI / 4) * segment.bore ** 2 * segment.length;
        const block = place(1, cells, line.wallHeatCapacity * segment.length, volume);
        stretches.push(makeStretch(block, line, segment.length, volume));
        resistances.push({ ...segment, roughness: line.roughness });
      }
    }
    firstStretch.push(stretches.length);
    this.stretches = stretches;
    this.resistances = resistances;
    this.firstStretch = firstStretch;
    this.viscosities = new Float64Array(stretches.length);
    const drops = [config.core.coolantDrop, ...(config.exchanger ? [config.exchanger.coolantDrop] : [])];
    this.dropFactor = drops.reduce((sum, law) => sum + (law.kind === 'power' ? law.factor : 0), 0);
    this.dropCurves = drops.filter(({ kind }) => kind === 'table');
    this.size = offset;
  }

  /**
   * Solves the loop flow for the stretches' mean temperatures, found in `scalars` from `first` on. They are guesses:
   * where a step is tried that is far too long they leave the liquid, which no accepted state does.
   */
  setFlow(voltageRatio: number, scalars: Float64Array, first: number): void {
    const { coolant, boilingPoint } = this;
    for (let k = 0; k < this.viscosities.length; k++) {
      const temperature = Math.min(boilingPoint, Math.max(coolant.freezingPoint, scalars[first + k]));
      this.viscosities[k] = coolant.viscosity(temperature);
    }
    const { pump } = this.config;
    const { resistances, viscosities, density, dropFactor, flow, dropCurves } = this;
    this.flow = solveLoopFlow(pump, voltageRatio, resistances, viscosities, density, dropFactor, flow, dropCurves);
    this.coolantRate = this.flow * density * this.heatCapacity;
    // Electrical power goes with voltage times current, and the speed of the pump with both.
    this.pumpHeat = this.flow > 0 ? pump.electricalPower * pump.shareIntoCoolant * voltageRatio ** 3 : 0;
  }

  /** Reservoir outlet to core inlet: returns the coolant temperature entering the core. */
  sweepToCore(stage: Stage, reservoir: number, bay: number): number {
    this.lineHeat = 0;
    let temperature = this.sweepLine(this.config.lines.length - 1, stage, reservoir, bay);
    if (this.coolantRate > 0) temperature += this.pumpHeat / this.coolantRate;
    return this.sweepLine(0, stage, temperature, bay);
  }

  /** Core outlet to the reservoir's inlet. */
  sweepFromCore(stage: Stage, coreOutlet: number, air: ExchangerAir, bay: number): void {
    const temperature = this.sweepLine(1, stage, coreOutlet, bay);
    const { exchanger, config } = this;
    this.return = temperature;
    if (exchanger === undefined || config.exchanger === undefined) return;
    this.setExchangerRates(config.exchanger, air);
    exchanger.sweep(this.exchangerRates, stage, this.exchangerAirIn, temperature);
    this.return = this.sweepLine(2, stage, exchanger.coolantOut, bay);
  }

  /** The same walk for a known state: all outlets, without solving anything. */
  marchToCore(state: Float64Array, reservoir: number, bay: number): number {
    this.lineHeat = 0;
    let temperature = this.marchLine(this.config.lines.length - 1, state, reservoir, bay);
    if (this.coolantRate > 0) temperature += this.pumpHeat / this.coolantRate;
    return this.marchLine(0, state, temperature, bay);
  }

  marchFromCore(state: Float64Array, coreOutlet: number, air: ExchangerAir, bay: number): void {
    const temperature = this.marchLine(1, state, coreOutlet, bay);
    const { exchanger, config } = this;
    this.return = temperature;
    if (exchanger === undefined || config.exchanger === undefined) return;
    this.setExchangerRates(config.exchanger, air);
    exchanger.march(this.exchangerRates, state, this.exchangerAirIn, temperature);
    this.return = this.marchLine(2, state, exchanger.coolantOut, bay);
  }

  /** W from the exchanger's cooling air into its metal (negative while it cools). */
  get exchangerHeat(): number {
    return this.exchanger === undefined ? 0 : this.exchangerAirRate * (this.exchangerAirIn - this.exchanger.airOut);
  }

  /** Places of all blocks that the step control watches. */
  watchedPlaces(): Int32Array[] {
    const blocks = [...(this.exchanger ? [this.exchanger] : []), ...this.stretches.map(({ block }) => block)];
    return [...this.core.watchedPlaces(), ...blocks.map((block) => block.watchedPlaces())];
  }

  watchFronts(state: Float64Array, duration: number): void {
    const passed = this.coolantRate * duration;
    this.core.watchFront(state, passed);
    this.exchanger?.watchFront(state, passed);
    for (const { block } of this.stretches) block.watchFront(state, passed);
  }

  /** Heat stored above `reference` [J]; finds the extremes of the coolant and of the core's metal on the way. */
  survey(state: Float64Array, reference: number, extremes: Extremes): number {
    let heat = this.exchanger?.survey(state, reference, extremes) ?? 0;
    for (const { block } of this.stretches) heat += block.survey(state, reference, extremes);
    // Only the core's metal is asked for.
    extremes.coldestMetal = Number.POSITIVE_INFINITY;
    return heat + this.core.survey(state, reference, extremes);
  }

  /** The first part, from the core on, that holds coolant of just this temperature; in words. */
  placeOf(state: Float64Array, temperature: number): string {
    if (this.core.holdsCoolantAt(state, temperature)) return 'in the core';
    if (this.exchanger?.holdsCoolantAt(state, temperature)) return 'in the front exchanger';
    const stretch = this.stretches.findIndex(({ block }) => block.holdsCoolantAt(state, temperature));
    const line = this.firstStretch.findLastIndex((first) => first <= stretch);
    return `in the line ${this.config.lines[line].name}`;
  }

  private setExchangerRates(exchanger: NonNullable<Config['exchanger']>, air: ExchangerAir): void {
    const density = air.pressure / (AIR_GAS_CONSTANT * air.temperature);
    const massFlow = air.speed * exchanger.faceArea * density;
    this.exchangerAirIn = air.temperature;
    const rates = this.exchangerRates;
    this.exchangerAirRate = massFlow * AIR_HEAT_CAPACITY;
    rates.airRate = this.exchangerAirRate;
    rates.airConductance = massFlow > 0 ? conductanceAt(exchanger.airConductance, massFlow) : 0;
    rates.coolantRate = this.coolantRate;
    rates.coolantConductance = conductanceAt(exchanger.coolantConductance, this.flow * this.density);
  }

  private sweepLine(line: number, stage: Stage, inlet: number, bay: number): number {
    let temperature = inlet;
    for (let k = this.firstStretch[line]; k < this.firstStretch[line + 1]; k++) {
      const stretch = this.stretches[k];
      this.setStretchRates(stretch, bay);
      stretch.block.sweep(stretch.rates, stage, bay, temperature);
      temperature = this.leaveStretch(stretch, bay);
    }
    return temperature;
  }

  private marchLine(line: number, state: Float64Array, inlet: number, bay: number): number {
    let temperature = inlet;
    for (let k = this.firstStretch[line]; k < this.firstStretch[line + 1]; k++) {
      const stretch = this.stretches[k];
      this.setStretchRates(stretch, bay);
      stretch.block.march(stretch.rates, state, bay, temperature);
      temperature = this.leaveStretch(stretch, bay);
    }
    return temperature;
  }

  private setStretchRates(stretch: LineStretch, bay: number): void {
    stretch.rates.coolantRate = this.coolantRate;
    stretch.rates.coolantConductance = stretch.coolantConductance;
    stretch.rates.metalLoss = stretch.wallToBay;
    stretch.rates.metalSource = stretch.wallToBay * bay;
  }

  private leaveStretch(stretch: LineStretch, bay: number): number {
    this.lineHeat += stretch.wallToBay * (bay - stretch.block.metalMean);
    return stretch.block.coolantOut;
  }
}

function makeStretch(block: CellBlock, line: LineConfig, length: number, volume: number): LineStretch {
  return {
    block,
    rates: emptyRates(),
    coolantConductance: line.coolantToWall * length,
    wallToBay: line.wallToBay * length,
    volume,
    length,
  };
}

export function emptyRates(): BlockRates {
  return { airRate: 0, airConductance: 0, coolantRate: 0, coolantConductance: 0, metalLoss: 0, metalSource: 0 };
}

export function lowestPressure({ ambient, cycle }: Config): number {
  const phases = [...cycle.before, ...cycle.block, ...cycle.after];
  return Math.min(ambient.pressure, ...phases.flatMap(({ outsidePressure: { from, to } }) => [from, to]));
}
