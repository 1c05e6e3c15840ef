import type { AirColumns, Vapour } from '../kernels/detailed-cell-sweep.ts';
import type { CoreConfig } from '../scenario/config/exchangers.ts';
import type { BlockRates, Extremes, StageValues } from './cell-block.ts';
import { conductanceAt } from './conductance.ts';
import { CoreBank } from './core-bank.ts';
import type { CoreAir, CoreBlock } from './core-block.ts';
import { emptyRates } from './loop-element.ts';

/** What the whole core meets in one stage; its coolant conductance follows from the flow, sheet by sheet. */
export interface CoreRates extends Omit<BlockRates, 'coolantConductance'> {
  /** kg/s through the core */
  airFlow: number;
  coolantFlow: number;
}

type Fields = readonly [Float32Array, Float32Array, Float32Array];

/**
 * The charge-air core: sheets of layers side by side, that get their own share of the coolant each, in one core or in
 * two with the coolant in series. The air is spread evenly over all layers; what leaves them mixes, as does the
 * coolant.
 */
export class Core {
  readonly nx: number;
  readonly ny: number;
  readonly size: number;
  airOut = 0;
  coolantIn = 0;
  coolantOut = 0;
  metalMean = 0;
  coolantMean = 0;
  /** W and kg/s that condensing vapour gives up; its content on leaving [kg/kg] */
  latentPower = 0;
  condensate = 0;
  vapourOut = 0;
  private readonly law: CoreConfig['coolantConductance'];
  private readonly airLaw: CoreConfig['airConductance'];
  private readonly columns: AirColumns | undefined;
  private readonly air: { vapour: Vapour | undefined; columns: AirColumns | undefined };
  /** one list of sheets for each core in the coolant's way */
  private readonly cores: readonly (readonly CoreBank[])[];
  private readonly banks: readonly CoreBank[];
  private readonly bankRates = emptyRates();
  private readonly streams: Float64Array;

  /**
   * @param config - both cores together where there are two
   * @param offset - where the core starts in the state
   * @param perVolume - heat capacity of the coolant [J/(m3 K)]
   */
  constructor(config: CoreConfig, offset: number, perVolume: number) {
    const { sheets, inSeries } = config.layout;
    let end = offset;
    this.cores = Array.from({ length: inSeries }, () =>
      sheets.map(({ layers, flow }) => {
        const bank = new CoreBank(config, layers / inSeries, flow, end, perVolume);
        end += bank.size;
        return bank;
      }),
    );
    this.banks = this.cores.flat();
    this.law = config.coolantConductance;
    this.airLaw = config.airConductance;
    const { airVelocity } = config.layout;
    this.columns = airVelocity && {
      flow: Float64Array.from(airVelocity),
      conductance: new Float64Array(airVelocity.length).fill(1),
    };
    this.air = { vapour: undefined, columns: this.columns };
    this.size = end - offset;
    this.nx = config.cellsAlongAir;
    this.ny = config.cellsAlongCoolant;
    this.streams = new Float64Array(this.ny);
  }

  /** Sets the metal of all cells to one temperature [K]. */
  fillMetal(state: Float64Array, temperature: number): void {
    for (const block of this.banks.flatMap(({ blocks }) => blocks)) block.fillMetal(state, temperature);
  }

  /** Takes a state to start from. */
  restart(state: Float64Array, vapourContent: number): void {
    for (const bank of this.banks) bank.restart(state);
    this.vapourOut = vapourContent;
  }

  watchedPlaces(): Int32Array[] {
    return this.banks.flatMap((bank) => bank.watchedPlaces());
  }

  /** One stage; without `vapour` nothing condenses. */
  sweep(rates: CoreRates, stage: StageValues, airIn: number, coolantIn: number, vapour: Vapour | undefined): void {
    const air = this.enter(rates, coolantIn, vapour);
    for (const sheets of this.cores) {
      for (const bank of sheets) bank.sweep(this.ratesOf(bank, rates), stage, airIn, this.coolantOut, air);
      this.mix(sheets);
    }
    this.readVapour(vapour);
  }

