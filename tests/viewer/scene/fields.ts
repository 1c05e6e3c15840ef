import type { CoreFields, TimeSeries } from '../../../src/sim/index.ts';

export const DEGREES = 273.15;

/** A field of nx by ny cells at some rows, from a temperature [degC] of row, place along the air and along the coolant. */
export function fieldOf(
  rows: number,
  nx: number,
  ny: number,
  temperature: (row: number, i: number, j: number) => number,
): Float32Array {
  const field = new Float32Array(rows * nx * ny);
  for (let row = 0; row < rows; row++)
    for (let i = 0; i < nx; i++)
      for (let j = 0; j < ny; j++) field[(row * nx + i) * ny + j] = temperature(row, i, j) + DEGREES;
  return field;
}

/** A series with the given fields and times and nothing else. */
export function seriesOf(times: readonly number[], core: CoreFields): TimeSeries {
  const time = Float64Array.from(times);
  return { columns: { time }, rowCount: times.length, core, phases: [] } as unknown as TimeSeries;
}
