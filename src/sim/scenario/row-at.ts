import { parameterGroups } from './parameter-groups.ts';
import { isNumberRow, type NumberRow, type Parameter } from './table.ts';

/** Indices of lists aside: one item of a list may stand without its brackets, and a row is that of all items. */
const unindexed = (path: string): string =>
  path
    .split('.')
    .filter((step) => !/^(\d+|\*)$/.test(step))
    .join('.');

const ROWS: ReadonlyMap<string, Parameter> = new Map(
  parameterGroups().flatMap(({ places, rows }) =>
    places.flatMap((place) =>
      rows.map(({ key, row }): [string, Parameter] => [unindexed(place === '' ? key : `${place}.${key}`), row]),
    ),
  ),
);

/**
 * The row of the parameter table for a key of the file, or for an end of a number that runs through its phase.
 *
 * @param path - of the file
 * @returns undefined where the table has no such key
 * @example
 * rowAt('cycle.1.phases.0.engineSpeed.1')?.label // 'engine speed'
 */
export const rowAt = (path: string): Parameter | undefined => ROWS.get(unindexed(path));

/** As {@link rowAt}, where it is a number. */
export function numberRowAt(path: string): NumberRow | undefined {
  const row = rowAt(path);
  return row !== undefined && isNumberRow(row) ? row : undefined;
}

/** What a number of the file is called, and its unit; the path stands behind where the table has it at more places. */
export function numberInWords(path: string): Pick<NumberRow, 'label'> & Partial<Pick<NumberRow, 'unit'>> {
  const row = numberRowAt(path);
  if (row === undefined) return { label: path };
  const isAtMorePlaces = /\.\d/.test(path) || path.startsWith('second') || path.startsWith('lines.after');
  const label = isAtMorePlaces ? `${row.label} (${path})` : row.label;
  return { label, ...(row.unit !== '-' && row.unit !== 'share' && { unit: row.unit }) };
}