  /** Outlets and means that belong to a known state. */
  march(rates: CoreRates, state: Float64Array, airIn: number, coolantIn: number, vapour: Vapour | undefined): void {
    const air = this.enter(rates, coolantIn, vapour);
    for (const sheets of this.cores) {
      for (const bank of sheets) bank.march(this.ratesOf(bank, rates), state, airIn, this.coolantOut, air);
      this.mix(sheets);
    }
    this.readVapour(vapour);
  }

  watchFront(state: Float64Array, heatCapacityPassed: number): void {
    for (const bank of this.banks) bank.watchFront(state, heatCapacityPassed);
  }

  survey(state: Float64Array, reference: number, extremes: Extremes): number {
    let heat = 0;
    for (const bank of this.banks) heat += bank.survey(state, reference, extremes);
    return heat;
  }

  holdsCoolantAt(state: Float64Array, temperature: number): boolean {
    return this.banks.some((bank) => bank.holdsCoolantAt(state, temperature));
  }

  /**
   * Writes metal, coolant and mean air temperatures as they lie in the core, i along the air and j along the coolant
   * where it enters; the mean over the layers where these differ.
   */
  fillFields(state: Float64Array, airIn: number, out: Fields): void {
    for (const array of out) array.fill(0);
    for (const bank of this.banks) {
      this.streams.fill(airIn);
      bank.addFields(state, this.streams, bank.layers, out);
    }
  }

  private enter(rates: CoreRates, coolantIn: number, vapour: Vapour | undefined): CoreAir {
    this.coolantIn = coolantIn;
    this.coolantOut = coolantIn;
    this.airOut = 0;
    this.metalMean = 0;
    this.coolantMean = 0;
    const { air, columns } = this;
    air.vapour = vapour;
    if (columns !== undefined && rates.airFlow > 0) {
      const even = conductanceAt(this.airLaw, rates.airFlow);
      for (let j = 0; j < this.ny; j++) {
        columns.conductance[j] = conductanceAt(this.airLaw, columns.flow[j] * rates.airFlow) / even;
      }
    }
    return air;
  }

  /** What leaves the sheets of one core mixes; the coolant goes on to the next. */
  private mix(sheets: readonly CoreBank[]): void {
    let coolant = 0;
    for (const bank of sheets) {
      coolant += bank.flow * bank.coolantOut;
      this.airOut += bank.layers * bank.airOut;
      this.metalMean += bank.layers * bank.metalMean;
      this.coolantMean += bank.layers * bank.coolantMean;
    }
    this.coolantOut = coolant;
  }

  private ratesOf(bank: CoreBank, rates: CoreRates): BlockRates {
    const { bankRates } = this;
    const { layers, flow } = bank;
    bankRates.airRate = layers * rates.airRate;
    bankRates.airConductance = layers * rates.airConductance;
    bankRates.coolantRate = flow * rates.coolantRate;
    const perLayer = flow / (layers * this.cores.length);
    bankRates.coolantConductance = layers * conductanceAt(this.law, perLayer * rates.coolantFlow);
    bankRates.metalLoss = layers * rates.metalLoss;
    bankRates.metalSource = layers * rates.metalSource;
    return bankRates;
  }

  private readVapour(vapour: Vapour | undefined): void {
    this.latentPower = 0;
    this.condensate = 0;
    if (vapour === undefined) return;
    for (const bank of this.banks) {
      this.latentPower += bank.sumOf(latentOf);
      this.condensate += bank.sumOf(condensateOf);
    }
    this.vapourOut = vapour.airFlow > 0 ? vapour.content - this.condensate / vapour.airFlow : vapour.content;
  }
}

const latentOf = (block: CoreBlock): number => block.latentPower;
const condensateOf = (block: CoreBlock): number => block.condensate;
