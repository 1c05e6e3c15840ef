import { bookStep, type Ledger, openLedger } from './ledger.ts';
import { acceptCandidate, makeStepBuffers, type StepBuffers, tryStep } from './sdirk2.ts';
import type { Segment, StageSystem } from './stage-system.ts';
import { nextStepAfterAccepted, nextStepAfterRefused } from './step-control.ts';

export interface StepperOptions {
  /** largest estimated error of a step in any state [K] */
  readonly tolerance: number;
  /** also end a step on every multiple of this [s] */
  readonly interval?: number;
  /** take steps of just this length, without error control [s]; for studies of the order */
  readonly fixedStep?: number;
}

/** An event function changed sign: `rising` from negative to positive. */
export interface StateEvent {
  readonly time: number;
  readonly index: number;
  readonly rising: boolean;
}

/**
 * 'entered': the inputs of the next segment hold from now on, the time has not moved. 'stepped': a step stands.
 * 'finished': the last segment has ended. 'stopped': a terminal event, or no step could be found.
 */
export type StepKind = 'entered' | 'stepped' | 'finished' | 'stopped';

/** First step of a segment [s]. */
const FIRST_STEP = 0.1;
/** Where a shorter one would be needed, the run stops [s]. */
const SMALLEST_STEP = 1e-7;
/** At most so many steps are tried to land on an event. */
const EVENT_TRIES = 12;
/** An event is found to this in time [s]. */
const EVENT_PRECISION = 1e-4;

/** Walks a system through its segments, one accepted step at a time. Knows no physics. */
export class Stepper {
  time: number;
  rejected = 0;
  accepted = 0;
  /** index of the event that ended the run; undefined also where it stopped because no step could be found */
  terminalEvent: number | undefined;
  readonly events: StateEvent[] = [];
  readonly ledger: Ledger;
  private segmentIndex = -1;
  private proposal = FIRST_STEP;
  private errorBefore = 1;
  /** stored energy of the candidate [J] */
  private stored = 0;
  private readonly buffers: StepBuffers;
  private readonly sides: Float64Array;
  private readonly eventsBefore: Float64Array;
  private readonly eventsNow: Float64Array;
  private readonly system: StageSystem;
  private readonly segments: readonly Segment[];
  private readonly options: StepperOptions;

  constructor(system: StageSystem, segments: readonly Segment[], start: Float64Array, options: StepperOptions) {
    this.system = system;
    this.segments = segments;
    this.options = options;
    this.time = segments[0].start;
    this.buffers = makeStepBuffers(system, start);
    this.ledger = openLedger(system);
    this.sides = new Float64Array(system.eventCount).fill(-1);
    this.eventsBefore = new Float64Array(system.eventCount);
    this.eventsNow = new Float64Array(system.eventCount);
  }

  get state(): Float64Array {
    return this.buffers.state;
  }

  get sweeps(): number {
    return this.buffers.sweeps;
  }

  /** index of the segment that holds now; -1 before the first */
  get segment(): number {
    return this.segmentIndex;
  }

  get isAtSegmentEnd(): boolean {
    return this.segmentIndex < 0 || this.time >= this.segments[this.segmentIndex].end;
  }

  step(): StepKind {
    if (this.isAtSegmentEnd) return this.enterNext();
    const segment = this.segments[this.segmentIndex];
    const target = this.nextStop(segment);
    const fixed = this.options.fixedStep;
    for (;;) {
      const wanted = fixed ?? Math.min(this.proposal, segment.longestStep);
      const h = fitStep(wanted, target - this.time, fixed !== undefined);
      const error = tryStep(this.system, this.time, h, this.buffers) / this.options.tolerance;
      if (error <= 1 || (fixed !== undefined && !Number.isNaN(error))) {
        return this.accept(h, error, target, wanted);
      }
      this.rejected++;
      this.proposal = nextStepAfterRefused(h, error);
      if (this.proposal < SMALLEST_STEP || fixed !== undefined) return 'stopped';
    }
  }

  private enterNext(): StepKind {
    if (this.segmentIndex === this.segments.length - 1) return 'finished';
    this.segmentIndex++;
    this.proposal = FIRST_STEP;
    this.errorBefore = 1;
    this.buffers.sBefore = 0;
    this.system.enterSegment(this.segmentIndex, this.time, this.buffers.state);
    this.stored = this.system.examine(this.buffers.state, this.eventsNow);
    if (this.segmentIndex === 0) {
      this.ledger.storedAtStart = this.stored;
      this.ledger.stored = this.stored;
    }
    for (let k = 0; k < this.eventsNow.length; k++) {
      if (this.eventsNow[k] * this.sides[k] < 0 && this.record(k) === 'stopped') return 'stopped';
    }
    this.eventsBefore.set(this.eventsNow);
    return 'entered';
  }

