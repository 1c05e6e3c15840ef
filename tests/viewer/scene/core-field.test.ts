import { describe, expect, it } from 'vitest';
import { colourScale } from '../../../src/viewer/colour-scale.ts';
import { cellTemperature, fillColours, fillPlain, isSolvedAt } from '../../../src/viewer/scene/core-field.ts';
import { DEGREES, fieldOf, seriesOf } from './fields.ts';

const [NX, NY] = [2, 3];
const metal = fieldOf(2, NX, NY, (row, i, j) => 30 + 10 * i + j + 5 * row);
const core = { nx: NX, ny: NY, metal, coolant: fieldOf(2, NX, NY, () => 20), air: fieldOf(2, NX, NY, () => 80) };
const half = { row: 0, nextRow: 1, share: 0.5, phase: undefined };

describe('a cell of the core', () => {
  it('is linear between two recorded rows', () => {
    expect(cellTemperature(core, 'metal', { ...half, share: 0 }, 1, 2) - DEGREES).toBeCloseTo(42, 4);
    expect(cellTemperature(core, 'metal', half, 1, 2) - DEGREES).toBeCloseTo(44.5, 4);
    expect(cellTemperature(core, 'metal', half, 0, 2) - DEGREES).toBeCloseTo(34.5, 4);
    expect(cellTemperature(core, 'air', half, 0, 0) - DEGREES).toBeCloseTo(80, 4);
  });

  it('gets the colour of its temperature, in its place', () => {
    const scale = colourScale('metal', []);
    const out = new Uint8ClampedArray(4 * NX * NY);
    fillColours(core, 'metal', half, scale, [1, 2, 3], out);
    for (let i = 0; i < NX; i++)
      for (let j = 0; j < NY; j++) {
        // 30 degC and 10 more a cell along the air, 1 along the coolant, and half of the 5 of the next row.
        const expected = scale.colourAt(32.5 + 10 * i + j + DEGREES) ?? [];
        expect([...out.slice(4 * (i * NY + j), 4 * (i * NY + j) + 4)]).toEqual([...expected, 255]);
      }
  });

  it('is neutral where the scale does not reach', () => {
    const out = new Uint8ClampedArray(4 * NX * NY);
    fillColours(core, 'coolant', half, colourScale('metal', []), [1, 2, 3], out);
    expect([...out.slice(0, 4)]).toEqual([1, 2, 3, 255]);
  });

  it('can be left without a colour', () => {
    const out = new Uint8ClampedArray(8);
    fillPlain([9, 8, 7], out);
    expect([...out]).toEqual([9, 8, 7, 255, 9, 8, 7, 255]);
  });
});

describe('a time', () => {
  it('is solved up to the last row and no further', () => {
    const series = seriesOf([0, 10], core);
    expect(isSolvedAt(series, 10)).toBe(true);
    expect(isSolvedAt(series, 10.1)).toBe(false);
    expect(isSolvedAt({ ...series, rowCount: 0 }, 0)).toBe(false);
  });
});
