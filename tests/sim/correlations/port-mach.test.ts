import { describe, expect, it } from 'vitest';
import { dynamicPressureShare, portMach } from '../../../src/sim/correlations/port-mach.ts';
import { OutOfRangeError } from '../../../src/sim/errors.ts';

describe('air in a port', () => {
  // ISO 2533:1975 at sea level: 1.225 kg/m3, 340.294 m/s, 288.15 K, 101325 Pa. At Mach 0.5 that is 2.0843 kg/s through
  // 100 cm2, at Mach 0.2 0.83372 kg/s.
  it.each([
    [2.0843, 0.5],
    [0.83372, 0.2],
  ])('%f kg/s of standard air through 100 cm2 goes at Mach %f', (flow, mach) => {
    expect(portMach(flow, 0.01, 288.15, 101325, 287.05287, 1.4)).toBeCloseTo(mach, 4);
  });

  // p/pt of NACA Report 1135, table I: 0.9395 at M 0.3, 0.8430 at 0.5, 0.5283 at 1.
  it.each([
    [0, 1],
    [0.3, 0.9395],
    [0.5, 0.843],
    [1, 0.5283],
  ])('a gauge in the wall reads %f short as the table has it', (mach, ratio) => {
    expect(1 / (1 + dynamicPressureShare(mach, 1.4))).toBeCloseTo(ratio, 4);
  });

  it('refuses a flow that turns round, and speeds above that of sound', () => {
    expect(() => portMach(-0.1, 0.01, 288, 1e5, 287, 1.4)).toThrow(OutOfRangeError);
    expect(() => dynamicPressureShare(1.01, 1.4)).toThrow(OutOfRangeError);
  });
});
