import { describe, expect, test } from 'vitest';
import {
  bendLossRennels,
  contractionLossRennels,
  expansionLossBordaCarnot,
} from '../../../src/sim/correlations/losses.ts';
import { OutOfRangeError } from '../../../src/sim/errors.ts';

function relativeError(value: number, expected: number): number {
  return Math.abs(value / expected - 1);
}

describe('bend of 90 degrees', () => {
  // Rennels and Hudson 2012, chapter 15, computed in 30-digit arithmetic; equal to the open library fluids 1.0.22
  test.each([
    [0.02, 1, 0.3404041521],
    [0.02, 1.5, 0.2425918809],
    [0.02, 2, 0.2185677622],
    [0.02, 4, 0.2430865361],
    [0.03, 1, 0.4752508891],
    [0.03, 1.5, 0.3285324824],
    [0.03, 2, 0.2924963042],
    [0.03, 4, 0.3292744651],
  ])('at friction %f and R/D %f is the published formula', (friction, radiusRatio, expected) => {
    expect(relativeError(bendLossRennels(radiusRatio, friction), expected)).toBeLessThan(1e-9);
  });

  // Crane, Flow of Fluids, Technical Paper 410M, 2009, page A-29: K = n fT of clean steel pipe
  test.each([
    [1, 20],
    [1.5, 14],
    [2, 12],
    [3, 12],
    [4, 14],
  ])('at R/D %f is within a fifth of the handbook table', (radiusRatio, n) => {
    const friction = 0.026; // fT of 1/2 inch pipe, the same table
    expect(relativeError(bendLossRennels(radiusRatio, friction), n * friction)).toBeLessThan(0.2);
  });

  test('refuses what is outside its range', () => {
    expect(() => bendLossRennels(0.9, 0.02)).toThrow('bend radius over bore is 0.9; expected 1 to 20');
    expect(() => bendLossRennels(25, 0.02)).toThrow(OutOfRangeError);
    expect(() => bendLossRennels(2, 0)).toThrow(OutOfRangeError);
    expect(() => bendLossRennels(2, 0.2)).toThrow(OutOfRangeError);
  });
});

describe('sudden expansion', () => {
  // J.-C. Borda 1766, L. Carnot 1803; equal to the open library fluids 1.0.22: [mm, mm, K on the SMALLER bore]
  test.each([
    [8, 12, 0.308641975309],
    [12, 19, 0.361330867627],
    [15, 19, 0.141926473861],
    [16, 32, 0.5625],
    [19, 60, 0.80950007716],
    [25, 32, 0.151825904846],
  ])('%f to %f mm is the published formula, on the larger bore', (bore, nextBore, onSmaller) => {
    // The same pressure on another velocity head: K2 = K1 (d2/d1)^4
    const expected = onSmaller * (nextBore / bore) ** 4;
    expect(relativeError(expansionLossBordaCarnot(bore / 1000, nextBore / 1000), expected)).toBeLessThan(1e-9);
  });

  test('15 to 19 mm at 3 m/s loses 658 Pa of total pressure, and the static pressure rises by 2177 Pa', () => {
    // momentum balance written directly: p2 - p1 = rho V2 (V1 - V2), loss = rho (V1 - V2)^2 / 2; rho 1030 kg/m3
    const density = 1030;
    const fast = 3;
    const slow = fast * (15 / 19) ** 2;
    const loss = (expansionLossBordaCarnot(0.015, 0.019) * density * slow ** 2) / 2;
    expect(relativeError(loss, 657.8292063)).toBeLessThan(1e-9);
    expect(relativeError((density * (fast ** 2 - slow ** 2)) / 2 - loss, 2176.640756)).toBeLessThan(1e-9);
  });

  test('of no change costs nothing, and a narrower bore is refused', () => {
    expect(expansionLossBordaCarnot(0.019, 0.019)).toBe(0);
    expect(() => expansionLossBordaCarnot(0.019, 0.015)).toThrow(OutOfRangeError);
    expect(() => expansionLossBordaCarnot(0, 0.015)).toThrow(OutOfRangeError);
  });
});

describe('sudden contraction', () => {
  // [mm, mm, Rennels and Hudson 2012 chapter 10 (30-digit arithmetic, equal to the open library fluids 1.0.22),
  //  Crane 2009: 0.5 (1 - s), Idelchik 1966: 0.5 (1 - s)^0.75], all on the smaller bore
  test.each([
    [12, 8, 0.3839320138, 0.2777777778, 0.3217478292],
    [19, 12, 0.4145376083, 0.3005540166, 0.3413378144],
    [19, 15, 0.244335129, 0.188365651, 0.2404328388],
    [32, 16, 0.4955804785, 0.375, 0.4029637244],
    [60, 19, 0.5476654978, 0.4498611111, 0.4619035922],
    [32, 25, 0.2550960928, 0.1948242188, 0.246589573],
  ])('%f to %f mm is the published formula, near two others', (bore, nextBore, expected, crane, idelchik) => {
    const value = contractionLossRennels(bore / 1000, nextBore / 1000);
    expect(relativeError(value, expected)).toBeLessThan(1e-9);
    expect(value - crane).toBeGreaterThan(0);
    expect(value - crane).toBeLessThan(0.125);
    expect(Math.abs(value - idelchik)).toBeLessThan(0.1);
  });

  test('of no change costs nothing, and a wider bore is refused', () => {
    expect(contractionLossRennels(0.019, 0.019)).toBe(0);
    expect(() => contractionLossRennels(0.015, 0.019)).toThrow(OutOfRangeError);
    expect(() => contractionLossRennels(0.015, 0)).toThrow(OutOfRangeError);
  });
});
