import type { Triage } from '../../../sim/index.ts';

/** Lowest and highest. */
type Range = readonly [number, number];

/** What a picture of the two readings shows, K. */
interface TriageRanges {
  readonly rise: Range;
  readonly approach: Range;
  /** the reading is so far from the causes that little room is left between them */
  readonly isCrowded: boolean;
}

/** For a cause that does not lead the picture is made no longer than this, in doubts; further out it is only pointed to. */
const MOST_DOUBTS = 12;
/** From this length on a doubt is hardly longer than a mark is wide. */
const CROWDED_FROM = 30;

/**
 * Ranges that hold the reading with its doubt, the causes that lead and the healthy car; then the others, nearest
 * first, each as long as the ranges stay short enough for the doubt to be seen.
 */
export function triageRanges({ reading, candidates, leading }: Triage): TriageRanges {
  const { riseDoubt, approachDoubt } = reading;
  const isNeeded = (k: number) => k < leading.length || candidates[k].cause === 'healthy';
  let rise = around(reading.rise, riseDoubt);
  let approach = around(reading.approach, approachDoubt);
  for (const needed of [true, false]) {
    candidates.forEach((candidate, k) => {
      if (isNeeded(k) !== needed) return;
      const [wider, higher] = [widened(rise, candidate.rise), widened(approach, candidate.approach)];
      if (needed || (isShort(wider, rise, riseDoubt) && isShort(higher, approach, approachDoubt))) {
        [rise, approach] = [wider, higher];
      }
    });
  }
  const length = Math.max(lengthOf(rise) / riseDoubt, lengthOf(approach) / approachDoubt);
  return { rise, approach, isCrowded: length >= CROWDED_FROM };
}

const around = (value: number, doubt: number): Range => [value - doubt, value + doubt];
const widened = ([low, high]: Range, value: number): Range => [Math.min(low, value), Math.max(high, value)];
const lengthOf = ([low, high]: Range): number => high - low;
const isShort = (range: Range, before: Range, doubt: number): boolean =>
  lengthOf(range) <= Math.max(MOST_DOUBTS * doubt, lengthOf(before));

/** A value put on the end of a range that it is beyond, and on which side that is: -1, 0 or 1. */
export function heldIn([low, high]: Range, value: number): { readonly value: number; readonly beyond: number } {
  return { value: Math.min(high, Math.max(low, value)), beyond: Number(value > high) - Number(value < low) };
}
