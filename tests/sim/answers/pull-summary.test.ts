import { describe, expect, it } from 'vitest';
import { type PullSummary, summarisePulls } from '../../../src/sim/answers/pull-summary.ts';
import { countPulls, decidingPull } from '../../../src/sim/answers/pulls-to-limit.ts';
import { type HandMadePhase, handMadeSeries } from '../../support/hand-made-series.ts';

const LIMIT = 330;

/** Summary of the first pull of a hand-made series. */
const summaryOf = (...phases: HandMadePhase[]): PullSummary => summarisePulls(handMadeSeries(phases), LIMIT)[0];

describe('the peak of a pull', () => {
  it('counts from 1 s after opening to lift: soaked heat before it and the sensor after it have names of their own', () => {
    const summary = summaryOf(
      {
        kind: 'pull',
        rows: [
          [100, 345],
          [100.5, 338],
          [101, 320],
          [104, 327],
          [110, 325],
        ],
        columns: { indicatedTemperature: [310, 311, 312, 318, 322] },
      },
      {
        kind: 'idle',
        rows: [
          [110, 350],
          [120, 340],
          [125, 335],
          [125.1, 335],
          [130, 335],
        ],
        columns: { indicatedTemperature: [322, 324, 323, 326, 329] },
      },
    );
    expect(summary).toMatchObject({
      pull: 1,
      start: 100,
      duration: 10,
      peak: 327,
      peakTime: 104,
      soakPeak: 345,
      indicatedPeak: 322,
      // within 15 s of lift: the readings at 125.1 s and later are not looked at
      indicatedPeakAfterLift: 324,
      margin: 3,
      timeAboveLimit: 0,
    });
    expect(summary).not.toHaveProperty('crossedAtShare');
    expect(countPulls([summary])).toBe(1);
  });

  it('that is exactly the limit keeps to it', () => {
    const at = summaryOf({
      kind: 'pull',
      rows: [
        [0, 320],
        [1, 320],
        [5, LIMIT],
        [6, 325],
      ],
    });
    expect(at.margin).toBe(0);
    expect(at.timeAboveLimit).toBe(0);
    expect(at).not.toHaveProperty('crossedAtShare');
    expect(countPulls([at])).toBe(1);
    const above = summaryOf({
      kind: 'pull',
      rows: [
        [0, 320],
        [1, 320],
        [5, LIMIT + 1e-9],
        [6, 325],
      ],
    });
    expect(countPulls([above])).toBe(0);
  });

  it('of a pull shorter than a second is that at lift', () => {
    expect(
      summaryOf({
        kind: 'pull',
        rows: [
          [0, 340],
          [0.4, 331],
          [0.8, 322],
        ],
      }),
    ).toMatchObject({ peak: 322, peakTime: 0.8 });
  });
});

describe('time above the limit', () => {
  // Straight lines between rows: crossings where the line through two points meets 330.
  it('runs from crossing to crossing', () => {
    const summary = summaryOf({
      kind: 'pull',
      rows: [
        [10, 320],
        [11, 320],
        [13, 340],
        [15, 340],
        [19, 320],
        [20, 320],
        [22, 332],
      ],
    });
    // up at 12, down at 17, up again at 21 + 2/3
    expect(summary.timeAboveLimit).toBeCloseTo(17 - 12 + 1 / 3, 12);
    expect(summary.crossedAtShare).toBeCloseTo((12 - 10) / 12, 12);
  });

  it('does not count the first second, and a pull that is above after it was crossed there', () => {
    const summary = summaryOf({
      kind: 'pull',
      rows: [
        [0, 350],
        [1, 334],
        [3, 326],
        [10, 320],
      ],
    });
    expect(summary.timeAboveLimit).toBeCloseTo(1, 12);
    expect(summary.crossedAtShare).toBeCloseTo(0.1, 12);
  });

  it('counts rows that stand exactly on the limit to neither side twice', () => {
    const summary = summaryOf({
      kind: 'pull',
      rows: [
        [0, 320],
        [1, 320],
        [2, 330],
        [3, 331],
        [4, 330],
        [5, 330],
        [6, 329],
        [8, 330],
      ],
    });
    expect(summary.timeAboveLimit).toBeCloseTo(2, 12);
    expect(summary.crossedAtShare).toBeCloseTo(2 / 8, 12);
  });

  it('does not mind two rows at one instant', () => {
    const rows = [
      [0, 320],
      [1, 320],
      [2, 340],
      [2, 340],
      [3, 340],
    ] as const;
    expect(summaryOf({ kind: 'pull', rows }).timeAboveLimit).toBeCloseTo(1.5, 12);
  });
});

describe('a summary', () => {
  const rows = [
    [0, 320],
    [1, 321],
    [5, 325],
  ] as const;

  it('has the values at lift, the coolant at the start, and heat and work by the trapezoid', () => {
    const summary = summaryOf({
      kind: 'pull',
      rows,
      columns: {
        airFlow: [0.1, 0.2, 0.3],
        pressureRatio: [1.2, 1.5, 1.9],
        coolantIntoCore: [303, 304, 305],
        airToCorePower: [1000, 3000, 7000],
        drivePower: [5000, 5000, 10000],
      },
    });
    expect(summary.atEnd).toMatchObject({
      airFlow: 0.3,
      pressureRatio: 1.9,
      coolantIntoCore: 305,
      airToCorePower: 7000,
    });
    expect(summary.coolantIntoCoreAtStart).toBe(303);
    expect(summary.heatIntoCore).toBeCloseTo(2000 + 4 * 5000, 9);
    expect(summary.driveWork).toBeCloseTo(5000 + 4 * 7500, 9);
  });

  it('is made of every whole pull in order; one that the run ended inside is left out', () => {
    const shift = (by: number, more: number) => rows.map(([time, charge]) => [time + by, charge + more] as const);
    const series = handMadeSeries([
      { kind: 'pull', rows, block: 1 },
      { kind: 'idle', rows: shift(5, 40), block: 1 },
      { kind: 'pull', rows: shift(10, 3), block: 2 },
      { kind: 'pull', rows: shift(15, 9), block: 3, isWhole: false },
    ]);
    expect(summarisePulls(series, LIMIT).map(({ pull, block, peak }) => [pull, block, peak])).toEqual([
      [1, 1, 325],
      [2, 2, 328],
    ]);
  });
});

describe('counting', () => {
  const pulls = (...peaks: number[]) =>
    summarisePulls(
      handMadeSeries(
        peaks.map((peak, k) => ({
          kind: 'pull',
          rows: [
            [10 * k, 300],
            [10 * k + 1, 300],
            [10 * k + 9, peak],
          ],
        })),
      ),
      LIMIT,
    );

  it.each([
    [[331, 320, 320], 0],
    [[320, 325, 331, 320], 2],
    [[320, 325, 329.9], 3],
    [[], 0],
  ])('ends with the first pull over the limit: %j gives %d', (peaks, count) => {
    expect(countPulls(pulls(...peaks))).toBe(count);
  });

  it.each([
    ['the breaking pull, though a later one is hotter', [325, 331, 335], 2],
    ['else the hottest', [325, 329, 327], 2],
    ['else the earliest within 0.05 K of the hottest', [320, 328.96, 329], 2],
    ['and not one 0.06 K below it', [320, 328.94, 329], 3],
  ])('%s decides', (_, peaks, pull) => {
    expect(decidingPull(pulls(...peaks))?.pull).toBe(pull);
  });

  it('has nothing to decide without a pull', () => {
    expect(decidingPull([])).toBeUndefined();
  });
});
