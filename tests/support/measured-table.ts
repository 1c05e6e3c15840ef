import { readFileSync } from 'node:fs';

/** Rows of a file in tests/validation/data by column name; lines that begin with # are its source and licence. */
export function measuredTable(file: string): Record<string, string>[] {
  const text = readFileSync(new URL(`../validation/data/${file}`, import.meta.url), 'utf8');
  const [header, ...rows] = text.split('\n').filter((line) => line !== '' && !line.startsWith('#'));
  const names = header.split(',');
  return rows.map((row) => Object.fromEntries(row.split(',').map((value, k) => [names[k], value])));
}
