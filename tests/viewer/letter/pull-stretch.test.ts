import { expect, it } from 'vitest';
import { summarisePulls } from '../../../src/sim/answers/pull-summary.ts';
import { simulate } from '../../../src/sim/simulate.ts';
import { curveAround, stretchOf } from '../../../src/viewer/letter/pull-stretch.ts';
import { shippedConfig } from '../../support/shipped.ts';

const config = shippedConfig('rolling-road-estate');
const series = simulate(config);
const [, second] = summarisePulls(series, config.limit.chargeTemperature);

it('counts from the start of the pull and holds its peak', () => {
  const curve = curveAround(series, 'chargeTemperature', second);
  const [from, to] = stretchOf(second);
  expect(curve[0][0]).toBeGreaterThanOrEqual(from);
  expect(curve[curve.length - 1][0]).toBeLessThanOrEqual(to);
  const [at, peak] = curve.reduce((most, point) => (point[1] > most[1] ? point : most));
  expect(peak).toBeCloseTo(second.peak, 1);
  // A pull lasts 12 s, and is hottest at its end.
  expect(at).toBeCloseTo(12, 1);
});
