import type { StageSystem } from './stage-system.ts';

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
 * 0.0404 h^3 y''', hence the factor 0.0808 h. No slope is needed at the start of a step: after a break k0 := k1,
 * which leaves a first-order estimate and a cautious first step.
 *
 * Source: R. Alexander, SIAM J. Numer. Anal. 14(6), 1977, 1006-1021.
 */
export const GAMMA = 1 - Math.SQRT1_2;
export const WEIGHT_1 = 1 - GAMMA;
export const WEIGHT_2 = GAMMA;
const STRETCH = 1 + Math.SQRT2;
const ERROR_SCALE = 0.0808;
const E0 = 2 + Math.SQRT2;
const E1 = -(2 + 2 * Math.SQRT2);
const E2 = Math.SQRT2;

/** Buffers of one run. `state` is the last accepted state; `next` is the candidate after {@link tryStep}. */
export interface StepBuffers {
  state: Float64Array;
  next: Float64Array;
  /** second-stage slope of the last accepted step; not valid while `hasSlope` is false */
  slope: Float64Array;
  nextSlope: Float64Array;
  hasSlope: boolean;
  readonly middle: Float64Array;
  readonly powers1: Float64Array;
  readonly powers2: Float64Array;
  sweeps: number;
}

export function makeStepBuffers(system: StageSystem, start: Float64Array): StepBuffers {
  return {
    state: start.slice(),
    next: new Float64Array(system.size),
    slope: new Float64Array(system.size),
    nextSlope: new Float64Array(system.size),
    hasSlope: false,
    middle: new Float64Array(system.size),
    powers1: new Float64Array(system.powerCount),
    powers2: new Float64Array(system.powerCount),
    sweeps: 0,
  };
}

/**
 * Computes the candidate `buffers.next` for a step of length `h` from `buffers.state`.
 *
 * @returns largest estimated error of any state [K]; NaN where a stage had no answer
 */
export function tryStep(system: StageSystem, time: number, h: number, buffers: StepBuffers): number {
  const { state, middle, next, slope, nextSlope } = buffers;
  const size = system.size;
  const gh = GAMMA * h;
  const s = 1 / gh;

  let sweeps = system.solveStage(1, time + gh, s, state, middle, buffers.powers1);
  buffers.sweeps += sweeps;
  if (sweeps === 0) return Number.NaN;
  for (let k = 0; k < size; k++) middle[k] = state[k] + STRETCH * (middle[k] - state[k]);

  sweeps = system.solveStage(2, time + h, s, middle, next, buffers.powers2);
  buffers.sweeps += sweeps;
  if (sweeps === 0) return Number.NaN;

  const toSlope1 = s / STRETCH;
  const factor = ERROR_SCALE * h;
  const withSlope = buffers.hasSlope;
  let worst = 0;
  for (let k = 0; k < size; k++) {
    const k1 = (middle[k] - state[k]) * toSlope1;
    const k2 = (next[k] - middle[k]) * s;
    nextSlope[k] = k2;
    const bend = withSlope ? E0 * slope[k] + E1 * k1 + E2 * k2 : (E0 + E1) * k1 + E2 * k2;
    const size = bend < 0 ? -bend : bend;
    // Written so that a NaN is kept, and refused by the caller.
    if (!(size <= worst)) worst = size;
  }
  return factor * worst;
}

/** Makes the candidate the accepted state. */
export function acceptCandidate(buffers: StepBuffers): void {
  const { state, slope } = buffers;
  buffers.state = buffers.next;
  buffers.next = state;
  buffers.slope = buffers.nextSlope;
  buffers.nextSlope = slope;
  buffers.hasSlope = true;
}
