import { evenly, type GridAxis } from '../../../sim/index.ts';
import type { FileNumber } from '../file-numbers.ts';
import { isNumber, type Range, type Typed } from '../typed.ts';

/** A number of the car that is gone through: from where to where, in the unit of the file, and at how many values. */
export interface AxisChoice {
  readonly path: string;
  readonly low: Typed;
  readonly high: Typed;
  readonly count: number;
}

/** Either side of what the car has, as a share of it. */
const REACH = 0.3;
/** Runs that a page waits for; the command line has no such end. */
const MOST_CASES = 240;

/** What a file may hold of a number. */
export const rangeOf = ({ row: { min, max } }: FileNumber): Range => [min, max];

/** Either side of what the car has, as far as the file allows; a number that is 0 goes to where it is usual. */
export function usualChoice(number: FileNumber, count: number): AxisChoice {
  const { path, value, row } = number;
  const [least, most] = rangeOf(number);
  const within = (end: number) => Number(Math.min(most, Math.max(least, end)).toPrecision(4));
  const reach = value === 0 ? (row.usual?.[1] ?? 1) : REACH * Math.abs(value);
  return { path, low: within(value - reach), high: within(value + reach), count };
}

/** The axes of some choices; as text, why they are none yet. */
export function axesOf(
  choices: readonly AxisChoice[],
  nameOf: (path: string) => string,
): readonly GridAxis[] | { readonly why: string } {
  if (choices.length === 0) return { why: 'Choose a number of the car.' };
  const axes: GridAxis[] = [];
  for (const { path, low, high, count } of choices) {
    if (!isNumber(low) || !isNumber(high)) return { why: `${nameOf(path)}: both ends are needed.` };
    if (low === high) return { why: `${nameOf(path)}: the two ends are the same.` };
    axes.push({ path, values: evenly(low, high, count) });
  }
  if (axes.length === 2 && axes[0].path === axes[1].path) return { why: 'Twice the same number: choose another.' };
  const cases = axes.reduce((product, { values }) => product * values.length, 1);
  return cases > MOST_CASES
    ? { why: `${cases} cars are more than the ${MOST_CASES} that a page waits for: take fewer values.` }
    : axes;
}
