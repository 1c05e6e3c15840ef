import type { ColumnName, TimeSeries } from '../../sim/index.ts';
import { columnShown, joined, type Shown } from '../format.ts';
import { columnAt, momentAt } from '../state/clock.ts';
import type { UnitChoice } from '../state/display.ts';
import type { View } from './view.ts';

/** Both runs on screen: Before, then After where there is one. */
export type SeriesPair = readonly [TimeSeries | undefined, TimeSeries | undefined];

/** What a series says of a quantity at a time; undefined behind its end. */
export function readingAt(
  series: TimeSeries | undefined,
  column: ColumnName,
  time: number,
  units: UnitChoice,
): Shown | undefined {
  if (series === undefined || time > series.columns.time[series.rowCount - 1]) return undefined;
  return columnShown(columnAt(series, column, momentAt(series, time)), column, units);
}

/** A strip in words: between what the quantity goes in the stretch that is shown. */
export function describeTrace(
  title: string,
  column: ColumnName,
  pair: SeriesPair,
  view: View,
  units: UnitChoice,
): string {
  const [before, after] = pair.map((series) => rangeInWords(series, column, view, units));
  if (before === undefined && after === undefined) return `${title}: no run yet.`;
  if (after === undefined) return `${title}, ${view.name}: ${before}.`;
  return `${title}, ${view.name}: Before ${before ?? 'not known'}, After ${after}.`;
}

function rangeInWords(
  series: TimeSeries | undefined,
  column: ColumnName,
  { from, to }: View,
  units: UnitChoice,
): string | undefined {
  if (series === undefined) return undefined;
  const { time } = series.columns;
  const values = series.columns[column].filter((_, row) => time[row] >= from && time[row] <= to);
  if (values.length === 0) return undefined;
  const low = columnShown(Math.min(...values), column, units);
  const high = columnShown(Math.max(...values), column, units);
  return low.value === high.value ? joined(low) : `${low.value} to ${joined(high)}`;
}
