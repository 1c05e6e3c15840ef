import { describe, expect, test } from 'vitest';
import { largest, observedOrders, rootMeanSquare } from '../support/convergence.ts';
import { exactEffectiveness } from '../support/mason.ts';
import { type CoreCase, cellEffectivenessOf } from '../support/steady-core.ts';

/**
 * The cells in steady state against the exact series for cross-flow, both fluids unmixed (J. L. Mason, Proc. 2nd U.S.
 * National Congress of Applied Mechanics, 1955, 801-803).
 */

const NTUS = [0.5, 1, 2, 3, 5];
const RATIOS = [0, 0.25, 0.5, 0.75, 1];
const GRIDS = [
  [24, 12],
  [48, 24],
  [96, 48],
] as const;

function casesOf(smaller: CoreCase['smaller'], airShare: number): CoreCase[] {
  return NTUS.flatMap((NTU) => RATIOS.map((Cr) => ({ NTU, Cr, smaller, airShare })));
}

function errorsOf(cases: readonly CoreCase[], [nx, ny]: readonly [number, number]): number[] {
  return cases.map((core) => cellEffectivenessOf(core, nx, ny) - exactEffectiveness(core.NTU, core.Cr));
}

// Mason's series in 50-digit arithmetic, confirmed by the Bessel-function form to 1e-11; ten digits kept.
test.each([
  [0.5, 0, 0.3934693403],
  [2, 0.5, 0.7324092525],
  [1, 1, 0.4762223882],
  [5, 1, 0.7509039815],
])('the series here gives the tabulated value at NTU %f, Cr %f', (NTU, Cr, tabulated) => {
  expect(Math.abs(exactEffectiveness(NTU, Cr) - tabulated)).toBeLessThan(1e-10);
});

describe.each([
  { smaller: 'air', airShare: 0.5, bound: 2e-4 },
  { smaller: 'air', airShare: 0.8, bound: 2e-4 },
  { smaller: 'air', airShare: 0.95, bound: 2e-4 },
  { smaller: 'coolant', airShare: 0.5, bound: 8e-4 },
  { smaller: 'coolant', airShare: 0.8, bound: 8e-4 },
  { smaller: 'coolant', airShare: 0.95, bound: 8e-4 },
] as const)('with the $smaller smaller and $airShare of the resistance on the air side', (row) => {
  const cases = casesOf(row.smaller, row.airShare);

  test(`effectiveness on 48x24 cells is within ${row.bound}`, () => {
    expect(largest(errorsOf(cases, GRIDS[1]))).toBeLessThan(row.bound);
  });

  test('the error over all cases falls with order 1.8 or more', () => {
    const orders = observedOrders(GRIDS.map((grid) => rootMeanSquare(errorsOf(cases, grid))));
    expect(Math.min(...orders)).toBeGreaterThan(1.8);
  });
});

test('the split of the resistance between air and coolant changes nothing', () => {
  for (const smaller of ['air', 'coolant'] as const) {
    for (const airShare of [0.1, 0.2, 0.8, 0.95]) {
      for (const core of casesOf(smaller, airShare)) {
        const even = cellEffectivenessOf({ ...core, airShare: 0.5 }, 48, 24);
        expect(Math.abs(cellEffectivenessOf(core, 48, 24) - even), JSON.stringify(core)).toBeLessThan(1e-12);
      }
    }
  }
});
