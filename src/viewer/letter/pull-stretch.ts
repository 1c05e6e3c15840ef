import type { ColumnName, PullSummary, TimeSeries } from '../../sim/index.ts';
import { LEAD, TAIL } from '../plots/view.ts';

/** The stretch that is shown of a pull, as the plots show one, in seconds from its start. */
export const stretchOf = ({ duration }: PullSummary): readonly [number, number] => [
  -LEAD * duration,
  (1 + TAIL) * duration,
];

/** A recorded quantity around a pull: seconds from the pull's start with their values, SI. */
export function curveAround(series: TimeSeries, name: ColumnName, pull: PullSummary): [number, number][] {
  const [from, to] = stretchOf(pull);
  const { time } = series.columns;
  const points: [number, number][] = [];
  for (let row = 0; row < series.rowCount; row++) {
    const since = time[row] - pull.start;
    if (since >= from && since <= to) points.push([since, series.columns[name][row]]);
  }
  return points;
}
