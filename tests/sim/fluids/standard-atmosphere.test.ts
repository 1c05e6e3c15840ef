import { expect, test } from 'vitest';
import { OutOfRangeError } from '../../../src/sim/errors.ts';
import { standardAtmosphere } from '../../../src/sim/fluids/standard-atmosphere.ts';

// [m geometric, K, Pa] the standard's own constants in 30-digit arithmetic; the printed table 5 of ISO 2533:1975 has
// 95461.3, 89876.3 and 84559.7 Pa at 500, 1000 and 1500 m, and the open library fluids 1.0.22 agrees within 3.5e-7
test.each([
  [0, 288.15, 101325],
  [500, 284.90026, 95461.285],
  [1000, 281.65102, 89876.278],
  [1500, 278.4023, 84559.666],
  [2000, 275.15409, 79501.411],
  [3000, 268.6592, 70121.144],
  [4000, 262.16635, 61660.423],
])('at %f m is the published table', (altitude, temperature, pressure) => {
  const air = standardAtmosphere(altitude);
  expect(Math.abs(air.temperature - temperature)).toBeLessThan(1e-5);
  expect(Math.abs(air.pressure / pressure - 1)).toBeLessThan(1e-7);
});

test('holds to the ends of its layer and not past them', () => {
  // -50 m and 11000 m: 288.475 K, 101927 Pa; 216.774 K, 22699.9 Pa, U.S. Standard Atmosphere 1976, table I
  expect(Math.abs(standardAtmosphere(-50).pressure / 101927 - 1)).toBeLessThan(2e-5);
  expect(Math.abs(standardAtmosphere(11000).temperature - 216.774)).toBeLessThan(1e-3);
  expect(Math.abs(standardAtmosphere(11000).pressure / 22699.9 - 1)).toBeLessThan(2e-5);
  expect(() => standardAtmosphere(11001)).toThrow(OutOfRangeError);
  expect(() => standardAtmosphere(-2001)).toThrow('altitude in m is -2001; expected -2000 to 11000');
  expect(() => standardAtmosphere(Number.NaN)).toThrow(OutOfRangeError);
});
