import { type Config, startRun } from '../sim/index.ts';

/** Rows that --interval may add to one run: a table of a million is beyond any reader. */
const MOST_ROWS = 1e6;

/** Whether an interval would record more rows than anybody reads; says so. */
export function hasTooManyRows(config: Config, { interval }: { readonly interval?: number }): boolean {
  const { duration } = startRun(config);
  const rows = interval === undefined ? 0 : duration / interval;
  if (rows <= MOST_ROWS) return false;
  console.error(
    `--interval ${interval} s over ${duration} s records ${rows.toPrecision(2)} rows; expected at least ${duration / MOST_ROWS} s, for a million rows.`,
  );
  return true;
}
