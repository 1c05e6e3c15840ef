import { describe, expect, test } from 'vitest';
import { Bench, type BenchSetup, runToEnd } from '../support/bench.ts';
import { largest, observedOrders } from '../support/convergence.ts';
import type { Profile } from '../support/profile.ts';

/**
 * Order in time of blocks and a reservoir round a ring, against the same ring in steps 16 times shorter than the
 * shortest of a row. Invented inputs; no front anywhere, so the cells stay second order throughout.
 */

const LITRES_PER_MINUTE = 4186 / 60;

/** Core, line and reservoir of 2.5 kg of water in all; at 18 L/min, 1256 W/K, the line delays by 3500/1256 = 2.8 s. */
function ringOf(heat: Profile, coolantRate: Profile, end: number): BenchSetup {
  return {
    parts: [
      { nx: 6, ny: 12, metalCapacity: 2000, coolantCapacity: 2000, coolantConductance: 1500, metalSource: heat },
      { nx: 1, ny: 43, metalCapacity: 1200, coolantCapacity: 3500, coolantConductance: 30, metalLoss: 2 },
    ],
    coolantRate,
    coolantIn: { capacity: 5000, loss: 60, surroundings: 20 },
    end,
  };
}

/** Reservoir, last metal of the line and mean core metal at every corner. */
function valuesWith(setup: BenchSetup, start: number, fixedStep: number): number[] {
  const bench = new Bench(setup);
  const values: number[] = [];
  runToEnd(bench, bench.startState(start), { tolerance: 1, fixedStep }, ({ state, isAtSegmentEnd }) => {
    expect(bench.blocks.every((block) => block.isLinearUpwind)).toBe(true);
    if (isAtSegmentEnd)
      values.push(bench.reservoirTemperature(state), state[state.length - 3], bench.blocks[0].metalMean);
  });
  return values;
}

function ordersOf(setup: BenchSetup, start: number, steps: readonly number[]): number[] {
  const reference = valuesWith(setup, start, steps[steps.length - 1] / 16);
  const errors = steps.map((step) => {
    return largest(valuesWith(setup, start, step).map((value, k) => value - reference[k]));
  });
  return observedOrders(errors);
}

describe('a ring of core, line and reservoir has order 1.8 or more', () => {
  test('cooling from 60 degC in steps longer and shorter than the delay of the line', () => {
    const setup = ringOf(0, 18 * LITRES_PER_MINUTE, 60);
    expect(Math.min(...ordersOf(setup, 60, [10, 5, 2.5, 1.25, 0.625]))).toBeGreaterThan(1.8);
  });

  test('heated by pulls that ramp up and down', () => {
    const pulls: Profile = [
      [0, 0],
      [2, 0],
      [4, 12e3],
      [14, 20e3],
      [16, 0],
      [40, 0],
    ];
    const setup = ringOf(pulls, 18 * LITRES_PER_MINUTE, 40);
    expect(Math.min(...ordersOf(setup, 20, [1, 0.5, 0.25, 0.125]))).toBeGreaterThan(1.8);
  });

  test('with a pump that slows down and speeds up', () => {
    const flow: Profile = [
      [0, 18 * LITRES_PER_MINUTE],
      [10, 6 * LITRES_PER_MINUTE],
      [20, 18 * LITRES_PER_MINUTE],
      [40, 18 * LITRES_PER_MINUTE],
    ];
    const setup = ringOf(6e3, flow, 40);
    expect(Math.min(...ordersOf(setup, 20, [2.5, 1.25, 0.625, 0.3125]))).toBeGreaterThan(1.8);
  });
});
