import { describe, expect, test } from 'vitest';
import { Bench, type BenchSetup, runToEnd } from '../support/bench.ts';
import { largest, observedOrders, rootMeanSquare } from '../support/convergence.ts';
import type { Profile } from '../support/profile.ts';

/**
 * A cross-flow core between two steady states, without dimensions: a steady test cannot see a scheme whose transients
 * are first order only.
 *
 * Equations: F. E. Romie, ASME J. Heat Transfer 105, 1983, 563-570, with heat held in the coolant as G. Spiga and
 * M. Spiga, ibid. 109, 1987. Solved for these inputs by two routes that agree to 1e-9 unless said otherwise.
 */

const GRIDS = [
  [24, 12],
  [48, 24],
  [96, 48],
] as const;

/** Outlets and mean metal at the times of a case, minus what they should be. */
function errorsOf(bench: Bench, times: readonly number[], ...expected: readonly (readonly number[])[]): number[] {
  const errors: number[] = [];
  const read = () => [bench.blocks[0].airOut, bench.blocks[0].coolantOut, bench.blocks[0].metalMean];
  runToEnd(bench, bench.startState(0), { tolerance: 2e-6 }, ({ time }) => {
    const k = times.indexOf(time);
    if (k >= 0) errors.push(...expected.map((values, place) => read()[place] - values[k]));
  });
  expect(errors.length).toBe(times.length * expected.length);
  return errors;
}

/** A constant with corners at the times to be read, so that steps end on them. */
function constantAt(value: number, times: readonly number[]): Profile {
  return times.map((time) => [time, value] as const);
}

describe('the air inlet steps while the coolant holds as much heat as the metal', () => {
  // NTU 2.4 on the air side and 3 on the coolant side, conductances 1 to 5; metal 2.4 makes tau the time. The coolant
  // takes tau = 0.6 to cross. Air by one route only.
  const times = [0.15, 0.3, 0.45, 0.6, 0.9, 1.2, 2.4, 4.8];
  const air = [0.11568873, 0.133447965, 0.148187806, 0.160676516, 0.179349541, 0.19072613, 0.202147677, 0.202577595];
  const coolant = [
    0.0135426192, 0.0379807129, 0.0643943217, 0.0908263363, 0.136640975, 0.166887559, 0.198218374, 0.199355344,
  ];
  const errorsOn = ([nx, ny]: readonly [number, number]) => {
    const part = { nx, ny, metalCapacity: 2.4, coolantCapacity: 2.4, coolantConductance: 12 };
    const stream = { airRate: 1, airConductance: 2.4, airIn: constantAt(1, times) };
    const setup: BenchSetup = { parts: [{ ...part, ...stream }], coolantRate: 4, coolantIn: 0, end: 4.8 };
    return errorsOf(new Bench(setup), times, air, coolant);
  };

  test('both outlets on 48x24 cells are within 5e-4', () => {
    expect(largest(errorsOn([48, 24]))).toBeLessThan(5e-4);
  });

  test('the order is 1.8 or more', () => {
    const orders = observedOrders(GRIDS.map((grid) => rootMeanSquare(errorsOn(grid))));
    expect(Math.min(...orders)).toBeGreaterThan(1.8);
  });
});

describe('a pull begins: air flow and its temperature jump, the metal stays', () => {
  // Before: NTU 3.1 and 2.5, conductances 1 to 12, air in at 0.4; after: 1.85 and 2.5, 1 to 5.4, air in at 1.
  const settled = 400;
  const taus = [0.1, 0.2, 0.4, 0.8, 1.6];
  const times = taus.map((tau) => settled + tau);
  const air = [0.193529964, 0.212247691, 0.238373475, 0.262376951, 0.271421718];
  const coolant = [0.0582193712, 0.0859477336, 0.126421615, 0.165668992, 0.181158382];
  const metal = [0.057616635, 0.0850160252, 0.122114333, 0.154509218, 0.165846086];
  const jump = (before: number, after: number): Profile => [
    [0, before],
    [settled, before],
    ...[settled, ...times].map((time) => [time, after] as const),
  ];
  const coolantConductance = 5.4 * 1.85;
  const conductanceBefore = coolantConductance / 12;
  const benchOf = ([nx, ny]: readonly [number, number]) =>
    new Bench({
      parts: [
        {
          nx,
          ny,
          metalCapacity: 1.85,
          coolantCapacity: 1e-6,
          coolantConductance,
          airRate: jump(conductanceBefore / 3.1, 1),
          airConductance: jump(conductanceBefore, 1.85),
          airIn: jump(0.4, 1),
        },
      ],
      coolantRate: coolantConductance / 2.5,
      coolantIn: 0,
      end: times[times.length - 1],
    });

  test('before it, outlets and metal on 48x24 cells are those of the steady state', () => {
    const errors = errorsOf(benchOf([48, 24]), [settled], [0.0293298276], [0.0249106299], [0.0224927843]);
    expect(largest(errors)).toBeLessThan(1e-4);
  });

  test('outlets and metal on 48x24 cells are within 2e-4 at every time', () => {
    expect(largest(errorsOf(benchOf([48, 24]), times, air, coolant, metal))).toBeLessThan(2e-4);
  });

  test('the order is 1.8 or more', () => {
    const orders = observedOrders(GRIDS.map((g) => rootMeanSquare(errorsOf(benchOf(g), times, air, coolant, metal))));
    expect(Math.min(...orders)).toBeGreaterThan(1.8);
  });
});
