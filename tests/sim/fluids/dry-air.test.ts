import { describe, expect, test } from 'vitest';
import { airConductivity, airHeatCapacity, airViscosity } from '../../../src/sim/fluids/dry-air.ts';

function worstError(
  property: (temperature: number) => number,
  expected: readonly (readonly [number, number])[],
): number {
  return Math.max(...expected.map(([T, value]) => Math.abs(property(T) / value - 1)));
}

/**
 * [K, W/(m K)] and the like: Incropera, DeWitt, Bergman, Lavine, Fundamentals of Heat and Mass Transfer, 2007, table
 * A.4, whose heat capacity is that of the real gas at 1 atm.
 */
const TEXTBOOK_TEMPERATURES = [250, 300, 350, 400, 450, 500, 550];
const tabulated = (values: readonly number[]) => TEXTBOOK_TEMPERATURES.map((T, k) => [T, values[k]] as const);

describe('heat capacity', () => {
  test('is the ideal-gas part of the published equation of state', () => {
    // Lemmon et al. 2000 in 30-digit arithmetic; equal to the open libraries iapws 1.5.3 and CoolProp 8.0.0 (5e-7)
    expect(
      worstError(airHeatCapacity, [
        [230, 1002.7],
        [273.15, 1003.682],
        [298.15, 1004.687],
        [350, 1008.1],
        [400, 1013.33],
        [423.15, 1016.415],
        [473.15, 1024.413],
        [550, 1039.648],
      ]),
    ).toBeLessThan(6e-7);
  });

  test('is within 0.35 % of a textbook table', () => {
    expect(worstError(airHeatCapacity, tabulated([1006, 1007, 1009, 1014, 1021, 1030, 1040]))).toBeLessThan(0.0035);
  });
});

describe('viscosity', () => {
  test('is the formula of the standard', () => {
    // ISO 2533:1975 in 30-digit arithmetic
    expect(
      worstError(airViscosity, [
        [230, 1.494031e-5],
        [273.15, 1.716079e-5],
        [298.15, 1.837234e-5],
        [350, 2.073597e-5],
        [400, 2.285266e-5],
        [423.15, 2.378614e-5],
        [473.15, 2.571448e-5],
        [550, 2.847702e-5],
      ]),
    ).toBeLessThan(1e-6);
  });

  test('is within 1.7 % of Lemmon and Jacobsen and 1.3 % of a textbook table', () => {
    // E. W. Lemmon, R. T Jacobsen, Int. J. Thermophys. 25(1), 2004; equal to CoolProp 8.0.0 within 4e-6
    expect(
      worstError(airViscosity, [
        [230, 1.49833e-5],
        [273.15, 1.72184e-5],
        [298.15, 1.84481e-5],
        [350, 2.08672e-5],
        [400, 2.30554e-5],
        [423.15, 2.40269e-5],
        [473.15, 2.60461e-5],
        [550, 2.89679e-5],
      ]),
    ).toBeLessThan(0.017);
    const table = [1.596e-5, 1.846e-5, 2.082e-5, 2.301e-5, 2.507e-5, 2.701e-5, 2.884e-5];
    expect(worstError(airViscosity, tabulated(table))).toBeLessThan(0.013);
  });
});

describe('thermal conductivity', () => {
  test('is the formula of the standard', () => {
    // ISO 2533:1975 in 30-digit arithmetic
    expect(
      worstError(airConductivity, [
        [230, 0.02062213],
        [273.15, 0.02413799],
        [298.15, 0.02610813],
        [350, 0.03004349],
        [400, 0.03365715],
        [423.15, 0.03527406],
        [473.15, 0.03865357],
        [550, 0.04357385],
      ]),
    ).toBeLessThan(1e-6);
  });

  test('is within 1.7 % of Lemmon and Jacobsen and 1 % of a textbook table', () => {
    // as for the viscosity; equal to CoolProp 8.0.0 within 2e-6
    expect(
      worstError(airConductivity, [
        [230, 0.0209713],
        [273.15, 0.0243605],
        [298.15, 0.0262469],
        [350, 0.0300033],
        [400, 0.0334532],
        [423.15, 0.0350007],
        [473.15, 0.0382486],
        [550, 0.0430237],
      ]),
    ).toBeLessThan(0.017);
    const table = [0.0223, 0.0263, 0.03, 0.0338, 0.0373, 0.0407, 0.0439];
    expect(worstError(airConductivity, tabulated(table))).toBeLessThan(0.01);
  });
});
