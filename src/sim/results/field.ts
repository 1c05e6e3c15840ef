import ndarray, { type NdArray } from 'ndarray';
import { fromSi } from '../units.ts';
import type { CoreFields } from './time-series.ts';

export type FieldName = 'metal' | 'coolant' | 'air';

/**
 * One of the core's recorded temperatures as an array of three dimensions, without copying.
 *
 * Shape: [rows, along the air, along the coolant], K. `field.pick(row)` is the core at one instant.
 */
export function coreField(core: CoreFields, name: FieldName): NdArray<Float32Array> {
  const { nx, ny } = core;
  const values = core[name];
  return ndarray(values, [values.length / (nx * ny), nx, ny]);
}

/** One instant of a core field as CSV: one line per cell along the air, one column per cell along the coolant, degC. */
export function fieldToCsv(core: CoreFields, name: FieldName, row: number): string {
  const grid = coreField(core, name).pick(row);
  const [nx, ny] = grid.shape;
  const lines: string[] = [];
  for (let i = 0; i < nx; i++) {
    const cells: string[] = [];
    for (let j = 0; j < ny; j++) cells.push(fromSi(grid.get(i, j), 'degC').toFixed(2));
    lines.push(cells.join(','));
  }
  return `${lines.join('\r\n')}\r\n`;
}
