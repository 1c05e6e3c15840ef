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
  private readonly arrays: Record<ColumnName, Float64Array>;

  constructor() {
    this.arrays = Object.fromEntries(NAMES.map((name) => [name, new Float64Array(FIRST_CAPACITY)])) as Record<
      ColumnName,
      Float64Array
    >;
  }

  add(row: Row): void {
    if (this.rowCount === this.capacity) this.grow();
    for (const name of NAMES) this.arrays[name][this.rowCount] = row[name];
    this.rowCount++;
  }

  /** The rows so far; the arrays are views that further rows may leave behind. */
  columns(): Record<ColumnName, Float64Array> {
    return Object.fromEntries(NAMES.map((name) => [name, this.arrays[name].subarray(0, this.rowCount)])) as Record<
      ColumnName,
      Float64Array
    >;
  }

  /** A copy of the rows, each column in a buffer of its own. */
  finalColumns(): Record<ColumnName, Float64Array> {
    return Object.fromEntries(NAMES.map((name) => [name, this.arrays[name].slice(0, this.rowCount)])) as Record<
      ColumnName,
      Float64Array
    >;
  }

  private grow(): void {
    this.capacity *= 2;
    for (const name of NAMES) {
      const larger = new Float64Array(this.capacity);
      larger.set(this.arrays[name]);
      this.arrays[name] = larger;
    }
  }
}
