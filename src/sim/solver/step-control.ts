/** Errors below this share of the tolerance count as this much; own choice. */
const SMALLEST_ERROR = 1e-4;

/**
 * Next step length after an accepted step: a proportional-integral controller on errors already divided by the
 * tolerance, each at least 1e-4, order 3 of the local error.
 *
 *     h clip(0.9 e^(-0.6/3) e_before^(0.2/3), 0.2, 4)
 *
 * Source of the form: E. Hairer, G. Wanner, Solving Ordinary Differential Equations II, 2nd ed., 1996, IV.2;
 * the exponents were chosen by measurement on this model.
 */
export function nextStepAfterAccepted(h: number, error: number, errorBefore: number): number {
  const e = Math.max(error, SMALLEST_ERROR);
  const before = Math.max(errorBefore, SMALLEST_ERROR);
  return h * Math.min(4, Math.max(0.2, 0.9 * e ** (-0.6 / 3) * before ** (0.2 / 3)));
}

/**
 * Next try after a refused step; a fifth where the error is not a number.
 *
 *     h max(0.2, 0.9 e^(-1/3))
 */
export function nextStepAfterRefused(h: number, error: number): number {
  return h * (error > 0 ? Math.max(0.2, 0.9 * error ** (-1 / 3)) : 0.2);
}
