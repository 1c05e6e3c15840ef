import {
  type CellRates,
  fillSweepCoefficients,
  hasCoolantFront,
  marchOutlets,
  SWEEP_AIR_OUT,
  SWEEP_COEFFICIENT_COUNT,
  SWEEP_COOLANT_MEAN,
  SWEEP_COOLANT_OUT,
  SWEEP_METAL_MEAN,
  sweepCells,
} from '../kernels/cell-sweep.ts';
import { DETAILED_END_COUNT } from '../kernels/detailed-cell-sweep.ts';
import type { Stage } from '../solver/stage-system.ts';

/** Rates of a whole block in one stage, W/K (source in W); a cell takes its even share. */
export interface BlockRates {
  airRate: number;
  airConductance: number;
  coolantRate: number;
  coolantConductance: number;
  metalLoss: number;
  metalSource: number;
}

/** What a sweep takes of a stage. */
export type StageValues = Pick<Stage, 's' | 'reach' | 'base' | 'out'>;

/**
 * Where air crosses, the step control watches one cell in as many as this, the first of these that does not divide the
 * cells along the coolant, so that every row and every column has its share. The field is smooth there: watching all
 * of it moves no peak of the shipped scenarios by more than 0.004 K and costs a sixth of a run. A line is watched
 * whole, since a front in it is a few cells long.
 */
const WATCHED_STRIDES = [5, 7, 11];

/** What looks over blocks widen. K. */
export interface Extremes {
  coldestMetal: number;
  coldestCoolant: number;
  hottestCoolant: number;
}

/**
 * Metal and coolant of one part (core, front exchanger, stretch of line) as cells inside the state of the model.
 *
 * Owns its slice of the state from `offset` on, pairs (metal, coolant), row-major with i along the air and j along
 * the coolant. After {@link sweep} or {@link march} the outlets and means hold.
 */
export class CellBlock {
  readonly nx: number;
  readonly ny: number;
  readonly offset: number;
  airOut = 0;
  coolantIn = 0;
  coolantOut = 0;
  metalMean = 0;
  coolantMean = 0;
  protected readonly rates: CellRates;
  protected readonly ends = new Float64Array(DETAILED_END_COUNT);
  /** temperatures of the air streams, entering and then leaving */
  protected readonly air: Float64Array;
  private readonly coefficients = new Float64Array(SWEEP_COEFFICIENT_COUNT);
  /** heat capacity of coolant that has to pass before linear upwinding returns [J/K]; 0 = it holds */
  private upwindRemaining = 0;
  private readonly coolantCapacity: number;

  constructor(nx: number, ny: number, offset: number, metalCapacity: number, coolantCapacity: number) {
    this.nx = nx;
    this.ny = ny;
    this.offset = offset;
    this.coolantCapacity = coolantCapacity;
    this.air = new Float64Array(ny);
    this.rates = {
      nx,
      ny,
      metalCapacity: metalCapacity / (nx * ny),
      coolantCapacity: coolantCapacity / (nx * ny),
      airRate: 0,
      airConductance: 0,
      coolantRate: 0,
      coolantConductance: 0,
      metalLoss: 0,
      metalSource: 0,
      linearUpwind: 1,
    };
  }

  /** numbers in the state */
  get size(): number {
    return 2 * this.nx * this.ny;
  }

  /** whether the cells are second order along the coolant now, or plain upwind behind a front */
  get isLinearUpwind(): boolean {
    return this.upwindRemaining <= 0;
  }

  /** Places in the state that the step control watches. */
  watchedPlaces(): Int32Array {
    const stride = this.nx === 1 ? 1 : (WATCHED_STRIDES.find((candidate) => this.ny % candidate !== 0) ?? 1);
    const places = new Int32Array(2 * Math.ceil((this.nx * this.ny) / stride));
    for (let n = 0; n < places.length; n += 2) {
      places[n] = this.offset + n * stride;
      places[n + 1] = places[n] + 1;
    }
    return places;
  }

  /** Sets the metal of all cells to one temperature [K]. */
  fillMetal(state: Float64Array, temperature: number): void {
    const end = this.offset + this.size;
    for (let k = this.offset; k < end; k += 2) state[k] = temperature;
  }

