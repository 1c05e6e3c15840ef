import { Secant } from '../kernels/secant.ts';
import type { Vapour } from '../kernels/wet-cell-sweep.ts';
import type { CoreConfig } from '../scenario/config.ts';
import { type BlockRates, CellBlock, type Extremes, type StageValues } from './cell-block.ts';
import { emptyRates } from './coolant-ring.ts';

/** A turn header counts as settled when its temperature is known to this [K]. */
const TURN_CLOSED = 1e-4;
const MOST_TURN_ROUNDS = 30;

/**
 * One sheet of a core: layers that get the same coolant, as cells, in one pass or two.
 *
 * With two passes the coolant turns round in a header that mixes it, a lump of its own, and the air goes straight
 * through both. Cross-counter: the coolant comes in where the air leaves. What the header passes on is then needed
 * before it is known; the sheet is swept again with a secant until both agree. The header takes up just the fluxes
 * that were used, so the energy closes at any tolerance.
 */
export class CoreBank {
  readonly size: number;
  /** shares of the core that this sheet is: of layers, hence of air, and of the coolant */
  readonly layers: number;
  readonly flow: number;
  airOut = 0;
  coolantOut = 0;
  /** first in the air; where there are two passes, the second in the air after it */
  readonly blocks: readonly CellBlock[];
  private readonly isCounter: boolean;
  private readonly turnIndex: number;
  private readonly turnCapacity: number;
  /** of the coolant that is in the turn header */
  private readonly turnShare: number;
  private turn = Number.NaN;
  private readonly secant = new Secant(-0.99, 0.99, 0.3);
  private readonly passRates = emptyRates();

  /**
   * @param core - the whole core
   * @param layers - share of its layers
   * @param flow - share of the coolant
   * @param offset - where the sheet starts in the state
   * @param perVolume - heat capacity of the coolant [J/(m3 K)]
   */
  constructor(core: CoreConfig, layers: number, flow: number, offset: number, perVolume: number) {
    const { passes, isCounter, turnVolume } = core.layout;
    const rows = core.cellsAlongAir / passes;
    const metal = (layers * core.metalHeatCapacity) / passes;
    const coolant = (layers * core.coolantVolume * perVolume) / passes;
    const place = (k: number) => {
      const start = offset + 2 * k * rows * core.cellsAlongCoolant;
      return new CellBlock(rows, core.cellsAlongCoolant, start, metal, coolant);
    };
    this.layers = layers;
    this.flow = flow;
    this.blocks = passes === 1 ? [place(0)] : [place(0), place(1)];
    this.isCounter = isCounter;
    this.turnCapacity = layers * turnVolume * perVolume;
    this.turnShare = turnVolume / (turnVolume + core.coolantVolume);
    const inCells = 2 * core.cellsAlongAir * core.cellsAlongCoolant;
    this.turnIndex = passes === 1 ? -1 : offset + inCells;
    this.size = inCells + (passes === 1 ? 0 : 1);
  }

  /** Forgets the header's guess. */
  restart(state: Float64Array): void {
    if (this.turnIndex >= 0) this.turn = state[this.turnIndex];
    this.secant.reset();
  }

  watchedPlaces(): Int32Array[] {
    const inCells = this.blocks.map((block) => block.watchedPlaces());
    return this.turnIndex < 0 ? inCells : [...inCells, Int32Array.of(this.turnIndex)];
  }

  sweep(rates: BlockRates, stage: StageValues, airIn: number, coolantIn: number, vapour: Vapour | undefined): void {
    const [first, second] = this.blocks;
    if (second === undefined) {
      this.sweepFirst(rates, stage, airIn, coolantIn, vapour);
      this.leave(first, first);
      return;
    }
    const pass = this.halved(rates);
    const { turnIndex, turnCapacity, secant } = this;
    const store = turnCapacity * stage.s;
    const { coolantRate } = rates;
    const held = store * stage.base[turnIndex];
    if (!this.isCounter) {
      this.sweepFirst(pass, stage, airIn, coolantIn, vapour);
      this.turn = (held + coolantRate * first.coolantOut) / (store + coolantRate);
      this.sweepSecond(pass, stage, this.turn, vapour);
      this.leave(second, second);
    } else {
      secant.start();
      for (let round = 0; round < MOST_TURN_ROUNDS; round++) {
        this.sweepFirst(pass, stage, airIn, this.turn, vapour);
        this.sweepSecond(pass, stage, coolantIn, vapour);
        const mixed = (held + coolantRate * second.coolantOut) / (store + coolantRate);
        if (Math.abs(mixed - this.turn) * (1 + coolantRate / store) <= TURN_CLOSED) break;
        this.turn = secant.next(this.turn, mixed);
      }
      this.leave(second, first);
    }
    const entering = this.isCounter ? second.coolantOut : first.coolantOut;
    const base = stage.base[turnIndex];
    stage.out[turnIndex] = base + (stage.reach * coolantRate * (entering - this.turn)) / store;
  }

