import { describe, expect, it } from 'vitest';
import { colourScale, cssColour } from '../../../src/viewer/colour-scale.ts';
import type { ColourBy } from '../../../src/viewer/state/display.ts';
import { DEGREES, fieldOf, seriesOf } from './fields.ts';

const seriesBetween = (lowest: number, highest: number, by: ColourBy) => {
  const plain = fieldOf(1, 2, 1, () => 40);
  const field = fieldOf(1, 2, 1, (_, i) => (i === 0 ? lowest : highest));
  return seriesOf([0], { nx: 2, ny: 1, metal: plain, coolant: plain, air: plain, [by]: field });
};
const degrees = ({ low, high }: ReturnType<typeof colourScale>) => [low - DEGREES, high - DEGREES];

describe('the scale of temperatures', () => {
  it('is 25 to 75 degC for metal and coolant, 25 to 125 for air', () => {
    expect(degrees(colourScale('metal', []))).toEqual([25, 75]);
    expect(degrees(colourScale('coolant', [undefined]))).toEqual([25, 75]);
    expect(degrees(colourScale('air', []))).toEqual([25, 125]);
  });

  it('has the colours of inferno', () => {
    const { low, high, colourAt } = colourScale('metal', []);
    // First, 128th and last of the 256 rows that N. J. Smith and S. van der Walt published with matplotlib 1.5 (2015):
    // 0.001462 0.000466 0.013866, 0.735683 0.215906 0.330245, 0.988362 0.998364 0.644924, times 255.
    expect(colourAt(low)).toEqual([0, 0, 4]);
    expect(colourAt(low + (128.5 / 256) * (high - low))).toEqual([188, 55, 84]);
    expect(colourAt(high)).toEqual([252, 255, 164]);
  });

  it('has no colour outside', () => {
    const { low, high, colourAt } = colourScale('metal', []);
    expect(colourAt(low - 1e-6)).toBeUndefined();
    expect(colourAt(high + 1e-6)).toBeUndefined();
    expect(colourAt(Number.NaN)).toBeUndefined();
  });

  it('is widened in steps of 25 K by the coldest and hottest cell of any run, at any time', () => {
    const [usual, hot, cold] = [
      [30, 70],
      [30, 76],
      [-1, 70],
    ].map(([low, high]) => seriesBetween(low, high, 'metal'));
    expect(degrees(colourScale('metal', [usual]))).toEqual([25, 75]);
    expect(degrees(colourScale('metal', [usual, hot]))).toEqual([25, 100]);
    expect(degrees(colourScale('metal', [cold, usual]))).toEqual([-25, 75]);
    expect(degrees(colourScale('air', [seriesBetween(30, 176, 'air')]))).toEqual([25, 200]);
  });

  it('takes only the field that is shown', () => {
    expect(degrees(colourScale('coolant', [seriesBetween(-40, 170, 'air')]))).toEqual([25, 75]);
  });

  it('writes colours for style sheets', () => expect(cssColour([1, 22, 255])).toBe('rgb(1, 22, 255)'));
});
