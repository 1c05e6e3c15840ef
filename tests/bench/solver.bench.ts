import { Bench } from 'tinybench';
import type { Config } from '../../src/sim/scenario/config.ts';
import { simulate } from '../../src/sim/simulate.ts';
import { shippedConfig } from '../support/shipped.ts';

/**
 * Solver time of the default scenario on three grids of its core. Milliseconds differ from machine to machine and
 * from hour to hour; the ratios to the default grid, taken in the same run, are what to compare.
 */
const GRIDS = [
  [24, 12],
  [48, 24],
  [96, 48],
] as const;
const DEFAULT_GRID = '48 x 24';

const config = shippedConfig('rolling-road-estate');
const onGrid = (along: number, across: number): Config => ({
  ...config,
  core: { ...config.core, cellsAlongAir: along, cellsAlongCoolant: across },
});

const bench = new Bench({ time: 2000, warmupTime: 500 });
for (const [along, across] of GRIDS) {
  const gridded = onGrid(along, across);
  bench.add(`${along} x ${across}`, () => {
    simulate(gridded);
  });
}
await bench.run();

const latencyOf = (name: string) => {
  const result = bench.getTask(name)?.result;
  if (result === undefined || !('latency' in result)) throw new Error(`no figures for ${name}`);
  return result.latency;
};
const reference = latencyOf(DEFAULT_GRID).p50;
console.log('core grid   best ms   median ms   of default   steps   rejected   sweeps   us a sweep');
for (const [along, across] of GRIDS) {
  const name = `${along} x ${across}`;
  const { min, p50 } = latencyOf(name);
  const { steps, rejected, sweeps } = simulate(onGrid(along, across)).work;
  const cells = [min.toFixed(1), p50.toFixed(1), (p50 / reference).toFixed(2), steps, rejected, sweeps];
  const widths = [9, 11, 12, 7, 10, 8];
  const row = cells.map((cell, k) => String(cell).padStart(widths[k] ?? 0));
  console.log(`${name.padEnd(10)}${row.join(' ')}${((1e3 * p50) / sweeps).toFixed(1).padStart(12)}`);
}
