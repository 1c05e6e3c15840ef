import { type FileUnit, numberRowAt, readQuantity } from '../../sim/index.ts';
import { boxText, measureOf, storedValue } from '../fields/measure.ts';
import type { UnitChoice } from '../state/display.ts';

/** What a box holds: a number in the file's unit, nothing, or a text that is no number within the range. */
export type Typed = number | 'empty' | 'unreadable';

/** Whether a box holds a number. */
export const isNumber = (typed: Typed): typed is number => typeof typed === 'number';

/** Least and greatest, in the file's unit. */
export type Range = readonly [number, number];

/** Unit and range of a number of the file. */
export function keyOfFile(path: string): { readonly unit: FileUnit; readonly range: Range } {
  const row = numberRowAt(path);
  if (row === undefined) throw new Error(`${path} is no number`);
  return { unit: row.unit, range: [row.min, row.max] };
}

/** Reads a text as the boxes of the inputs do: any unit of the quantity, a bare number in the unit shown. */
export function readTyped(text: string, fileUnit: FileUnit, units: UnitChoice, [low, high]: Range): Typed {
  const stored = storedValue(text, measureOf(fileUnit, units));
  if (stored === undefined) return 'empty';
  const reading = readQuantity(String(stored), fileUnit);
  if (reading.kind !== 'value') return 'unreadable';
  return reading.value >= low && reading.value <= high ? reading.value : 'unreadable';
}

/** What a box may hold, in its unit: said where something else stands in it. */
export function expected(
  label: string,
  fileUnit: FileUnit,
  units: UnitChoice,
  range: Range,
  caption = measureOf(fileUnit, units).caption,
): string {
  const [low, high] = range.map((end) => boxText(end, measureOf(fileUnit, units)));
  return `${label}: expected a number, ${low} to ${high}${caption === '' ? '' : ` ${caption}`}.`;
}

/** Why a number will not do where a whole one is wanted; undefined where it will. */
export const whyNotWhole = (label: string, value: number, least: number, most: number): string | undefined =>
  Number.isInteger(value) && value >= least && value <= most
    ? undefined
    : `${label}: expected a whole number, ${least} to ${most}.`;
