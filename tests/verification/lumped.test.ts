import { describe, expect, test } from 'vitest';
import { Bench, type PartSetup, runToEnd } from '../support/bench.ts';
import { largest, observedOrders } from '../support/convergence.ts';
import type { Profile } from '../support/profile.ts';

/**
 * A block of one temperature against the closed forms of one lump (any heat-transfer textbook, e.g. F. P. Incropera,
 * D. P. DeWitt, Fundamentals of Heat and Mass Transfer, 6th ed., 2007, lumped capacitance). Values from 50-digit
 * arithmetic, confirmed by an eighth-order integrator to 1e-9. degC throughout.
 */

interface LumpCase {
  readonly name: string;
  readonly part: PartSetup;
  readonly start: number;
  readonly times: readonly number[];
  readonly expected: readonly number[];
}

const still = { nx: 1, ny: 1, coolantCapacity: 1, coolantConductance: 0 };
const minutes = [1, 5, 10, 30, 60, 120];

/** Corners that change nothing, at which steps must end. */
function markedAt(times: readonly number[], valueAt: (time: number) => number): Profile {
  return [[0, valueAt(0)], ...times.map((time) => [time, valueAt(time)] as const)];
}

const CASES: readonly LumpCase[] = [
  {
    // 9 kJ/K, 300 W/K to 25 degC, 6 kW.
    name: 'metal with a source',
    part: { ...still, metalCapacity: 9000, metalLoss: 300, metalSource: markedAt(minutes, () => 6000 + 300 * 25) },
    start: 60,
    times: minutes,
    expected: [59.50824151, 57.69722587, 55.74796966, 50.51819162, 47.03002925, 45.27473458],
  },
  {
    // Time constant 30 s, air from 25 degC rising 2.5 K/s. One cell takes up eps = Na/(1 + Na/2) of the stream.
    name: 'metal behind air that warms steadily',
    part: {
      ...still,
      metalCapacity: 30 * 200,
      airRate: 1000,
      airConductance: 200 / 0.9,
      airIn: markedAt(minutes, (time) => 25 + 2.5 * time),
    },
    start: 60,
    times: minutes,
    expected: [58.89377105, 55.61298974, 53.81844416, 65.46673853, 114.8868812, 252.0147203],
  },
  {
    // 14 kJ/K in metal and coolant together, 6 W/K to a bay of 95 degC; a conductance that leaves no gap between them.
    name: 'core and coolant in a hot bay with the pump off',
    part: {
      nx: 4,
      ny: 6,
      metalCapacity: 5000,
      coolantCapacity: 9000,
      coolantConductance: 1e9,
      metalLoss: 6,
      metalSource: markedAt([60, 300, 600, 1200, 2400], () => 6 * 95),
    },
    start: 35,
    times: [60, 300, 600, 1200, 2400],
    expected: [36.52318935, 42.23895504, 48.60453557, 59.12434801, 73.5489599],
  },
];

function benchOf({ part, times }: LumpCase): Bench {
  return new Bench({ parts: [part], coolantRate: 0, coolantIn: 0, end: times[times.length - 1] });
}

function errorsOf(lump: LumpCase, tolerance: number): number[] {
  const bench = benchOf(lump);
  const errors: number[] = [];
  runToEnd(bench, bench.startState(lump.start), { tolerance }, ({ time, state }) => {
    const k = lump.times.indexOf(time);
    if (k >= 0) errors.push(state[0] - lump.expected[k]);
  });
  expect(errors.length).toBe(lump.times.length);
  return errors;
}

/** Error at the third time, a quarter to a third of the time constant, after equal steps between the corners. */
function errorOfSteps(lump: LumpCase, count: number): number {
  const time = lump.times[2];
  const bench = benchOf({ ...lump, times: [time] });
  const { state } = runToEnd(bench, bench.startState(lump.start), { tolerance: 1, fixedStep: time / count });
  return state[0] - lump.expected[2];
}

describe.each(CASES)('$name', (lump) => {
  test('is within 1e-4 K of the closed form at a tolerance of 1e-6 K', () => {
    expect(largest(errorsOf(lump, 1e-6))).toBeLessThan(1e-4);
  });

  test('is within 0.1 K of it at the default tolerance of 0.1 K', () => {
    expect(largest(errorsOf(lump, 0.1))).toBeLessThan(0.1);
  });

  test('has order two in the step', () => {
    const errors = [8, 16, 32].map((count) => errorOfSteps(lump, count));
    for (const order of observedOrders(errors)) expect(order).toBeCloseTo(2, 1);
  });
});
