/** Root above 1 of x^(d + 1) = x + 1; converges to rounding well before these many turns. */
const TURNS = 60;
/** 2^32 over the golden ratio: whole numbers come out far apart */
const STRIDE = 0x9e3779b9;
/** constants of the finaliser of MurmurHash3 */
const MIX = [0x85ebca6b, 0xc2b2ae35] as const;

/**
 * Points that fill the unit cube evenly from the first on, each independent of how many follow (additive recurrence).
 *
 *     x_i(n) = frac( s_i + n g^-(i + 1) ),   g^(d + 1) = g + 1,   i = 0 .. d - 1
 *
 * For d = 1 the step is the golden ratio's. The start s is drawn from the seed, a number for each axis, so another seed
 * shifts the whole sequence. Same seed, same points, on any machine: only integer products and sums go into s.
 *
 * Shapes: point n is a new list of `dimensions` numbers in [0, 1). Cost: d products a point; nothing is kept between
 * points, so any one can be asked for alone.
 *
 * @param dimensions - count of axes, at least 1
 * @param seed - any whole number
 * @returns point n, counted from 0
 *
 * @example
 * quasiRandom(2, 1)(0).length // 2
 *
 * [1] M. Roberts, The unreasonable effectiveness of quasirandom sequences, 2018 (the generalised golden ratio).
 * [2] H. Niederreiter, Random Number Generation and Quasi-Monte Carlo Methods, SIAM, 1992, chapter 3 (the recurrence).
 */
export function quasiRandom(dimensions: number, seed: number): (n: number) => number[] {
  let root = 2;
  for (let turn = 0; turn < TURNS; turn++) root = (1 + root) ** (1 / (dimensions + 1));
  const steps = Array.from({ length: dimensions }, (_, axis) => root ** -(axis + 1));
  const starts = steps.map((_, axis) => scattered(seed, axis));
  return (n) => steps.map((step, axis) => (starts[axis] + n * step) % 1);
}

/** A number in [0, 1) that looks drawn by lot, from two whole numbers. */
function scattered(seed: number, axis: number): number {
  let bits = (Math.imul(seed, STRIDE) + Math.imul(axis + 1, MIX[0])) | 0;
  bits = Math.imul(bits ^ (bits >>> 16), MIX[0]);
  bits = Math.imul(bits ^ (bits >>> 13), MIX[1]);
  return ((bits ^ (bits >>> 16)) >>> 0) / 2 ** 32;
}
