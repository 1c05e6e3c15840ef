import { figure, rangeInWords, type UncertainInput } from '../../../sim/index.ts';
import { boxText, measureOf } from '../../fields/measure.ts';
import { onScreen } from '../../format.ts';
import type { UnitChoice } from '../../state/display.ts';
import { isNumber, readTyped } from '../typed.ts';
import type { Side, TypedEnd } from './own-ranges.ts';
import type { RangeRow } from './range-rows.ts';

/** What the ends of a range are: "W/K", "K added" to what the car has, "times" that. */
export function captionOf({ input, fileUnit }: Pick<RangeRow, 'input' | 'fileUnit'>, units: UnitChoice): string {
  const { caption } = measureOf(fileUnit, units);
  if (input.kind === 'value') return caption;
  return input.kind === 'factor' ? 'times' : `${caption} added`;
}

/** An end as somebody types it. */
export function typedEnd({ fileUnit, bounds }: RangeRow, text: string, units: UnitChoice): TypedEnd {
  return { text, symbol: measureOf(fileUnit, units).symbol, value: readTyped(text, fileUnit, units, bounds) };
}

/** What stands in the box of an end: as typed, written anew in another unit. */
export function endText({ input, fileUnit, ends }: RangeRow, side: Side, units: UnitChoice): string {
  const measure = measureOf(fileUnit, units);
  const end = ends[side];
  return end !== undefined && (end.symbol === measure.symbol || !isNumber(end.value))
    ? end.text
    : boxText(input[side], measure);
}

/** Whether somebody typed the range, or put it on the list. */
export const isTyped = ({ ends, number }: RangeRow): boolean => number !== undefined || Object.keys(ends).length > 0;

/** The whole list in a line. */
export function summaryOf(rows: readonly RangeRow[]): string {
  const varied = rows.filter(({ isVaried }) => isVaried);
  const typed = varied.filter(isTyped).length;
  const left = rows.length - varied.length;
  const ranges = typed === 0 ? ', each over its usual range' : `, ${typed} of them over a typed range`;
  const count = `${varied.length} ${varied.length === 1 ? 'input' : 'inputs'}`;
  return `Varied: ${count}${varied.length === 0 ? '' : ranges}${left === 0 ? '' : `; ${left} left out`}`;
}

/** What the list is based on, said once for all of it. */
export function basisOf(rows: readonly RangeRow[]): string {
  const sources = new Set(rows.filter((row) => !isTyped(row)).map(({ input }) => input.source));
  const usual = sources.size === 0 ? '' : ` Usual ranges: ${[...sources].join('; ')}.`;
  return `“Times” and “added” count from what the car has.${usual}`;
}

/** A range of an answer in the units of the page. */
export function rangeShown({ kind, low, high, unit }: UncertainInput, units: UnitChoice): string {
  const measure = unit && measureOf(unit, units);
  const shown = (end: number): number => Number(figure(measure ? measure.fromFile(end) : end));
  return onScreen(
    rangeInWords({ kind, low: shown(low), high: shown(high), ...(measure && { unit: measure.caption }) }),
  );
}
