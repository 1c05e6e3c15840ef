import { describe, expect, it } from 'vitest';
import { resizeCore, sizeOfCore } from '../../../src/sim/scenario/core-size.ts';

// Figures of the demo cars in scenarios/*.json, whose notes give the sizes: the bigger core is 45 % wider and 30 %
// deeper, one row wider is 9 %. They are rounded to about three figures.
const EXPONENTS = { airConductanceExponent: 0.62, airDropExponent: 1.8 };
const ESTATE = {
  airConductance: 390,
  coolantConductance: 1900,
  airDrop: 9,
  metalHeatCapacity: 2.6,
  coolantVolume: 0.8,
  ...EXPONENTS,
};
const ROADSTER = {
  airConductance: 300,
  coolantConductance: 1500,
  airDrop: 6,
  metalHeatCapacity: 1.8,
  coolantVolume: 0.5,
  ...EXPONENTS,
};
const BIGGER = { width: 1.45, depth: 1.3 };
const ONE_ROW = { width: 1.09, depth: 1 };
const core = (values: readonly number[]) => ({
  airConductance: values[0],
  coolantConductance: values[1],
  airDrop: values[2],
  metalHeatCapacity: values[3],
  coolantVolume: values[4],
});

describe.each([
  ['estate, bigger core', ESTATE, BIGGER, [585, 3582, 6, 4.9, 1.51], [5, 1, 0.1, 0.01, 0.01]],
  ['estate, one row wider', ESTATE, ONE_ROW, [403, 2071, 7.7, 2.834, 0.872], [1, 1, 0.1, 0.001, 0.001]],
  ['roadster, bigger core', ROADSTER, BIGGER, [450, 2828, 4, 3.39, 0.94], [5, 1, 0.1, 0.01, 0.01]],
  ['roadster, one row wider', ROADSTER, ONE_ROW, [310, 1635, 5.14, 1.962, 0.545], [1, 1, 0.01, 0.001, 0.001]],
] as const)('%s', (_, from, size, printed, lastDigit) => {
  it('has the printed figures within their rounding', () => {
    const resized = Object.values(resizeCore(from, size));
    resized.forEach((value, k) => {
      expect(Math.abs(value - printed[k])).toBeLessThanOrEqual(0.5 * lastDigit[k]);
    });
  });

  it('gives its size back from the printed figures', () => {
    const found = sizeOfCore(core(printed), from);
    expect(found?.width).toBeCloseTo(size.width, 1);
    expect(found?.depth).toBeCloseTo(size.depth, 1);
  });
});

describe('a core', () => {
  it('of the same size is itself', () => {
    expect(resizeCore(ESTATE, { width: 1, depth: 1 })).toEqual(core([390, 1900, 9, 2.6, 0.8]));
    expect(sizeOfCore(ESTATE, ESTATE)).toEqual({ width: 1, depth: 1 });
  });

  it('twice as deep is two cores one behind the other: twice of everything', () => {
    expect(resizeCore(ESTATE, { width: 1, depth: 2 })).toEqual(core([780, 3800, 18, 5.2, 1.6]));
  });

  it('twice as wide at twice the air flow is two cores side by side: conductance twice, drop the same', () => {
    // At flow m the conductance goes with m^0.62 and the drop with m^1.8: both taken from half the flow to the whole.
    const { airConductance, airDrop } = resizeCore(ESTATE, { width: 2, depth: 1 });
    expect(airConductance * 2 ** 0.62).toBeCloseTo(2 * 390, 9);
    expect(airDrop * 2 ** 1.8).toBeCloseTo(9, 9);
  });

  it('whose values follow no one size has none', () => {
    expect(sizeOfCore({ ...ESTATE, airConductance: 585 }, ESTATE)).toBeUndefined();
    expect(sizeOfCore({ ...ESTATE, airDrop: 0 }, ESTATE)).toBeUndefined();
    expect(sizeOfCore(ESTATE, { ...ESTATE, airDrop: 0 })).toBeUndefined();
  });
});