  /** One stage with air entering at `airIn` [K]. */
  sweep(rates: BlockRates, stage: StageValues, airIn: number, coolantIn: number): void {
    for (let j = 0; j < this.ny; j++) this.air[j] = airIn;
    this.sweepFilled(rates, stage, coolantIn);
  }

  /** Outlets and means that belong to a known state. */
  march(rates: BlockRates, state: Float64Array, airIn: number, coolantIn: number): void {
    this.air.fill(airIn);
    this.marchFilled(rates, state, coolantIn);
  }

  /** Decides, for the next step, whether a front forbids linear upwinding until a content has passed. */
  watchFront(state: Float64Array, heatCapacityPassed: number): void {
    this.upwindRemaining = Math.max(0, this.upwindRemaining - heatCapacityPassed);
    if (hasCoolantFront(this.nx, this.ny, state, this.offset, this.coolantIn)) {
      this.upwindRemaining = this.coolantCapacity;
    }
    this.rates.linearUpwind = this.isLinearUpwind ? 1 : 0;
  }

  /**
   * Looks over the block once: widens the extremes of metal and coolant and returns the heat stored above
   * `reference` [J].
   */
  survey(state: Float64Array, reference: number, extremes: Extremes): number {
    let metalSum = 0;
    let coolantSum = 0;
    let coldestMetal = Number.POSITIVE_INFINITY;
    let coldest = Number.POSITIVE_INFINITY;
    let hottest = Number.NEGATIVE_INFINITY;
    const end = this.offset + this.size;
    for (let k = this.offset; k < end; k += 2) {
      const metal = state[k];
      const coolant = state[k + 1];
      metalSum += metal - reference;
      coolantSum += coolant - reference;
      if (metal < coldestMetal) coldestMetal = metal;
      if (coolant < coldest) coldest = coolant;
      if (coolant > hottest) hottest = coolant;
    }
    extremes.coldestMetal = Math.min(extremes.coldestMetal, coldestMetal);
    extremes.coldestCoolant = Math.min(extremes.coldestCoolant, coldest);
    extremes.hottestCoolant = Math.max(extremes.hottestCoolant, hottest);
    return this.rates.metalCapacity * metalSum + this.rates.coolantCapacity * coolantSum;
  }

  /** Whether one of the cells has coolant of just this temperature. */
  holdsCoolantAt(state: Float64Array, temperature: number): boolean {
    const end = this.offset + this.size;
    for (let k = this.offset + 1; k < end; k += 2) if (state[k] === temperature) return true;
    return false;
  }

  protected setRates(rates: BlockRates): void {
    const { nx, ny } = this;
    const share = 1 / (nx * ny);
    this.rates.airRate = rates.airRate / ny;
    this.rates.airConductance = rates.airConductance * share;
    this.rates.coolantRate = rates.coolantRate / nx;
    this.rates.coolantConductance = rates.coolantConductance * share;
    this.rates.metalLoss = rates.metalLoss * share;
    this.rates.metalSource = rates.metalSource * share;
  }

  /** As {@link sweep} and {@link march}, with the air streams filled in. */
  protected sweepFilled(rates: BlockRates, { s, reach, base, out }: StageValues, coolantIn: number): void {
    this.setRates(rates);
    fillSweepCoefficients(this.rates, s, reach, this.coefficients);
    const { nx, ny } = this;
    sweepCells(nx, ny, this.coefficients, base, out, this.offset, coolantIn, this.air, this.ends);
    this.readEnds(coolantIn);
  }

  protected marchFilled(rates: BlockRates, state: Float64Array, coolantIn: number): void {
    this.setRates(rates);
    marchOutlets(this.rates, state, this.offset, coolantIn, this.air, this.ends);
    this.readEnds(coolantIn);
  }

  protected readEnds(coolantIn: number): void {
    this.coolantIn = coolantIn;
    this.airOut = this.ends[SWEEP_AIR_OUT];
    this.coolantOut = this.ends[SWEEP_COOLANT_OUT];
    this.metalMean = this.ends[SWEEP_METAL_MEAN];
    this.coolantMean = this.ends[SWEEP_COOLANT_MEAN];
  }
}
