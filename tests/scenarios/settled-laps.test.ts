import { expect, it } from 'vitest';
import { summarisePulls } from '../../src/sim/answers/pull-summary.ts';
import type { Config } from '../../src/sim/scenario/config.ts';
import { simulate } from '../../src/sim/simulate.ts';
import { shippedConfig } from '../support/shipped.ts';

/** Pulls in a lap of the track. */
const PER_LAP = 4;
const coupe = shippedConfig('session-coupe');

/** Peaks of the charge [K], lap by lap. */
function lapsOf(config: Config): number[][] {
  const peaks = summarisePulls(simulate(config), config.limit.chargeTemperature).map(({ peak }) => peak);
  return Array.from({ length: peaks.length / PER_LAP }, (_, lap) => peaks.slice(PER_LAP * lap, PER_LAP * (lap + 1)));
}

/** Largest difference of like pulls. */
const apart = (one: readonly number[], other: readonly number[]): number =>
  Math.max(...one.map((peak, k) => Math.abs(peak - other[k])));

it('the last three laps of a session are within 1 K of each other', () => {
  const laps = lapsOf(coupe);
  expect(laps).toHaveLength(12);
  const [first, second, last] = laps.slice(-3);
  for (const [one, other] of [
    [first, second],
    [second, last],
    [first, last],
  ])
    expect(apart(one, other)).toBeLessThan(1);
  // On the way there they move.
  expect(apart(laps[0], last)).toBeGreaterThan(0.5);
});

// A store holds heat, it takes none away: in laps that repeat, the mean of what comes in is what goes out.
it('twice the coolant in the tank changes the way to the settled laps, and not their mean', () => {
  const long = { ...coupe, cycle: { ...coupe.cycle, repeats: 60 } };
  const { reservoir } = coupe;
  const doubled = { ...long, reservoir: { ...reservoir, coolantVolume: 2 * reservoir.coolantVolume } };
  const [small, large] = [long, doubled].map(lapsOf);
  expect(apart(small[1], large[1])).toBeGreaterThan(0.3);
  const mean = (peaks: readonly number[]) => peaks.reduce((sum, peak) => sum + peak, 0) / peaks.length;
  const [one, other] = [small, large].map((laps) => laps[laps.length - 1]);
  expect(Math.abs(mean(one) - mean(other))).toBeLessThan(0.05);
  // A larger tank follows later inside a lap, which moves heat from one pull to another.
  expect(apart(one, other)).toBeLessThan(0.3);
  expect(apart(small[58], small[59])).toBeLessThan(1e-3);
});
