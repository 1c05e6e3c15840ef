import { describe, expect, it } from 'vitest';
import { summarisePulls } from '../../src/sim/answers/pull-summary.ts';
import type { BlockRates } from '../../src/sim/model/cell-block.ts';
import { CoreBank } from '../../src/sim/model/core-bank.ts';
import { simulate } from '../../src/sim/simulate.ts';
import { shippedConfig } from '../support/shipped.ts';
import { balanceFromOutside } from './outside-balance.ts';

/**
 * Effectiveness of two coolant passes one behind the other in the air's depth, air (the smaller rate) unmixed right
 * through, coolant unmixed in a pass and mixed where it turns round. T. Kuppan, Heat Exchanger Design Handbook, 2000,
 * chapter 2, cases II-d; values from the differential equations by two independent methods (power series and
 * collocation, agreeing to 2e-10). They are not those of the formula for both fluids mixed between the passes.
 */
const NTU = [0.5, 1, 2, 3, 5] as const;
const REFERENCE: [string, boolean, number, readonly number[]][] = [
  ['counter', true, 0.25, [0.3769007317, 0.5951603573, 0.8136632093, 0.9065282456, 0.9716000213]],
  ['counter', true, 0.5, [0.3609958993, 0.5591008243, 0.7575332809, 0.848887537, 0.9271885733]],
  ['counter', true, 1, [0.3311977523, 0.4913239253, 0.6420346654, 0.7125272328, 0.7811330838]],
  ['parallel', false, 0.25, [0.3725349805, 0.5742099806, 0.7432042278, 0.7900249779, 0.7951847779]],
  ['parallel', false, 0.5, [0.3530686566, 0.5231959026, 0.6431693185, 0.6623471413, 0.6401895895]],
  ['parallel', false, 1, [0.3180893331, 0.4383500361, 0.4920524157, 0.4794779766, 0.4310098779]],
];

const NO_AIR = { vapour: undefined, columns: undefined };
const CORE = shippedConfig('rolling-road-estate').core;

/** Air enters at 1, coolant at 0; hardly anything is stored, so one stage is the steady state. */
function effectivenessOf(isCounter: boolean, ntu: number, ratio: number, nx: number, ny: number): number {
  const layout = { ...CORE.layout, passes: 2 as const, isCounter, turnVolume: 1e-6 };
  const core = { ...CORE, cellsAlongAir: nx, cellsAlongCoolant: ny, layout, metalHeatCapacity: 1, coolantVolume: 1e-6 };
  const bank = new CoreBank(core, 1, 1, 0, 4e6);
  const rates: BlockRates = {
    airRate: 1,
    airConductance: 2 * ntu,
    coolantRate: 1 / ratio,
    coolantConductance: 2 * ntu,
    metalLoss: 0,
    metalSource: 0,
  };
  const base = new Float64Array(bank.size);
  bank.restart(base);
  bank.sweep(rates, { s: 1e-9, reach: 1, base, out: new Float64Array(bank.size) }, 1, 0, NO_AIR);
  return 1 - bank.airOut;
}

const GRIDS = [
  [24, 12],
  [48, 24],
  [96, 48],
] as const;

describe('two passes with a U-turn', () => {
  it.each(REFERENCE)(
    '%s (counter: %s), capacity ratio %f: near at 48 x 24, exact beyond the grid',
    (_, isCounter, ratio, exact) => {
      exact.forEach((expected, k) => {
        const [, fine, finest] = GRIDS.map(([nx, ny]) => effectivenessOf(isCounter, NTU[k], ratio, nx, ny));
        expect(Math.abs(fine - expected), `NTU ${NTU[k]}: ${fine}`).toBeLessThan(8e-4);
        expect(Math.abs((4 * finest - fine) / 3 - expected), `NTU ${NTU[k]}, beyond`).toBeLessThan(1e-5);
      });
    },
  );

  it('is of second order in the cells, over all cases together', () => {
    const errors = GRIDS.map(([nx, ny]) => {
      const each = REFERENCE.flatMap(([, isCounter, ratio, exact]) =>
        exact.map((expected, k) => effectivenessOf(isCounter, NTU[k], ratio, nx, ny) - expected),
      );
      return Math.sqrt(each.reduce((sum, error) => sum + error * error, 0) / each.length);
    });
    for (const k of [0, 1]) expect(Math.log2(errors[k] / errors[k + 1])).toBeGreaterThan(1.8);
  });

  it('counter cools more than parallel', () => {
    expect(effectivenessOf(true, 3, 0.5, 48, 24)).toBeGreaterThan(effectivenessOf(false, 3, 0.5, 48, 24) + 0.1);
  });
});

describe('the estate with a core of two passes', () => {
  const estate = shippedConfig('rolling-road-estate', 'bigger core');
  const withPasses = (isCounter: boolean) => ({
    ...estate,
    core: { ...estate.core, layout: { ...estate.core.layout, passes: 2 as const, isCounter } },
  });

  it.each([true, false])('(counter: %s) closes the energy of every step, and from outside', (isCounter) => {
    const config = withPasses(isCounter);
    const series = simulate(config, { interval: 0.1 });
    expect(series.outcome.kind).toBe('finished');
    expect(series.energy.worstStepGap).toBeLessThan(1e-9);
    const { gap } = balanceFromOutside(config, series);
    expect(Math.abs(gap)).toBeLessThan(1e-3);
  });

  it('keeps second order in the cells of the pull peaks', () => {
    const peaks = [
      [12, 6],
      [24, 12],
      [48, 24],
    ].map(([cellsAlongAir, cellsAlongCoolant]) => {
      const config = withPasses(true);
      const core = { ...config.core, cellsAlongAir, cellsAlongCoolant };
      const cycle = { ...config.cycle, repeats: 1 };
      const series = simulate({ ...config, core, cycle }, { fixedStep: 0.125 });
      return summarisePulls(series, config.limit.chargeTemperature)[0].peak;
    });
    expect(Math.log2((peaks[0] - peaks[1]) / (peaks[1] - peaks[2]))).toBeGreaterThan(1.7);
  });
});
