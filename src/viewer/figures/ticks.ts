import { fixed } from '../format.ts';

/** Steps between ticks that read well, over a power of ten. */
const ROUND_STEPS = [1, 2, 2.5, 5, 10];

/** The smallest round step that is at least `least`. */
export function roundStep(least: number): number {
  const power = 10 ** Math.floor(Math.log10(least));
  const step = ROUND_STEPS.find((each) => each * power >= least * (1 - 1e-9)) ?? 10;
  return step * power;
}

/** Steps of a time axis that read well on a clock [s]. */
const TIME_STEPS = [0.1, 0.2, 0.5, 1, 2, 4, 5, 10, 15, 20, 30, 60, 120, 300, 600, 1200, 1800, 3600, 7200, 18_000];

/** The smallest of them that is at least `least`, or the longest [s]. */
export const timeStep = (least: number): number =>
  TIME_STEPS.find((step) => step >= least) ?? TIME_STEPS[TIME_STEPS.length - 1];

/** Multiples of a step from `low` to `high`, both included. */
export function ticksBetween(low: number, high: number, step: number): number[] {
  const ticks: number[] = [];
  const slack = 1e-9 * step;
  for (let k = Math.ceil((low - slack) / step); k * step <= high + slack; k++) ticks.push(k * step);
  return ticks;
}

/** Round values on a range, in steps of which `most` or fewer fit into it. */
export const ticksOn = ([low, high]: readonly [number, number], most: number): number[] =>
  ticksBetween(low, high, roundStep((high - low) / most));

/** Writes ticks with the digits that tell each from the next. */
export function tickWriter([first, second]: readonly number[]): (tick: number) => string {
  const step = Math.abs((second ?? 1) - (first ?? 0));
  const digits = step > 0 && step < 1 ? Math.ceil(-Math.log10(step) - 1e-9) : 0;
  return (tick) => fixed(tick, Number.isInteger(step * 10 ** digits) ? digits : digits + 1);
}

/** A line that moves less than this share of its height is drawn as one that hardly moves. */
const LEAST_SPAN = 0.01;

/** A range with round ends that holds both values, in at most `most` steps. */
export function roundRange(low: number, high: number, most: number): readonly [number, number] {
  const size = Math.max(Math.abs(low), Math.abs(high));
  const span = Math.max(high - low, size === 0 ? 1 : LEAST_SPAN * size);
  // Rounding both ends outwards may take one step more than the span alone: then the next larger step does.
  for (let step = roundStep(span / most); ; step = roundStep(step * 1.01)) {
    const first = Math.floor(low / step + 1e-9);
    const last = Math.max(first + 1, Math.ceil(high / step - 1e-9));
    if (last - first <= most) return [first * step, last * step];
  }
}
