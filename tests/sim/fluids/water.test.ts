import { expect, test } from 'vitest';
import { waterSaturationPressure, waterSaturationTemperature } from '../../../src/sim/fluids/water.ts';

test('saturation of water is that of the release, both ways', () => {
  // [K, Pa] the three check values printed in IAPWS R7-97(2012), table 35, nine digits
  for (const [T, pressure] of [
    [300, 3536.58941],
    [500, 2638897.76],
    [600, 12344314.6],
  ]) {
    expect(Math.abs(waterSaturationPressure(T) / pressure - 1)).toBeLessThan(2e-9);
    expect(Math.abs(waterSaturationTemperature(pressure) / T - 1)).toBeLessThan(2e-9);
  }
});
