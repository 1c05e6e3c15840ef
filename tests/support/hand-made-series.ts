import { COLUMNS, type ColumnName, type PhaseSpan, type TimeSeries } from '../../src/sim/results/time-series.ts';
import type { PhaseKind } from '../../src/sim/scenario/config/cycle.ts';

/** One phase as rows: [time, charge temperature] with the rest of the columns left at `fill` or given by name. */
export interface HandMadePhase {
  readonly kind: PhaseKind;
  readonly block?: number;
  readonly isWhole?: boolean;
  /** s and K, ascending in time; the first and the last are the ends of the phase */
  readonly rows: readonly (readonly [number, number])[];
  readonly columns?: Partial<Record<ColumnName, readonly number[]>>;
}

/** A time series written by hand, phase by phase; columns that nobody gave are 0. */
export function handMadeSeries(given: readonly HandMadePhase[]): Pick<TimeSeries, 'columns' | 'phases'> {
  const names = Object.keys(COLUMNS) as ColumnName[];
  const lists = Object.fromEntries(names.map((name) => [name, [] as number[]])) as Record<ColumnName, number[]>;
  const phases: PhaseSpan[] = [];
  for (const { kind, block = 0, isWhole = true, rows, columns = {} } of given) {
    const firstRow = lists.time.length;
    rows.forEach(([time, charge], k) => {
      for (const name of names) lists[name].push(columns[name]?.[k] ?? 0);
      lists.time[firstRow + k] = time;
      lists.chargeTemperature[firstRow + k] = charge;
    });
    const [start, end] = [rows[0][0], rows[rows.length - 1][0]];
    phases.push({ name: kind, kind, start, end, firstRow, lastRow: lists.time.length - 1, block, isWhole });
  }
  const columns = Object.fromEntries(names.map((name) => [name, Float64Array.from(lists[name])]));
  return { columns: columns as TimeSeries['columns'], phases };
}
