/** A text, a number, or nothing. */
export type CsvCell = string | number | undefined;

/** Rows as comma-separated text (RFC 4180, decimal points), the head first; what is no number stays empty. */
export function csvOf(head: readonly string[], rows: readonly (readonly CsvCell[])[]): string {
  return [head, ...rows].map((row) => `${row.map(cellOf).join(',')}\r\n`).join('');
}

function cellOf(value: CsvCell): string {
  if (typeof value === 'number') return Number.isFinite(value) ? String(Number(value.toPrecision(9))) : '';
  return value !== undefined && /[",\r\n]/.test(value) ? `"${value.replaceAll('"', '""')}"` : (value ?? '');
}
