import { type BlockRates, CellBlock, type Extremes } from '../../src/sim/model/cell-block.ts';
import type { Segment, Stage, StageSystem } from '../../src/sim/solver/stage-system.ts';
import { Stepper, type StepperOptions } from '../../src/sim/solver/stepper.ts';
import { cornersOf, Follower, type Profile } from './profile.ts';

/**
 * A part on the bench. Conductances in W/K, air rate m cp in W/K, source in W, capacities in J/K, of the whole part.
 */
export interface PartSetup {
  readonly nx: number;
  readonly ny: number;
  readonly metalCapacity: number;
  readonly coolantCapacity: number;
  readonly coolantConductance: Profile;
  readonly airRate?: Profile;
  readonly airConductance?: Profile;
  readonly airIn?: Profile;
  readonly metalLoss?: Profile;
  readonly metalSource?: Profile;
}

/** One mixed volume that the coolant leaves for the first part and comes back to from the last. */
export interface ReservoirSetup {
  /** J/K */
  readonly capacity: number;
  /** W/K to surroundings of the given temperature */
  readonly loss: number;
  readonly surroundings: number;
}

export interface BenchSetup {
  /** in flow order; one coolant stream runs through all of them */
  readonly parts: readonly PartSetup[];
  /** m c of the stream, W/K */
  readonly coolantRate: Profile;
  /** inlet temperature of the first part, or the reservoir that closes the ring */
  readonly coolantIn: Profile | ReservoirSetup;
  /** s */
  readonly end: number;
}

interface Part {
  readonly block: CellBlock;
  readonly rates: BlockRates;
  readonly airIn: Follower;
  readonly follow: Readonly<Record<Exclude<keyof BlockRates, 'coolantRate'>, Follower>>;
}

/** Powers booked for each part: air, source less loss. */
const POWERS_PER_PART = 2;
/** Stored energy counts from here [K]. */
const REFERENCE = 300;

/**
 * Blocks of cells in series with everything round them prescribed: what the simulator's model is to its stepper, with
 * nothing of the car in it. Books all powers that cross its boundary.
 */
export class Bench implements StageSystem {
  readonly size: number;
  readonly watched: Int32Array;
  readonly powerCount: number;
  readonly boundaryCount: number;
  readonly eventCount: number = 0;
  readonly segments: readonly Segment[];
  readonly blocks: readonly CellBlock[];
  private readonly parts: readonly Part[];
  private readonly coolantRate: Follower;
  private readonly coolantIn: Follower;
  private readonly reservoir: ReservoirSetup | undefined;
  private readonly unread: Extremes = { coldestMetal: 0, coldestCoolant: 0, hottestCoolant: 0 };

  constructor(setup: BenchSetup) {
    let offset = 0;
    this.parts = setup.parts.map((part) => {
      const block = new CellBlock(part.nx, part.ny, offset, part.metalCapacity, part.coolantCapacity);
      offset += block.size;
      return makePart(part, block);
    });
    this.blocks = this.parts.map(({ block }) => block);
    this.coolantRate = new Follower(setup.coolantRate);
    const isClosed = typeof setup.coolantIn === 'object' && 'capacity' in setup.coolantIn;
    this.reservoir = isClosed ? (setup.coolantIn as ReservoirSetup) : undefined;
    this.coolantIn = new Follower(isClosed ? 0 : (setup.coolantIn as Profile));
    this.size = offset + (isClosed ? 1 : 0);
    const lumps = isClosed ? [offset] : [];
    this.watched = Int32Array.from([...this.blocks.flatMap((block) => [...block.watchedPlaces()]), ...lumps]);
    this.powerCount = POWERS_PER_PART * this.parts.length + 1;
    this.boundaryCount = this.powerCount;
    const corners = cornersOf([setup.coolantRate, ...profilesOf(setup)], setup.end);
    this.segments = corners.slice(1).map((end, k) => ({ start: corners[k], end, longestStep: end, stops: [] }));
  }

  /** State with the given temperatures of metal and coolant everywhere, the reservoir at the coolant's. */
  startState(metal: number, coolant = metal): Float64Array {
    const state = new Float64Array(this.size).fill(coolant);
    for (const { offset, size } of this.blocks) for (let k = offset; k < offset + size; k += 2) state[k] = metal;
    return state;
  }

  /** Temperature of the reservoir, where there is one. */
  reservoirTemperature(state: Float64Array): number {
    return state[this.size - 1];
  }

  enterSegment(index: number, time: number, state: Float64Array): void {
    const { start, end } = this.segments[index];
    this.coolantRate.enter(start, end);
    this.coolantIn.enter(start, end);
    for (const { follow, airIn } of this.parts) {
      airIn.enter(start, end);
      for (const follower of Object.values(follow)) follower.enter(start, end);
    }
    this.setRates(time);
    let temperature = this.reservoir ? this.reservoirTemperature(state) : this.coolantIn.at(time);
    for (const { block, rates, airIn } of this.parts) {
      block.march(rates, state, airIn.at(time), temperature);
      temperature = block.coolantOut;
      block.watchFront(state, 0);
    }
  }

