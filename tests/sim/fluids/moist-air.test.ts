import { describe, expect, test } from 'vitest';
import {
  AIR_GAS_CONSTANT,
  AIR_HEAT_CAPACITY,
  AIR_ISENTROPIC_EXPONENT,
  dewPoint,
  evaporationHeat,
  humidityRatio,
  saturationPressure,
} from '../../../src/sim/fluids/moist-air.ts';

function relativeError(value: number, expected: number): number {
  return Math.abs(value / expected - 1);
}

test('the constants of dry air are near the published ones', () => {
  // 287.05287 ISO 2533:1975; 287.042 ASHRAE. cp and gamma at 50 degC: Lemmon et al., J. Phys. Chem. Ref. Data 29(3),
  // 2000
  expect(relativeError(AIR_GAS_CONSTANT, 287.05287)).toBeLessThan(2e-5);
  expect(relativeError(AIR_HEAT_CAPACITY, 1006.091)).toBeLessThan(2e-4);
  expect(relativeError(AIR_ISENTROPIC_EXPONENT, 1.39921)).toBeLessThan(1e-3);
});

describe('saturation pressure', () => {
  test('is within 0.25 % of Hyland and Wexler from 5 to 50 degC', () => {
    // R. W. Hyland, A. Wexler, ASHRAE Trans. 89(2A), 1983, the handbook's formula, computed in 30-digit arithmetic
    for (const [T, expected] of [
      [278.15, 872.48665],
      [283.15, 1227.9953],
      [293.15, 2338.8037],
      [303.15, 4246.0302],
      [313.15, 7383.46],
      [323.15, 12349.856],
    ]) {
      expect(relativeError(saturationPressure(T), expected), `${T} K`).toBeLessThan(2.5e-3);
    }
  });

  test('is 1 to 1.5 % high at 80 degC, past its range', () => {
    // IAPWS R7-97(2012), region 4
    const excess = saturationPressure(353.15) / 47414.72 - 1;
    expect(excess).toBeGreaterThan(0.01);
    expect(excess).toBeLessThan(0.015);
  });
});

describe('moist air', () => {
  // ASHRAE Handbook: Fundamentals (2017), chapter 1, perfect-gas relations with Hyland and Wexler; equal to the open
  // library psychrolib 1.1.1 within 2e-4: [K, Pa, relative humidity, kg/kg, dew point K]
  test.each([
    [303.15, 101325, 0.6, 0.01604345, 294.5377],
    [298.15, 101325, 0.5, 0.009882724, 287.0139],
    [308.15, 101325, 0.8, 0.02892474, 304.1745],
    [293.15, 89874.57, 0.4, 0.006543203, 279.1551],
  ])('at %f K, %f Pa and %f carries the handbook humidity ratio and dew point', (T, pressure, humidity, ratio, dew) => {
    expect(relativeError(humidityRatio(T, pressure, humidity), ratio)).toBeLessThan(3e-3);
    expect(Math.abs(dewPoint(ratio, pressure) - dew)).toBeLessThan(0.05);
  });

  test('has a higher dew point under boost, above the air outside', () => {
    // the same relations: air of 30 degC, 60 % and 101.325 kPa, compressed; [Pa, K]
    const ratio = humidityRatio(303.15, 101325, 0.6);
    for (const [pressure, expected] of [
      [120000, 297.3276],
      [150000, 301.1011],
      [200000, 306.1298],
      [250000, 310.1643],
    ]) {
      expect(Math.abs(dewPoint(ratio, pressure) - expected), `${pressure} Pa`).toBeLessThan(0.05);
    }
  });

  test('of 36 degC and 60 % has its dew point at 27 degC outside and at 39 degC at 199 kPa', () => {
    // vapour pressure 0.6 x 5947.5 Pa (IAPWS-IF97 at 36 degC) = 3568 Pa outside and 7101 Pa at 199 kPa; IF97 saturation
    // at these two is 27.00 and 39.27 degC
    const ratio = humidityRatio(309.15, 100000, 0.6);
    expect(Math.abs(dewPoint(ratio, 100000) - 273.15 - 27.0)).toBeLessThan(0.05);
    expect(Math.abs(dewPoint(ratio, 199000) - 273.15 - 39.27)).toBeLessThan(0.05);
  });

  test('answers its own dew point with 100 % humidity', () => {
    for (const pressure of [60000, 101325, 250000]) {
      for (let T = 243.15; T <= 333.15; T += 5) {
        expect(dewPoint(humidityRatio(T, pressure, 1), pressure)).toBeCloseTo(T, 8);
      }
    }
  });

  test('without vapour has a dew point below any temperature of a car', () => {
    expect(dewPoint(0, 101325)).toBeCloseTo(30.11, 9);
  });
});

test('heat of evaporation is within 0.05 % of steam tables', () => {
  // [degC, J/kg] IAPWS-95, steam tables
  for (const [t, expected] of [
    [0.01, 2500900],
    [10, 2477200],
    [20, 2453500],
    [40, 2406000],
    [60, 2357700],
  ]) {
    expect(relativeError(evaporationHeat(273.15 + t), expected), `${t} degC`).toBeLessThan(5e-4);
  }
});
