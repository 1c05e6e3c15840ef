import { readdirSync } from 'node:fs';
import { Bench } from 'tinybench';
import type { DisplacementConfig } from '../../src/sim/scenario/config/compressor.ts';
import type { Config } from '../../src/sim/scenario/config.ts';
import { simulate } from '../../src/sim/simulate.ts';
import { shippedConfig } from '../support/shipped.ts';

/**
 * Solver time of the default scenario on three grids of its core, of every demo car, and of what the default scenario
 * costs with one addition at a time. Milliseconds differ from machine to machine and from hour to hour; the ratios to
 * the default run, taken in the same run, are what to compare.
 */
const DEFAULT = 'rolling-road-estate';
const config = shippedConfig(DEFAULT);
const machine = config.compressor as DisplacementConfig;

const onGrid = (along: number, across: number): Config => ({
  ...config,
  core: { ...config.core, cellsAlongAir: along, cellsAlongCoolant: across },
});

const demos = readdirSync(new URL('../../scenarios/', import.meta.url))
  .filter((name) => name.endsWith('.json') && !name.includes('schema'))
  .map((name) => name.replace('.json', ''))
  .filter((name) => name !== DEFAULT);

const RUNS: readonly (readonly [string, Config])[] = [
  [DEFAULT, config],
  ['core 24 x 12', onGrid(24, 12)],
  ['core 96 x 48', onGrid(96, 48)],
  ...demos.map((name) => [name, shippedConfig(name)] as const),
  ['+ bypass behind the core', { ...config, bypass: { ...config.bypass, shareAfterCore: 1 } }],
  ['+ leak past the core', { ...config, core: { ...config.core, leakPast: 0.1 } }],
  ['+ room', { ...config, room: { volume: 400, extraction: 3, heatPerAir: 5e5 } }],
  ['+ held manifold pressure', { ...config, compressor: { ...machine, targetManifoldPressure: 150e3 } }],
  ['+ built-in volume ratio', { ...config, compressor: { ...machine, builtInVolumeRatio: 1.2 } }],
];

const bench = new Bench({ time: 1000, warmupTime: 300 });
for (const [name, each] of RUNS) {
  bench.add(name, () => {
    simulate(each);
  });
}
await bench.run();

const latencyOf = (name: string) => {
  const result = bench.getTask(name)?.result;
  if (result === undefined || !('latency' in result)) throw new Error(`no figures for ${name}`);
  return result.latency;
};
const reference = latencyOf(DEFAULT).p50;
console.log('run                         best ms   median ms   of default   steps   rejected   sweeps   us a sweep');
for (const [name, each] of RUNS) {
  const { min, p50 } = latencyOf(name);
  const { steps, rejected, sweeps } = simulate(each).work;
  const cells = [min.toFixed(1), p50.toFixed(1), (p50 / reference).toFixed(2), steps, rejected, sweeps];
  const widths = [9, 11, 12, 7, 10, 8];
  const row = cells.map((cell, k) => String(cell).padStart(widths[k] ?? 0));
  console.log(`${name.padEnd(26)}${row.join(' ')}${((1e3 * p50) / sweeps).toFixed(1).padStart(12)}`);
}