  private nextStop(segment: Segment): number {
    let target = segment.end;
    for (const stop of segment.stops) {
      if (stop > this.time) {
        target = Math.min(target, stop);
        break;
      }
    }
    const { interval } = this.options;
    if (interval !== undefined) {
      const next = interval * (Math.floor(this.time / interval + 1e-9) + 1);
      if (next < target - 1e-9 * interval) target = next;
    }
    return target;
  }

  private accept(h: number, error: number, target: number, wanted: number): StepKind {
    this.stored = this.system.examine(this.buffers.next, this.eventsNow);
    const crossing = this.options.fixedStep === undefined ? this.firstCrossing() : -1;
    const landed = crossing < 0 ? h : this.landOn(crossing, h);
    // Landing on a stop says nothing about accuracy: keep the longer proposal.
    const next = nextStepAfterAccepted(h, error, this.errorBefore);
    this.proposal = h < wanted ? Math.max(next, wanted) : next;
    this.errorBefore = error;
    const end = this.time + landed;
    this.time = landed === h && Math.abs(end - target) < 1e-9 * Math.max(1, target) ? target : end;
    acceptCandidate(this.buffers, landed);
    this.accepted++;
    bookStep(this.ledger, this.system, landed, this.buffers.powers1, this.buffers.powers2, this.stored);
    this.system.acceptStep(landed, this.buffers.state);
    this.eventsBefore.set(this.eventsNow);
    if (crossing >= 0 && this.record(crossing) === 'stopped') return 'stopped';
    return 'stepped';
  }

  /** The event that comes first in this step by linear interpolation, or -1. */
  private firstCrossing(): number {
    let earliest = Number.POSITIVE_INFINITY;
    let which = -1;
    for (let k = 0; k < this.eventsNow.length; k++) {
      if (!(this.eventsNow[k] * this.sides[k] < 0)) continue;
      const share = this.eventsBefore[k] / (this.eventsBefore[k] - this.eventsNow[k]);
      if (share < earliest) {
        earliest = share;
        which = k;
      }
    }
    return which;
  }

  /** Shortens the step until it ends on event `k` (regula falsi, Illinois variant); leaves the candidate there. */
  private landOn(k: number, h: number): number {
    let low = 0;
    let atLow = this.eventsBefore[k];
    let high = h;
    let atHigh = this.eventsNow[k];
    let trial = h;
    let sideBefore = 0;
    for (let n = 0; n < EVENT_TRIES && high - low > EVENT_PRECISION; n++) {
      trial = low + ((high - low) * atLow) / (atLow - atHigh);
      if (!(trial > low && trial < high)) trial = 0.5 * (low + high);
      if (Number.isNaN(tryStep(this.system, this.time, trial, this.buffers))) return this.retake(h);
      this.stored = this.system.examine(this.buffers.next, this.eventsNow);
      const value = this.eventsNow[k];
      if (Math.abs((value * (high - low)) / (atHigh - atLow)) < EVENT_PRECISION) break;
      const side = Math.sign(value * atHigh);
      if (side > 0) {
        high = trial;
        atHigh = value;
        if (side === sideBefore) atLow *= 0.5;
      } else {
        low = trial;
        atLow = value;
        if (side === sideBefore) atHigh *= 0.5;
      }
      sideBefore = side;
    }
    return trial;
  }

  private retake(h: number): number {
    tryStep(this.system, this.time, h, this.buffers);
    this.stored = this.system.examine(this.buffers.next, this.eventsNow);
    return h;
  }

  private record(index: number): StepKind {
    this.sides[index] = -this.sides[index];
    this.events.push({ time: this.time, index, rising: this.sides[index] > 0 });
    if (!this.system.isTerminal(index)) return 'stepped';
    this.terminalEvent = index;
    return 'stopped';
  }
}

/** Lands on the stop, halving the way to it where the next step would leave a sliver. */
function fitStep(wanted: number, remaining: number, isFixed: boolean): number {
  if (wanted >= remaining * (1 - 1e-9)) return remaining;
  if (isFixed || wanted <= 0.5 * remaining) return wanted;
  return 0.5 * remaining;
}
