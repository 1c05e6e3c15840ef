import { fromSi } from '../units.ts';
import { COLUMNS, type ColumnName, type TimeSeries } from './time-series.ts';

/**
 * A run as comma-separated text (RFC 4180, decimal points): one header row of names with units, one row per
 * recorded instant. Both sides of a phase joint are recorded, so its time stands twice.
 */
export function seriesToCsv(series: TimeSeries): string {
  const names = Object.keys(COLUMNS) as ColumnName[];
  const lines = [names.map((name) => `${name} [${COLUMNS[name][0]}]`).join(',')];
  for (let row = 0; row < series.rowCount; row++) {
    lines.push(names.map((name) => shortest(fromSi(series.columns[name][row], COLUMNS[name][0]))).join(','));
  }
  return `${lines.join('\r\n')}\r\n`;
}

/** Nine significant digits, no trailing zeros; nothing where the car has no such part. */
function shortest(value: number): string {
  return Number.isNaN(value) ? '' : String(Number(value.toPrecision(9)));
}
