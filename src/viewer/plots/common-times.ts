import type { ColumnName, TimeSeries } from '../../sim/index.ts';

/**
 * Times at which several series are drawn together: every recorded time of each. A joint of two phases, where a
 * quantity may leap, stands there twice: as seen from the left, then from the right.
 */
export interface CommonTimes {
  readonly times: number[];
  readonly isRight: readonly boolean[];
}

/** Merges the recorded times of all series. */
export function commonTimes(series: readonly (TimeSeries | undefined)[]): CommonTimes {
  const columns = series.flatMap((each) => (each === undefined ? [] : [each.columns.time]));
  const next = columns.map(() => 0);
  const times: number[] = [];
  const isRight: boolean[] = [];
  for (;;) {
    const time = Math.min(...columns.map((column, k) => column[next[k]] ?? Number.POSITIVE_INFINITY));
    if (time === Number.POSITIVE_INFINITY) return { times, isRight };
    let isJoint = false;
    for (let k = 0; k < columns.length; k++) {
      const first = next[k];
      while (columns[k][next[k]] === time) next[k]++;
      isJoint ||= next[k] - first > 1;
    }
    times.push(time);
    isRight.push(false);
    if (isJoint) {
      times.push(time);
      isRight.push(true);
    }
  }
}

/**
 * A recorded quantity at common times, linear between rows; null where the series has nothing to say.
 *
 * @param toShown - from SI to the unit of the plot
 */
export function sampled(
  { times, isRight }: CommonTimes,
  series: TimeSeries | undefined,
  column: ColumnName,
  toShown: (si: number) => number,
): (number | null)[] {
  if (series === undefined) return times.map(() => null);
  const { time } = series.columns;
  const values = series.columns[column];
  let row = 0;
  return times.map((at, k) => {
    while (row < time.length && (isRight[k] ? time[row + 1] <= at : time[row] < at)) row++;
    if (row >= time.length || (row === 0 && at < time[0])) return null;
    if (time[row] === at) return toShown(values[row]);
    const low = time[row] > at ? row - 1 : row;
    if (low + 1 >= time.length) return null;
    const share = (at - time[low]) / (time[low + 1] - time[low]);
    return toShown(values[low] + share * (values[low + 1] - values[low]));
  });
}

/** Lowest and highest value of a column over several series [SI]; undefined where there is none. */
export function extremes(
  series: readonly (TimeSeries | undefined)[],
  column: ColumnName,
): readonly [number, number] | undefined {
  let low = Number.POSITIVE_INFINITY;
  let high = Number.NEGATIVE_INFINITY;
  for (const each of series) {
    for (const value of each?.columns[column] ?? []) {
      if (value < low) low = value;
      if (value > high) high = value;
    }
  }
  return low <= high ? [low, high] : undefined;
}
