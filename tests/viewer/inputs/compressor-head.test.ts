import { describe, expect, it } from 'vitest';
import { headOf } from '../../../src/viewer/inputs/compressor-head.ts';
import { readCar } from '../../../src/viewer/state/cars.ts';
import { withChanges } from '../../../src/viewer/state/session.ts';
import { shippedConfig, shippedDocument } from '../../support/shipped.ts';

describe('the head of a typed boost', () => {
  // 180 kPa from 101.325 kPa and 25 degC at 46 800 rpm. By hand with k = 2/7:
  // (180/101.325)^k - 1 = 0.178424, times 298.15 K is 53.20 K; with air of 37 degC (1 + 53.197/310.15)^3.5 = 1.7403.
  const changes = {
    'ambient.temperature': 31,
    'intake.pickUp': 6,
    'compressor.boostOutletPressure': 180,
    'compressor.boostInletPressure': 101.325,
    'compressor.boostInletTemperature': 25,
    'compressor.boostSpeed': 46800,
  };
  const { car, issues } = readCar('', withChanges(shippedDocument('session-coupe'), changes));
  if (car === undefined) throw new Error(issues[0].message);
  const head = headOf(car.config);

  it('is the isentropic rise, and gives the pressure ratio with warmer air', () => {
    expect(head?.head).toBeCloseTo(53.1972, 3);
    expect(head?.speed).toBe(46800);
    expect(head?.inletTemperature).toBeCloseTo(310.15, 9);
    expect(head?.pressureRatio).toBeCloseTo(1.7403, 4);
  });

  it('goes with speed squared up to the top of a pull', () => {
    const { compressor, cycle } = car.config;
    const fastest = Math.max(...cycle.block.map(({ kind, engineSpeed }) => (kind === 'pull' ? engineSpeed.to : 0)));
    const speed = compressor.kind === 'centrifugal' ? compressor.driveRatio * fastest : 0;
    expect(head?.atTop?.speed).toBe(speed);
    const expected = (1 + (53.1972 * (speed / 46800) ** 2) / 310.15) ** 3.5;
    expect(head?.atTop?.pressureRatio).toBeCloseTo(expected, 4);
  });

  it('is none of a machine that displaces', () => {
    expect(headOf(shippedConfig('rolling-road-estate'))).toBeUndefined();
  });
});
