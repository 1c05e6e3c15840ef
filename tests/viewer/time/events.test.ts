import { describe, expect, it } from 'vitest';
import type { TimeSeries } from '../../../src/sim/index.ts';
import { type Car, NO_RUN } from '../../../src/viewer/state/cars.ts';
import { METRIC } from '../../../src/viewer/state/display.ts';
import { describeTarget, targetEvents } from '../../../src/viewer/time/events.ts';
import { describeBars } from '../../../src/viewer/time/sentences.ts';
import { byTable } from '../../../src/viewer/time/shop-table.ts';
import { handMadeRun, minutePhases } from './hand-made.ts';

const phases = minutePhases(2);
const events: TimeSeries['events'] = [
  { time: 65, kind: 'limit exceeded' },
  { time: 68.3, kind: 'target pressure lost' },
  { time: 70, kind: 'target pressure regained' },
];
const made = handMadeRun({ peaks: [50, 52], phases });
const withEvents = (of: Car = made.car) => ({
  ...made,
  run: { ...NO_RUN, of, series: { events } as unknown as TimeSeries },
});

describe('target pressure on the line of time', () => {
  it('stands where it is lost and where it is back, and nothing else does', () => {
    expect(targetEvents(withEvents())).toEqual([
      { time: 68.3, isLost: true },
      { time: 70, isLost: false },
    ]);
  });

  it('is not taken from the run of another car', () => {
    expect(targetEvents(withEvents({ ...made.car }))).toEqual([]);
  });

  it('is told in words, with what stands beside the bars', () => {
    const words = 'Target pressure lost at 1:08.3 (pull 1, 8.3 s in), regained at 1:10.0 (pull 1, 10.0 s in).';
    expect(describeTarget(targetEvents(withEvents()), phases).replaceAll('\u00a0', ' ')).toBe(words);
    expect(describeBars([withEvents()], METRIC).replaceAll('\u00a0', ' ')).toContain(words);
    expect(describeTarget([], phases)).toBe('');
  });

  it('is told four times at most', () => {
    const many = Array.from({ length: 6 }, (_, k) => ({ time: 60 + k, isLost: k % 2 === 0 }));
    expect(describeTarget(many, phases)).toMatch(/, and 2 times more\.$/);
  });
});

describe("the shop's own table", () => {
  // Halfway between the rows: -2 deg, -1.5 %.
  const table = [
    { chargeTemperature: 313.15, spark: 0, torque: 0 },
    { chargeTemperature: 333.15, spark: -4, torque: -0.03 },
  ];
  it.each([
    [323.15, '−2.0', '−1.5'],
    [313.15, '0.0', '0.0'],
    [350, '−4.0 (table ends)', '−3.0 (table ends)'],
  ])('at %f K: %s deg, %s %%', (peak, spark, torque) => {
    expect(byTable(table, peak)).toEqual({ spark, torque });
  });
});
