import ndarray, { type NdArray } from 'ndarray';
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
