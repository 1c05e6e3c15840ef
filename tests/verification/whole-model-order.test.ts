import { describe, expect, it } from 'vitest';
import { summarisePulls } from '../../src/sim/answers/pull-summary.ts';
import type { Config } from '../../src/sim/scenario/config.ts';
import { type RunOptions, simulate } from '../../src/sim/simulate.ts';
import { shippedConfig } from '../support/shipped.ts';

const withCells = (config: Config, along: number, across: number): Config => ({
  ...config,
  core: { ...config.core, cellsAlongAir: along, cellsAlongCoolant: across },
});
const twoPulls = (config: Config): Config => ({ ...config, cycle: { ...config.cycle, repeats: 2 } });
const peaksOf = (config: Config, options: RunOptions = {}): number[] =>
  summarisePulls(simulate(config, options), config.limit.chargeTemperature).map(({ peak }) => peak);

const largestGap = (a: readonly number[], b: readonly number[]): number =>
  Math.max(...a.map((value, k) => Math.abs(value - b[k])));

describe('the whole model', () => {
  it('brings pull peaks, a transient, to second order in the cell size', () => {
    const config = twoPulls(shippedConfig('rolling-road-estate', 'bigger core'));
    const [coarse, middle, fine] = [1, 2, 4].map((n) =>
      peaksOf(withCells(config, 24 * n, 12 * n), { fixedStep: 1 / 64, tolerance: 1e-3 }),
    );
    for (const pull of [0, 1]) {
      const order = Math.log2((middle[pull] - coarse[pull]) / (fine[pull] - middle[pull]));
      expect(order).toBeGreaterThan(1.75);
    }
  });

  it('is second order in time with breakpoints, lines, tank and stopped valve, steps shorter and longer than a line', () => {
    // The four lines hold coolant for 1.4, 1.9, 1.9 and 0.3 m at about 1 m/s: steps of 8 and 4 s are longer.
    const config = withCells(twoPulls(shippedConfig('rolling-road-estate')), 24, 12);
    const at = (fixedStep: number) => {
      const series = simulate(config, { fixedStep, tolerance: 1e-5 });
      const last = series.rowCount - 1;
      const { columns } = series;
      return {
        charge: series.phases.map(({ lastRow }) => columns.chargeTemperature[lastRow]),
        stores: [
          columns.reservoirTemperature,
          columns.casingTemperature,
          columns.coreMetalMean,
          columns.lineWallMean,
        ].map((column) => column[last]),
      };
    };
    const reference = at(1 / 128);
    const steps = [8, 4, 2, 1, 0.5, 0.25, 0.125];
    const errors = steps.map(at).map(({ charge, stores }) => ({
      charge: largestGap(charge, reference.charge),
      stores: largestGap(stores, reference.stores),
    }));
    const first = errors[0];
    const last = errors[errors.length - 1];
    const octaves = steps.length - 1;
    expect(Math.log2(first.charge / last.charge) / octaves).toBeGreaterThan(1.8);
    expect(Math.log2(first.stores / last.stores) / octaves).toBeGreaterThan(1.8);
    // ... and still so among the short steps alone.
    expect(Math.log2(errors[4].charge / last.charge) / 2).toBeGreaterThan(1.8);
    expect(Math.log2(errors[4].stores / last.stores) / 2).toBeGreaterThan(1.8);
  });

  it.each(['rolling-road-estate', 'ridge-roadster'])(
    '%s: twice the cells, or half the tolerance, moves no peak by more than 0.05 K',
    (file) => {
      const config = shippedConfig(file);
      const peaks = peaksOf(config);
      expect(largestGap(peaks, peaksOf(withCells(config, 96, 48)))).toBeLessThan(0.05);
      expect(largestGap(peaks, peaksOf(config, { tolerance: 0.5 * config.numerics.tolerance }))).toBeLessThan(0.05);
    },
  );

  it('gives the same bytes twice', () => {
    const config = shippedConfig('ridge-roadster', '+ 5 L tank');
    const [first, second] = [simulate(config), simulate(config)];
    for (const [name, values] of Object.entries(first.columns)) {
      expect(Buffer.from(values.buffer).equals(Buffer.from(second.columns[name as 'time'].buffer)), name).toBe(true);
    }
  });

  it('closes its own ledger in every accepted step to 1e-9 of the heat moved', () => {
    for (const file of ['rolling-road-estate', 'ridge-roadster']) {
      for (const tolerance of [1, 0.1]) {
        const { energy } = simulate(shippedConfig(file), { tolerance });
        expect(energy.worstStepGap).toBeLessThan(1e-9);
        expect(energy.worstStepGap).toBeGreaterThan(0);
      }
    }
  });
});