  march(rates: BlockRates, state: Float64Array, airIn: number, coolantIn: number): void {
    const [first, second] = this.blocks;
    if (second === undefined) {
      first.march(rates, state, airIn, coolantIn);
      this.leave(first, first);
      return;
    }
    const pass = this.halved(rates);
    const turn = state[this.turnIndex];
    this.turn = turn;
    first.march(pass, state, airIn, this.isCounter ? turn : coolantIn);
    second.marchBehind(first, pass, state, this.isCounter ? coolantIn : turn);
    this.leave(second, this.isCounter ? first : second);
  }

  marchVapour(state: Float64Array, vapour: Vapour): void {
    const [first, second] = this.blocks;
    first.marchVapour(state, vapour, this.layers);
    second?.marchVapour(state, vapour, this.layers, first);
  }

  watchFront(state: Float64Array, heatCapacityPassed: number): void {
    for (const block of this.blocks) block.watchFront(state, this.flow * heatCapacityPassed);
  }

  /** Heat stored above `reference` [J]; widens the extremes. */
  survey(state: Float64Array, reference: number, extremes: Extremes): number {
    let heat = 0;
    let coldestMetal = Number.POSITIVE_INFINITY;
    for (const block of this.blocks) {
      heat += block.survey(state, reference, extremes);
      coldestMetal = Math.min(coldestMetal, extremes.coldestMetal);
    }
    extremes.coldestMetal = coldestMetal;
    if (this.turnIndex < 0) return heat;
    const turn = state[this.turnIndex];
    extremes.coldestCoolant = Math.min(extremes.coldestCoolant, turn);
    extremes.hottestCoolant = Math.max(extremes.hottestCoolant, turn);
    return heat + this.turnCapacity * (turn - reference);
  }

  holdsCoolantAt(state: Float64Array, temperature: number): boolean {
    return (
      state[this.turnIndex] === temperature || this.blocks.some((block) => block.holdsCoolantAt(state, temperature))
    );
  }

  addFields(
    state: Float64Array,
    air: Float64Array,
    share: number,
    out: readonly [Float32Array, Float32Array, Float32Array],
  ): void {
    const [first, second] = this.blocks;
    // The pass that the coolant enters first runs with the columns, the other against them.
    first.addFields(state, air, 0, second !== undefined && this.isCounter, share, out);
    second?.addFields(state, air, first.nx, !this.isCounter, share, out);
  }

  /** Means of metal and of coolant, the turn header's among it, by heat capacity. */
  get metalMean(): number {
    return this.sumOf(({ metalMean }) => metalMean) / this.blocks.length;
  }

  get coolantMean(): number {
    const inCells = this.sumOf(({ coolantMean }) => coolantMean) / this.blocks.length;
    return this.turnIndex < 0 ? inCells : inCells + this.turnShare * (this.turn - inCells);
  }

  sumOf(pick: (block: CellBlock) => number): number {
    return this.blocks.reduce((sum, block) => sum + pick(block), 0);
  }

  private sweepFirst(
    rates: BlockRates,
    stage: StageValues,
    airIn: number,
    coolantIn: number,
    vapour: Vapour | undefined,
  ): void {
    const [first] = this.blocks;
    if (vapour === undefined) first.sweep(rates, stage, airIn, coolantIn);
    else first.sweepWet(rates, stage, airIn, coolantIn, vapour, this.layers);
  }

  private sweepSecond(rates: BlockRates, stage: StageValues, coolantIn: number, vapour: Vapour | undefined): void {
    const [first, second] = this.blocks;
    if (vapour === undefined) second.sweepBehind(first, rates, stage, coolantIn);
    else second.sweepWetBehind(first, rates, stage, coolantIn, vapour, this.layers);
  }

  private leave(lastInAir: CellBlock, lastInCoolant: CellBlock): void {
    this.airOut = lastInAir.airOut;
    this.coolantOut = lastInCoolant.coolantOut;
  }

  /** Air and coolant pass both halves, the rest is shared between them. */
  private halved(rates: BlockRates): BlockRates {
    const { passRates } = this;
    passRates.airRate = rates.airRate;
    passRates.coolantRate = rates.coolantRate;
    passRates.airConductance = 0.5 * rates.airConductance;
    passRates.coolantConductance = 0.5 * rates.coolantConductance;
    passRates.metalLoss = 0.5 * rates.metalLoss;
    passRates.metalSource = 0.5 * rates.metalSource;
    return passRates;
  }
}
