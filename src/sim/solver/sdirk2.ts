import type { Stage, StageSystem } from './stage-system.ts';

/**
 * Two-stage singly diagonally implicit Runge-Kutta step, L-stable and stiffly accurate, second order.
 *
 *     Y1   = Tn + g h f(t + g h, Y1)
 *     r2   = Tn + (1 - g) h f(t + g h, Y1) = Tn + (1 + sqrt 2)(Y1 - Tn)
 *     Tn+1 = r2 + g h f(t + h, Tn+1),             g = 1 - 1/sqrt 2,  since (1 - g)/g = 1 + sqrt 2
 *
 * Every flux therefore counts with b1 = 1 - g from the first stage and b2 = g from the second.
 *
 * Error: with the slopes k0 (second stage of the step before), k1 and k2 at t, t + g h and t + h the divided
 * difference 3.41421 k0 - 4.82843 k1 + 1.41421 k2 is (h^2/2) y'''; the scheme's own local error is
 * 0.0404 h^3 y''', hence the factor 0.0808 h. On a decay, where k1 carries the error of its own stage,
 * the estimate comes to 2 - sqrt 2 = 0.59 of the local error. No slope is needed at the start of a step: after a break
 * k0 := k1, which leaves a first-order estimate and a cautious first step.
 *
 * Source: R. Alexander, SIAM J. Numer. Anal. 14(6), 1977, 1006-1021.
 */
export const GAMMA = 1 - Math.SQRT1_2;
export const WEIGHT_1 = 1 - GAMMA;
export const WEIGHT_2 = 1 - WEIGHT_1;
const STRETCH = 1 + Math.SQRT2;
const ERROR_SCALE = 0.0808;
const E0 = 2 + Math.SQRT2;
const E1 = -(2 + 2 * Math.SQRT2);
const E2 = Math.SQRT2;

/** Buffers of one run. `state` is the last accepted state; `next` is the candidate after {@link tryStep}. */
export interface StepBuffers {
  state: Float64Array;
  next: Float64Array;
  /** r2 of this step, and of the last accepted one: k0 = (state - middleBefore) sBefore */
  middle: Float64Array;
  middleBefore: Float64Array;
  /** 1/(g h) of the last accepted step [1/s]; 0 while there is none to look back on */
  sBefore: number;
  readonly powers1: Float64Array;
  readonly powers2: Float64Array;
  readonly stage: Stage;
  sweeps: number;
}

export function makeStepBuffers(system: StageSystem, start: Float64Array): StepBuffers {
  const state = start.slice();
  const middle = new Float64Array(system.size);
  const powers1 = new Float64Array(system.powerCount);
  return {
    state,
    next: new Float64Array(system.size),
    middle,
    middleBefore: new Float64Array(system.size),
    sBefore: 0,
    powers1,
    powers2: new Float64Array(system.powerCount),
    stage: { number: 1, time: 0, s: 1, reach: 1, base: state, out: middle, powers: powers1 },
    sweeps: 0,
  };
}

/**
 * Computes the candidate `buffers.next` for a step of length `h` from `buffers.state`.
 *
 * @returns largest estimated error of any watched state [K]; NaN where a stage had no answer
 */
export function tryStep(system: StageSystem, time: number, h: number, buffers: StepBuffers): number {
  const { state, middle, next, middleBefore, sBefore, stage } = buffers;
  const s = 1 / (GAMMA * h);

  stage.number = 1;
  stage.time = time + GAMMA * h;
  stage.s = s;
  stage.reach = STRETCH;
  stage.base = state;
  stage.out = middle;
  stage.powers = buffers.powers1;
  const sweeps1 = system.solveStage(stage);
  buffers.sweeps += sweeps1;
  if (sweeps1 === 0) return Number.NaN;

  stage.number = 2;
  stage.time = time + h;
  stage.reach = 1;
  stage.base = middle;
  stage.out = next;
  stage.powers = buffers.powers2;
  const sweeps2 = system.solveStage(stage);
  buffers.sweeps += sweeps2;
  if (sweeps2 === 0) return Number.NaN;

  // The bracket of the divided difference, slope by slope, gathered by array.
  const e0 = sBefore > 0 ? E0 * sBefore : 0;
  const e1 = ((sBefore > 0 ? E1 : E0 + E1) * s) / STRETCH;
  const e2 = E2 * s;
  return (
    ERROR_SCALE * h * largestCombination(system.watched, e0 - e1, state, -e0, middleBefore, e1 - e2, middle, e2, next)
  );
}

/** max |ca a + cb b + cc c + cd d| over these places in the arrays; NaN if any is NaN. */
function largestCombination(
  places: Int32Array,
  ca: number,
  a: Float64Array,
  cb: number,
  b: Float64Array,
  cc: number,
  c: Float64Array,
  cd: number,
  d: Float64Array,
): number {
  let largest = 0;
  for (let n = 0; n < places.length; n++) {
    const k = places[n];
    largest = Math.max(largest, Math.abs(ca * a[k] + cb * b[k] + cc * c[k] + cd * d[k]));
  }
  return largest;
}

/** Makes the candidate, a step of length `h`, the accepted state. */
export function acceptCandidate(buffers: StepBuffers, h: number): void {
  const { state, middle } = buffers;
  buffers.state = buffers.next;
  buffers.next = state;
  buffers.middle = buffers.middleBefore;
  buffers.middleBefore = middle;
  buffers.sBefore = 1 / (GAMMA * h);
}
