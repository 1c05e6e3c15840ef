import { createCoolant } from '../../src/sim/fluids/coolant.ts';
import { LayeredReservoir } from '../../src/sim/model/layered-reservoir.ts';
import { type Filling, MixedReservoir, type ReservoirInflow, type Store } from '../../src/sim/model/reservoir.ts';
import type { Config } from '../../src/sim/scenario/config.ts';
import type { Segment, Stage, StageSystem } from '../../src/sim/solver/stage-system.ts';
import type { Stepper } from '../../src/sim/solver/stepper.ts';
import { runToEnd } from './bench.ts';
import { shortConfig } from './short-session.ts';

const POWERS = 2;

/** A tank by itself: coolant of a steady temperature comes in, as much goes out. Books both powers. */
export class StoreBench implements StageSystem {
  readonly size: number;
  readonly watched: Int32Array;
  readonly powerCount = POWERS;
  readonly boundaryCount = POWERS;
  readonly eventCount = 1;
  readonly segments: readonly Segment[];
  readonly store: Store;
  private readonly inflow: ReservoirInflow;

  constructor(store: Store, inflow: Partial<ReservoirInflow>, end: number, longestStep = end) {
    this.store = store;
    this.size = store.size;
    this.watched = Int32Array.from({ length: store.size }, (_, k) => k);
    this.inflow = { rate: 0, temperature: 300, gain: 0, around: 300, ...inflow };
    this.segments = [{ start: 0, end, longestStep, stops: [] }];
  }

  enterSegment(_index: number, _time: number, state: Float64Array): void {
    this.store.watch(state);
  }

  solveStage(stage: Stage): number {
    const { inflow, store } = this;
    const out = store.solve(stage, inflow);
    stage.powers[0] = inflow.rate * (inflow.temperature - out);
    stage.powers[1] = store.takeUp(stage, inflow.temperature);
    return 1;
  }

  acceptStep(_h: number, state: Float64Array): void {
    this.store.watch(state);
  }

  examine(state: Float64Array, events: Float64Array): number {
    events[0] = this.store.iceGone(state);
    return this.store.heatIn(state, 300);
  }

  isTerminal(): boolean {
    return false;
  }

  /** From an even temperature [K], or from the state given. */
  run(start: number | Float64Array, tolerance: number, after: (stepper: Stepper) => void, interval?: number): Stepper {
    const state = typeof start === 'number' ? new Float64Array(this.size) : start;
    if (typeof start === 'number') this.store.fillStart(state, start);
    return runToEnd(this, state, { tolerance, ...(interval !== undefined && { interval }) }, after);
  }
}

/** m3 of water of 1000 kg/m3 and 4186 J/(kg K), round figures of the hand-worked cases. */
const FILLING: Filling = { coolant: createCoolant(0), density: 1000, heatCapacity: 4186 };
/** J/(m3 K) */
export const PER_VOLUME = FILLING.density * FILLING.heatCapacity;

const configOf = (reservoir: Partial<Config['reservoir']>): Config => {
  const config = shortConfig({ 'coolant.glycolByVolume': 0 });
  return { ...config, reservoir: { ...config.reservoir, ...reservoir } };
};

export const mixedTank = (reservoir: Partial<Config['reservoir']>): Store =>
  new MixedReservoir(configOf(reservoir), FILLING, 0);

export const layeredTank = (reservoir: Partial<Config['reservoir']>): Store =>
  new LayeredReservoir(configOf(reservoir), FILLING, 0);
