import { COLUMNS, type ColumnName, type PhaseSpan } from './time-series.ts';

const FIRST_CAPACITY = 1024;
const NAMES = Object.keys(COLUMNS) as ColumnName[];

/** One row on its way into the table, by column name. */
export type Row = Record<ColumnName, number>;

export function makeRow(): Row {
  return Object.fromEntries(NAMES.map((name) => [name, 0])) as Row;
}

/** Collects rows in typed arrays that double when full, so that a step allocates nothing in the usual case. */
export class Recorder {
  rowCount = 0;
  readonly phases: PhaseSpan[] = [];
  private capacity = FIRST_CAPACITY;
  /** one a column, in the order of NAMES */
  private readonly arrays = NAMES.map(() => new Float64Array(FIRST_CAPACITY));

  add(row: Row): void {
    if (this.rowCount === this.capacity) this.grow();
    for (let k = 0; k < NAMES.length; k++) this.arrays[k][this.rowCount] = row[NAMES[k]];
    this.rowCount++;
  }

  /** The rows so far; the arrays are views that further rows may leave behind. */
  columns(): Record<ColumnName, Float64Array> {
    return this.byName((array) => array.subarray(0, this.rowCount));
  }

  /** A copy of the rows, each column in a buffer of its own. */
  finalColumns(): Record<ColumnName, Float64Array> {
    return this.byName((array) => array.slice(0, this.rowCount));
  }

  private byName(cut: (array: Float64Array) => Float64Array): Record<ColumnName, Float64Array> {
    return Object.fromEntries(NAMES.map((name, k) => [name, cut(this.arrays[k])])) as Record<ColumnName, Float64Array>;
  }

  private grow(): void {
    this.capacity *= 2;
    this.arrays.forEach((array, k) => {
      this.arrays[k] = new Float64Array(this.capacity);
      this.arrays[k].set(array);
    });
  }
}
