/**
 * Value of a curve given by points, straight between them where both axes are logarithmic; the first and the last
 * stretch run on beyond the ends.
 *
 *     y = y[k] (at/x[k])^slope,  slope = ln(y[k]/y[k-1])/ln(x[k]/x[k-1]),  x[k-1] < at <= x[k]
 *
 * Shapes: x and y hold the same number of values, at least 2. Requires x ascending, all values and `at` above 0 (not
 * checked: it stands in inner loops). At a point it returns that point's value, at the first one to rounding.
 * Cost: a bisection, two logarithms and a power, no allocation.
 */
export function readLogTable(x: readonly number[], y: readonly number[], at: number): number {
  const k = stretchOf(x, at);
  return y[k] * (at / x[k]) ** slopeBefore(x, y, k);
}

/** Local power of the curve at `at`: the slope that {@link readLogTable} uses there. */
export function slopeOfLogTable(x: readonly number[], y: readonly number[], at: number): number {
  return slopeBefore(x, y, stretchOf(x, at));
}

/** Index of the upper end of the stretch that holds `at`, or of the first or last stretch. */
function stretchOf(x: readonly number[], at: number): number {
  let low = 0;
  let high = x.length - 1;
  while (high - low > 1) {
    const middle = (low + high) >> 1;
    if (x[middle] < at) low = middle;
    else high = middle;
  }
  return high;
}

function slopeBefore(x: readonly number[], y: readonly number[], k: number): number {
  return Math.log(y[k] / y[k - 1]) / Math.log(x[k] / x[k - 1]);
}

/** `count` values from the lowest to the highest, both ends among them, evenly spaced in their logarithm. */
export function logSpaced(lowest: number, highest: number, count: number): number[] {
  return Array.from({ length: count }, (_, k) => lowest * (highest / lowest) ** (k / (count - 1)));
}

/** A point of a curve: where, what was found there, and the numbers of it that are to be read between points. */
interface Sample<Found> {
  readonly x: number;
  readonly found: Found;
  readonly numbers: readonly number[];
}

/** Stretches to begin with; each is halved at most so often. */
const FIRST_STRETCHES = 12;
const MOST_HALVINGS = 7;

/**
 * Points of a curve from which {@link readLogTable} gives it back: twelve even stretches, each halved until all numbers
 * in its middle are met to a share of themselves. So a kink gets the points it needs.
 *
 * Requires 0 < lowest < highest and numbers above 0. The middle is all that is looked at.
 */
export function sampleCurve<Found>(
  curve: (x: number) => Found,
  numbersOf: (found: Found) => readonly number[],
  [lowest, highest]: readonly [number, number],
  share: number,
): Sample<Found>[] {
  const sampleAt = (x: number): Sample<Found> => {
    const found = curve(x);
    return { x, found, numbers: numbersOf(found) };
  };
  const between = (a: Sample<Found>, b: Sample<Found>, halvings: number): Sample<Found>[] => {
    const middle = sampleAt(Math.sqrt(a.x * b.x));
    const isMet = middle.numbers.every((y, k) => Math.abs(Math.sqrt(a.numbers[k] * b.numbers[k]) / y - 1) < share);
    if (isMet || halvings === 0) return [];
    return [...between(a, middle, halvings - 1), middle, ...between(middle, b, halvings - 1)];
  };
  const [first, ...rest] = logSpaced(lowest, highest, FIRST_STRETCHES + 1).map(sampleAt);
  let last = first;
  const samples = [first];
  for (const next of rest) {
    samples.push(...between(last, next, MOST_HALVINGS), next);
    last = next;
  }
  return samples;
}