  solveStage(stage: Stage): number {
    const { time, s, reach, base, out, powers } = stage;
    this.setRates(time);
    const { reservoir } = this;
    const rate = this.coolantRate.at(time);
    let inlet: number;
    if (reservoir === undefined) {
      inlet = this.coolantIn.at(time);
      this.sweepParts(stage, inlet);
      powers[this.powerCount - 1] = rate * (inlet - this.lastOutlet);
      this.bookParts(time, powers);
      return 1;
    }
    // The return is affine in the inlet: two sweeps give the line, a third the answer.
    const { capacity, loss, surroundings } = reservoir;
    const last = this.size - 1;
    this.sweepParts(stage, 0);
    const atZero = this.lastOutlet;
    this.sweepParts(stage, 1);
    const slope = this.lastOutlet - atZero;
    const held = capacity * s * base[last] + loss * surroundings;
    inlet = (held + rate * atZero) / (capacity * s + loss + rate * (1 - slope));
    this.sweepParts(stage, inlet);
    const toReservoir = loss * (surroundings - inlet);
    out[last] = base[last] + (reach * (rate * (this.lastOutlet - inlet) + toReservoir)) / (capacity * s);
    powers[this.powerCount - 1] = toReservoir;
    this.bookParts(time, powers);
    return 3;
  }

  acceptStep(h: number, state: Float64Array): void {
    for (const { block, rates } of this.parts) block.watchFront(state, rates.coolantRate * h);
  }

  examine(state: Float64Array, _events: Float64Array): number {
    const ofReservoir = this.reservoir ? this.reservoir.capacity * (this.reservoirTemperature(state) - REFERENCE) : 0;
    return this.blocks.reduce((sum, block) => sum + block.survey(state, REFERENCE, this.unread), ofReservoir);
  }

  isTerminal(): boolean {
    return false;
  }

  private get lastOutlet(): number {
    return this.blocks[this.blocks.length - 1].coolantOut;
  }

  private setRates(time: number): void {
    const coolantRate = this.coolantRate.at(time);
    for (const { rates, follow } of this.parts) {
      rates.coolantRate = coolantRate;
      rates.airRate = follow.airRate.at(time);
      rates.airConductance = follow.airConductance.at(time);
      rates.coolantConductance = follow.coolantConductance.at(time);
      rates.metalLoss = follow.metalLoss.at(time);
      rates.metalSource = follow.metalSource.at(time);
    }
  }

  private sweepParts(stage: Stage, inlet: number): void {
    let temperature = inlet;
    for (const { block, rates, airIn } of this.parts) {
      block.sweep(rates, stage, airIn.at(stage.time), temperature);
      temperature = block.coolantOut;
    }
  }

  private bookParts(time: number, powers: Float64Array): void {
    this.parts.forEach(({ block, rates, airIn }, k) => {
      powers[POWERS_PER_PART * k] = rates.airRate * (airIn.at(time) - block.airOut);
      powers[POWERS_PER_PART * k + 1] = rates.metalSource - rates.metalLoss * block.metalMean;
    });
  }
}

function makePart(setup: PartSetup, block: CellBlock): Part {
  return {
    block,
    rates: { airRate: 0, airConductance: 0, coolantRate: 0, coolantConductance: 0, metalLoss: 0, metalSource: 0 },
    airIn: new Follower(setup.airIn ?? 0),
    follow: {
      airRate: new Follower(setup.airRate ?? 0),
      airConductance: new Follower(setup.airConductance ?? 0),
      coolantConductance: new Follower(setup.coolantConductance),
      metalLoss: new Follower(setup.metalLoss ?? 0),
      metalSource: new Follower(setup.metalSource ?? 0),
    },
  };
}

function profilesOf({ parts, coolantIn }: BenchSetup): Profile[] {
  const inlet = typeof coolantIn === 'object' && 'capacity' in coolantIn ? [] : [coolantIn];
  return parts.reduce<Profile[]>((all, part) => {
    const { airRate = 0, airConductance = 0, airIn = 0, metalLoss = 0, metalSource = 0, coolantConductance } = part;
    all.push(airRate, airConductance, airIn, metalLoss, metalSource, coolantConductance);
    return all;
  }, inlet);
}

/** Runs a system to its end, calling `afterStep` after every accepted step, and fails loudly where it cannot. */
export function runToEnd(
  system: StageSystem & { readonly segments: readonly Segment[] },
  start: Float64Array,
  options: StepperOptions,
  afterStep: (stepper: Stepper) => void = () => {},
): Stepper {
  const stepper = new Stepper(system, system.segments, start, options);
  for (;;) {
    const kind = stepper.step();
    if (kind === 'finished') return stepper;
    if (kind === 'stopped') throw new Error(`stopped at ${stepper.time} s`);
    if (kind === 'stepped') afterStep(stepper);
  }
}
