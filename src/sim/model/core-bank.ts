import { Secant } from '../kernels/secant.ts';
import type { CoreConfig } from '../scenario/config/exchangers.ts';
import type { BlockRates, Extremes, StageValues } from './cell-block.ts';
import { type CoreAir, CoreBlock } from './core-block.ts';
import { emptyRates } from './loop-element.ts';

/** A turn header counts as settled when its temperature is known to this [K]; own choice. */
const TURN_CLOSED = 1e-4;
/**
 * Rounds after which the last answer stands; far out of reach: a dry sheet is linear in that temperature, and the five
 * demo cars, given two passes, need 2 to 4, wet or dry.
 */
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
  readonly blocks: readonly CoreBlock[];
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
      // The pass that the coolant enters first runs with the columns, the other against them.
      const isMirrored = passes === 2 && (k === 0) === isCounter;
      return new CoreBlock(rows, core.cellsAlongCoolant, start, metal, coolant, layers, isMirrored);
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

  sweep(rates: BlockRates, stage: StageValues, airIn: number, coolantIn: number, air: CoreAir): void {
    const [first, second] = this.blocks;
    first.enter(airIn, air);
    if (second === undefined) {
      first.sweepEntered(rates, stage, coolantIn);
      this.leave(first, first);
      return;
    }
    const pass = this.halved(rates);
    const { turnIndex, turnCapacity, secant } = this;
    const store = turnCapacity * stage.s;
    const { coolantRate } = rates;
    const base = stage.base[turnIndex];
    let entering: number;
    if (!this.isCounter) {
      first.sweepEntered(pass, stage, coolantIn);
      entering = first.coolantOut;
      this.turn = (store * base + coolantRate * entering) / (store + coolantRate);
      second.enterBehind(first);
      second.sweepEntered(pass, stage, this.turn);
      this.leave(second, second);
    } else {
      secant.start();
      for (let round = 1; ; round++) {
        if (round > 1) first.enter(airIn, air);
        first.sweepEntered(pass, stage, this.turn);
        second.enterBehind(first);
        second.sweepEntered(pass, stage, coolantIn);
        entering = second.coolantOut;
        const mixed = (store * base + coolantRate * entering) / (store + coolantRate);
        if (Math.abs(mixed - this.turn) * (1 + coolantRate / store) <= TURN_CLOSED || round === MOST_TURN_ROUNDS) break;
        this.turn = secant.next(this.turn, mixed);
      }
      this.leave(second, first);
    }
    stage.out[turnIndex] = base + (stage.reach * coolantRate * (entering - this.turn)) / store;
  }

  march(rates: BlockRates, state: Float64Array, airIn: number, coolantIn: number, air: CoreAir): void {
    const [first, second] = this.blocks;
    first.enter(airIn, air);
    if (second === undefined) {
      first.marchEntered(rates, state, coolantIn);
      this.leave(first, first);
      return;
    }
    const pass = this.halved(rates);
    const turn = state[this.turnIndex];
    this.turn = turn;
    first.marchEntered(pass, state, this.isCounter ? turn : coolantIn);
    second.enterBehind(first);
    second.marchEntered(pass, state, this.isCounter ? coolantIn : turn);
    this.leave(second, this.isCounter ? first : second);
  }

  watchFront(state: Float64Array, heatCapacityPassed: number): void {
    for (const block of this.blocks) block.watchFront(state, this.flow * heatCapacityPassed);
  }

  /** Heat stored above `reference` [J]; widens the extremes. */
  survey(state: Float64Array, reference: number, extremes: Extremes): number {
    let heat = 0;
    for (const block of this.blocks) heat += block.survey(state, reference, extremes);
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
    first.addFields(state, air, 0, share, out);
    second?.addFields(state, air, first.nx, share, out);
  }

  /** Means of metal and of coolant, the turn header's among it, by heat capacity. */
  get metalMean(): number {
    return this.sumOf(({ metalMean }) => metalMean) / this.blocks.length;
  }

  get coolantMean(): number {
    const inCells = this.sumOf(({ coolantMean }) => coolantMean) / this.blocks.length;
    return this.turnIndex < 0 ? inCells : inCells + this.turnShare * (this.turn - inCells);
  }

  sumOf(pick: (block: CoreBlock) => number): number {
    return this.blocks.reduce((sum, block) => sum + pick(block), 0);
  }

  private leave(lastInAir: CoreBlock, lastInCoolant: CoreBlock): void {
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
