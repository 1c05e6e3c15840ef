import type { Segment, Stage, StageSystem } from '../../src/sim/solver/stage-system.ts';

export interface LinearSetup {
  /** A of dT/dt = A T + b + c t, 1/s */
  readonly matrix: readonly (readonly number[])[];
  /** b of each segment, K/s */
  readonly constants: readonly (readonly number[])[];
  /** c, K/s2 */
  readonly ramp?: readonly number[];
  /** events: temperature of a place less a level */
  readonly thresholds?: readonly { readonly index: number; readonly level: number; readonly ends?: boolean }[];
  /** no answer to stages after this time */
  readonly noAnswerAfter?: number;
  /** the last temperature of a stage after this time is not a number */
  readonly notANumberAfter?: number;
}

/** A few temperatures with constant couplings, for tests of the stepper alone. */
export class LinearSystem implements StageSystem {
  readonly size: number;
  readonly watched: Int32Array;
  readonly powerCount = 0;
  readonly boundaryCount = 0;
  readonly eventCount: number;
  /** what the stepper told: segments entered and steps that stand */
  readonly entered: { index: number; time: number }[] = [];
  readonly accepted: number[] = [];
  private readonly setup: LinearSetup;
  private segment = 0;

  constructor(setup: LinearSetup) {
    this.setup = setup;
    this.size = setup.matrix.length;
    this.watched = Int32Array.from(setup.matrix.keys());
    this.eventCount = setup.thresholds?.length ?? 0;
  }

  enterSegment(index: number, time: number): void {
    this.segment = index;
    this.entered.push({ index, time });
  }

  /** (s I - A) Y = s base + b + c t by elimination. */
  solveStage({ time, s, reach, base, out }: Stage): number {
    const { matrix, constants, ramp, noAnswerAfter, notANumberAfter } = this.setup;
    if (noAnswerAfter !== undefined && time > noAnswerAfter) return 0;
    const rows = matrix.map((row, i) => [
      ...row.map((a, j) => (i === j ? s - a : -a)),
      s * base[i] + constants[this.segment][i] + (ramp?.[i] ?? 0) * time,
    ]);
    rows.forEach((pivot, i) => {
      rows.forEach((row, k) => {
        const factor = k === i ? 0 : row[i] / pivot[i];
        pivot.forEach((value, j) => {
          row[j] -= factor * value;
        });
      });
    });
    rows.forEach((row, i) => {
      out[i] = base[i] + reach * (row[this.size] / row[i] - base[i]);
    });
    if (notANumberAfter !== undefined && time > notANumberAfter) out[this.size - 1] = Number.NaN;
    return 1;
  }

  acceptStep(h: number): void {
    this.accepted.push(h);
  }

  examine(state: Float64Array, events: Float64Array): number {
    this.setup.thresholds?.forEach(({ index, level }, k) => {
      events[k] = state[index] - level;
    });
    return 0;
  }

  isTerminal(index: number): boolean {
    return this.setup.thresholds?.[index].ends ?? false;
  }
}

/** One temperature that approaches a target per segment with a time constant. */
export function lag(timeConstant: number, targets: readonly number[], more: Partial<LinearSetup> = {}): LinearSystem {
  const constants = targets.map((target) => [target / timeConstant]);
  return new LinearSystem({ matrix: [[-1 / timeConstant]], constants, ...more });
}

export function segmentOf(start: number, end: number, more: Partial<Segment> = {}): Segment {
  return { start, end, longestStep: end - start, stops: [], ...more };
}
