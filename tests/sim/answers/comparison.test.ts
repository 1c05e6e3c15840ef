import { describe, expect, it } from 'vitest';
import { compareRuns, studyComparison } from '../../../src/sim/answers/comparison.ts';
import { conduct } from '../../../src/sim/answers/study.ts';
import { type HandMadePhase, handMadeSeries } from '../../support/hand-made-series.ts';
import { shippedConfig } from '../../support/shipped.ts';

const run = (phases: readonly HandMadePhase[]) => ({
  ...handMadeSeries(phases),
  outcome: { kind: 'finished' as const },
});

/** Two pulls, peaks 310 and 330 K; a charge that jumps from 300 to 305 K where the second begins. */
const FIRST = run([
  {
    kind: 'idle',
    rows: [
      [0, 300],
      [2, 300],
    ],
  },
  {
    kind: 'pull',
    rows: [
      [2, 300],
      [6, 310],
    ],
    columns: { coolantFlow: [0, 2e-4], coreAirDrop: [0, 8e3], drivePower: [0, 20e3], airFlow: [0, 0.3] },
  },
  {
    kind: 'idle',
    rows: [
      [6, 300],
      [8, 300],
    ],
  },
  {
    kind: 'pull',
    rows: [
      [8, 305],
      [12, 330],
    ],
  },
]);
/** One pull only, 4 K cooler at its end. */
const OTHER = run([
  {
    kind: 'idle',
    rows: [
      [0, 301],
      [2, 299],
    ],
  },
  {
    kind: 'pull',
    rows: [
      [2, 299],
      [6, 306],
    ],
    columns: { coolantFlow: [0, 3e-4], coreAirDrop: [0, 6e3], drivePower: [0, 19e3], airFlow: [0, 0.31] },
  },
]);

describe('a pair written by hand', () => {
  const { cars, time, charge } = compareRuns([FIRST, OTHER], [320, 320], 1);

  it('has the figures of each and their differences from the first', () => {
    expect(cars[0]).toMatchObject({ count: 1, decidingPull: 2, decidingPeak: 330, peaks: [310, 330] });
    expect(cars[1]).toMatchObject({ count: 1, decidingPull: 1, decidingPeak: 306, peaks: [306] });
    const { difference } = cars[1];
    expect(difference).toMatchObject({ count: 0, decidingPeak: -24, peaks: [-4], coreAirDrop: -2e3, drivePower: -1e3 });
    expect(difference.coolantFlow).toBeCloseTo(1e-4, 12);
    expect(difference.airFlow).toBeCloseTo(0.01, 12);
    expect(cars[0].difference).toMatchObject({ count: 0, decidingPeak: 0, peaks: [0, 0], airFlow: 0 });
  });

  it('has one time axis to the end of the longer, straight between rows, later row where a time stands twice', () => {
    expect(time).toEqual([0, 1, 2, 3, 4, 5, 6, 7, 8, 9, 10, 11, 12]);
    expect(charge[0]).toEqual([300, 300, 300, 302.5, 305, 307.5, 300, 300, 305, 311.25, 317.5, 323.75, 330]);
    const over = Array.from({ length: 6 }, () => Number.NaN);
    expect(charge[1]).toEqual([301, 300, 299, 300.75, 302.5, 304.25, 306, ...over]);
  });

  it('leaves out what only one of them has', () => {
    const idle = run([
      {
        kind: 'idle',
        rows: [
          [0, 300],
          [2, 300],
        ],
      },
    ]);
    const none = compareRuns([FIRST, idle], [320, 320], 1).cars[1];
    expect(none).toMatchObject({ count: 0, peaks: [], difference: { count: -1, peaks: [] } });
    expect(none).not.toHaveProperty('coolantFlow');
    expect(none.difference).not.toHaveProperty('decidingPeak');
  });
});

describe('the rolling-road estate', () => {
  it('stock breaks the limit in its first pull, the bigger core alone stays under it in all eight', () => {
    const file = 'rolling-road-estate';
    const configs = [shippedConfig(file), shippedConfig(file, 'bigger core')];
    const { cars, time, charge } = conduct(studyComparison(configs, 1));
    expect(cars.map(({ count }) => count)).toEqual([0, 8]);
    expect(cars[0].decidingPull).toBe(1);
    // 300 s and eight times 102 s
    expect(time).toHaveLength(1117);
    expect(charge.flat().every(Number.isFinite)).toBe(true);
  });
});
