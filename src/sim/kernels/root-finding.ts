/** First step away from the guess, as a share of it: about the error of a guess taken from the step before. */
const FIRST_STEP = 1e-4;
/** How much further than the last step the next may reach while no change of sign has been met. */
const GROWTH = 100;
/** Steps from the guess before both ends are asked instead. */
const MOST_STEPS_FROM_GUESS = 12;

/**
 * Root of f between low and high, always from two points where f has opposite signs.
 *
 * Without a guess it brackets with both ends and runs Brent's method. With a guess it walks out from there by secant
 * steps until the sign changes, so that a good guess costs 4 or 5 calls and the ends are never visited; only where the
 * walk meets no change of sign are both ends called. Where f has several roots, which one is found depends on the
 * guess.
 *
 * Precondition: f is continuous on low..high and low < high. The answer is off by at most `relativeTolerance` of
 * itself, or by the rounding of the interval where the root is next to zero. Deterministic; allocates nothing.
 *
 * @param f - function whose root is wanted
 * @param low - lower end of the interval
 * @param high - upper end of the interval
 * @param relativeTolerance - largest error of the root, as a share of it; below machine rounding it is rounding
 * @param guess - point to start from; one outside low..high is ignored
 * @returns the root, or NaN where f has the same sign at both ends or is NaN at a point it was asked for
 *
 * @example
 * findRoot((x) => x * x - 2, 0, 2, 1e-12) // 1.4142135623731
 *
 * [1] R. P. Brent, Algorithms for Minimization without Derivatives, 1973, chapter 4.
 */
export function findRoot(
  f: (x: number) => number,
  low: number,
  high: number,
  relativeTolerance: number,
  guess?: number,
): number {
  const smallest = Number.EPSILON * (high - low);
  if (guess === undefined || !(guess > low && guess < high)) {
    return brent(f, low, f(low), high, f(high), relativeTolerance, smallest);
  }

  let previous = guess;
  let fPrevious = f(previous);
  if (fPrevious === 0) return guess;
  let step = Math.max(FIRST_STEP * Math.abs(guess), smallest);
  for (let count = 0; count < MOST_STEPS_FROM_GUESS; count++) {
    const next = Math.min(Math.max(previous + step, low), high);
    const fNext = f(next);
    if (Math.sign(fPrevious) !== Math.sign(fNext)) {
      return brent(f, previous, fPrevious, next, fNext, relativeTolerance, smallest);
    }
    if (next === low || next === high) break;
    const moved = next - previous;
    step = (-fNext * moved) / (fNext - fPrevious);
    if (Number.isNaN(step)) break;
    // A little beyond the secant's answer, else it creeps up to the root from one side and never shows the other.
    const beyond = relativeTolerance * Math.abs(next) + smallest;
    step = Math.sign(step) * Math.min(Math.abs(step) + beyond, GROWTH * Math.abs(moved) + beyond);
    previous = next;
    fPrevious = fNext;
  }
  return brent(f, low, f(low), high, f(high), relativeTolerance, smallest);
}

/** Brent's method from two points; NaN unless f changes sign between them. */
function brent(
  f: (x: number) => number,
  start: number,
  fStart: number,
  end: number,
  fEnd: number,
  relativeTolerance: number,
  smallest: number,
): number {
  if (fStart === 0) return start;
  if (fEnd === 0) return end;
  if (!(Math.sign(fStart) * Math.sign(fEnd) < 0)) return Number.NaN;

  // b is the best point so far, a the one before it, and the root lies between b and c.
  let a = start;
  let fa = fStart;
  let b = end;
  let fb = fEnd;
  let c = a;
  let fc = fa;
  let step = b - a;
  let stepBefore = step;
  for (;;) {
    if (Math.abs(fc) < Math.abs(fb)) {
      a = b;
      fa = fb;
      b = c;
      fb = fc;
      c = a;
      fc = fa;
    }
    const tolerance = (2 * Number.EPSILON + 0.5 * relativeTolerance) * Math.abs(b) + smallest;
    const half = 0.5 * (c - b);
    if (fb === 0 || Math.abs(half) <= tolerance) return b;

    // Secant through two points, or the inverse parabola through three; p / q is the step it asks for.
    let p: number;
    let q: number;
    if (a === c) {
      p = (2 * half * fb) / fa;
      q = 1 - fb / fa;
    } else {
      const s = fb / fa;
      const r = fb / fc;
      const t = fa / fc;
      p = s * (2 * half * t * (t - r) - (b - a) * (r - 1));
      q = (t - 1) * (r - 1) * (s - 1);
    }
    if (p > 0) q = -q;
    else p = -p;
    const isTrusted =
      Math.abs(stepBefore) >= tolerance &&
      Math.abs(fa) > Math.abs(fb) &&
      2 * p < Math.min(3 * half * q - Math.abs(tolerance * q), Math.abs(stepBefore * q));
    stepBefore = isTrusted ? step : half;
    step = isTrusted ? p / q : half;

    a = b;
    fa = fb;
    b += Math.abs(step) > tolerance ? step : Math.sign(half) * tolerance;
    fb = f(b);
    if (Number.isNaN(fb)) return Number.NaN;
    if (Math.sign(fb) === Math.sign(fc)) {
      c = a;
      fc = fa;
      step = b - a;
      stepBefore = step;
    }
  }
}
