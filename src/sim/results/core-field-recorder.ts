import type { CoreFields } from './time-series.ts';

const FIRST_ROWS = 256;

type Triple = [Float32Array, Float32Array, Float32Array];

/** Collects the core's cell temperatures row by row, in arrays that double when full. */
export class CoreFieldRecorder {
  private readonly nx: number;
  private readonly ny: number;
  private readonly cellCount: number;
  private rowCount = 0;
  private capacity = FIRST_ROWS;
  private arrays: Triple;

  constructor(nx: number, ny: number) {
    this.nx = nx;
    this.ny = ny;
    this.cellCount = nx * ny;
    this.arrays = this.makeArrays();
  }

  /** Views of the next row, to be written: metal, coolant, air. */
  nextRow(): Triple {
    if (this.rowCount === this.capacity) {
      const full = this.arrays;
      this.capacity *= 2;
      this.arrays = this.makeArrays();
      this.arrays.forEach((array, k) => {
        array.set(full[k]);
      });
    }
    const start = this.rowCount * this.cellCount;
    this.rowCount++;
    return this.arrays.map((array) => array.subarray(start, start + this.cellCount)) as Triple;
  }

  /** The rows so far, each array in a buffer of its own. */
  finish(): CoreFields {
    const [metal, coolant, air] = this.arrays.map((array) => array.slice(0, this.rowCount * this.cellCount));
    return { nx: this.nx, ny: this.ny, metal, coolant, air };
  }

  private makeArrays(): Triple {
    const make = () => new Float32Array(this.capacity * this.cellCount);
    return [make(), make(), make()];
  }
}
