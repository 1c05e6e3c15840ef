import { describe, expect, it } from 'vitest';
import { readChargeTable } from '../../../src/sim/answers/charge-table.ts';

// Invented rows: 40 degC no change, 60 degC 3 deg less and 2 % less torque, 80 degC 9 deg less and 8 % less.
const TABLE = [
  { chargeTemperature: 313.15, spark: 0, torque: 0 },
  { chargeTemperature: 333.15, spark: -3, torque: -0.02 },
  { chargeTemperature: 353.15, spark: -9, torque: -0.08 },
];

describe("the shop's own table", () => {
  it.each([
    ['at a row', 333.15, -3, -0.02, false],
    ['half way up', 323.15, -1.5, -0.01, false],
    ['a quarter into the steeper part', 338.15, -4.5, -0.035, false],
    ['on its first row', 313.15, 0, 0, false],
    ['below its first row', 300, 0, 0, true],
    ['above its last row', 400, -9, -0.08, true],
  ])('%s', (_, temperature, spark, torque, isBeyond) => {
    const reading = readChargeTable(TABLE, temperature);
    expect(reading?.spark).toBeCloseTo(spark, 9);
    expect(reading?.torque).toBeCloseTo(torque, 9);
    expect(reading?.isBeyond).toBe(isBeyond);
  });

  it('says nothing where there is none', () => {
    expect(readChargeTable(undefined, 330)).toBeUndefined();
  });
});
