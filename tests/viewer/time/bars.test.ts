import { describe, expect, it } from 'vitest';
import { IMPERIAL, METRIC } from '../../../src/viewer/state/display.ts';
import {
  type BarFrame,
  barRange,
  barsThatMatter,
  layOutBars,
  numberPlace,
  writtenPulls,
} from '../../../src/viewer/time/bars.ts';
import { DEGREES, handMadeRun, minutePhases } from './hand-made.ts';

/** 2 px a second, 4 px a degree above 27 degC, floor at 200 px. */
const FRAME: BarFrame = {
  x: (time) => 2 * time,
  y: (kelvin) => 200 - 4 * (kelvin - DEGREES - 27),
  width: 500,
  wholeDigits: 2,
};
const phases = minutePhases(3);

describe('bars over time', () => {
  it('stands a lone bar about the middle of its pull', () => {
    const { bars, slot, pulls } = layOutBars([handMadeRun({ peaks: [50, 52, 54], phases })], FRAME);
    // Middle of pull 1 at 66 s = 132 px, the next 60 s = 120 px further.
    expect(slot).toBe(120);
    expect(pulls.map(({ x }) => x)).toEqual([132, 252, 372]);
    const [first] = bars;
    expect(first.x + 17).toBe(132);
    expect(first.time).toBe(72);
    expect(first.solved).toEqual({ peak: 50 + DEGREES, isOver: false, limitTop: 108, top: 108 });
  });

  it('stands Before left and After right of the middle', () => {
    const before = handMadeRun({ peaks: [63.5, 65, 66], phases });
    const after = handMadeRun({ which: 'after', peaks: [50, 52, 54], phases });
    const { bars } = layOutBars([before, after], FRAME);
    const [first] = bars.filter(({ which }) => which === 'before');
    const [second] = bars.filter(({ which }) => which === 'after');
    expect(first.x + first.width).toBeLessThanOrEqual(132);
    expect(second.x).toBe(132);
    expect(first.width).toBe(second.width);
  });

  it('parts a bar at the limit', () => {
    const { bars } = layOutBars([handMadeRun({ peaks: [63.5], phases, limit: 58 })], FRAME);
    // 58 degC is 31 K over the floor = 124 px, 63.5 degC 36.5 K = 146 px.
    expect(bars[0].solved).toEqual({ peak: 63.5 + DEGREES, isOver: true, limitTop: 76, top: 54 });
  });

  it('keeps the place of a pull that is not solved', () => {
    const { bars } = layOutBars([handMadeRun({ peaks: [50], phases, solvedTo: 100 })], FRAME);
    expect(bars.map(({ pull, solved }) => [pull, solved !== undefined])).toEqual([
      [1, true],
      [2, false],
      [3, false],
    ]);
  });

  it.each([
    [2, 'tenths'],
    [0.45, 'whole'],
    [0.1, 'few'],
  ])('writes less where a second is %s px', (pixels, labels) => {
    const before = handMadeRun({ peaks: [63, 64, 65], phases });
    const after = handMadeRun({ which: 'after', peaks: [50, 52, 54], phases });
    expect(layOutBars([before, after], { ...FRAME, x: (time) => pixels * time }).labels).toBe(labels);
  });

  it('asks for more room where both numbers stand above their bars', () => {
    const before = handMadeRun({ peaks: [63, 64, 65], phases });
    const under = handMadeRun({ which: 'after', peaks: [50, 52, 54], phases });
    const over = handMadeRun({ which: 'after', peaks: [60, 61, 62], phases });
    const frame = { ...FRAME, x: (time: number) => 0.45 * time };
    expect(layOutBars([before, under], frame).labels).toBe('whole');
    expect(layOutBars([before, over], frame).labels).toBe('few');
  });

  it('writes at the pull of the clock and at the hottest where room is short', () => {
    const many = minutePhases(5);
    const { bars } = layOutBars([handMadeRun({ peaks: [50, 52, 57, 55, 54], phases: many })], FRAME);
    expect([...barsThatMatter(bars, 2)].map(({ pull }) => pull).sort()).toEqual([2, 3]);
    expect([...barsThatMatter(bars, 0)].map(({ pull }) => pull)).toEqual([3]);
  });

  it('numbers every pull, or round ones where they would touch', () => {
    const pulls = (slot: number) => ({
      pulls: Array.from({ length: 12 }, (_, k) => ({ pull: k + 1, x: slot * (k + 1), end: 0 })),
      slot,
    });
    expect(writtenPulls(pulls(30), 24, 9)).toHaveLength(12);
    expect(writtenPulls(pulls(10), 24, 0)).toEqual([1, 5, 10]);
    // Pull 9 stands 10 px from pull 10 and 40 px from pull 5.
    expect(writtenPulls(pulls(10), 24, 9)).toEqual([1, 5, 9]);
  });

  it('puts two numbers back to back at thin bars, and inside the drawing', () => {
    const bar = { pull: 1, time: 72, width: 4 } as const;
    expect(numberPlace({ ...bar, which: 'before', x: 96 }, true, 20, 500)).toEqual({ x: 99, anchor: 'end' });
    expect(numberPlace({ ...bar, which: 'after', x: 100 }, true, 20, 500)).toEqual({ x: 101, anchor: 'start' });
    expect(numberPlace({ ...bar, which: 'after', x: 495 }, true, 20, 500).x).toBeLessThan(470);
    expect(numberPlace({ ...bar, which: 'after', x: 100 }, false, 20, 500)).toEqual({ x: 102, anchor: 'middle' });
  });

  it('moves a number at either end of the drawing in, clear of the numbers of the axis', () => {
    const bar = { which: 'before', pull: 1, time: 72, width: 2 } as const;
    // A number of four digits is about 34 px wide, so its middle stays 17 px inside.
    expect(numberPlace({ ...bar, x: 20 }, false, 20, 500)).toEqual({ x: 37, anchor: 'middle' });
    expect(numberPlace({ ...bar, x: 498 }, false, 20, 500)).toEqual({ x: 483, anchor: 'middle' });
    expect(numberPlace({ ...bar, x: 20 }, true, 20, 500).x).toBe(53);
  });

  it('takes marks on the bars into its height, on either side', () => {
    const run = handMadeRun({ peaks: [50, 52, 54], phases, limit: 58, outside: 27 });
    const range = (...marks: number[]) =>
      barRange(
        [run],
        METRIC,
        marks.map((degrees) => degrees + DEGREES),
      ).map((kelvin) => kelvin - DEGREES);
    // On steps of 5 K from 27 degC: up to 67 for 64.5; for 20 from 15, a round number a step below.
    expect(range(64.5)).toEqual([27, 67].map((t) => expect.closeTo(t, 9)));
    expect(range(40)).toEqual([27, 62].map((t) => expect.closeTo(t, 9)));
    expect(range(20)).toEqual([15, 60].map((t) => expect.closeTo(t, 9)));
  });

  it('begins its height at outside air and ends on a step above peak and limit', () => {
    const low = handMadeRun({ peaks: [50, 52, 54], phases, limit: 58, outside: 27 });
    expect(barRange([low], METRIC).map((kelvin) => kelvin - DEGREES)).toEqual(
      [27, 62].map((t) => expect.closeTo(t, 9)),
    );
    const hot = handMadeRun({ peaks: [68, 69, 70], phases, limit: 58, outside: 24 });
    // iced water: from a round number a step or more below the coldest peak, whatever the air outside
    const iced = handMadeRun({ peaks: [24, 21, 40], phases, limit: 58, outside: 27 });
    expect(barRange([iced], METRIC).map((kelvin) => kelvin - DEGREES)).toEqual(
      [15, 60].map((t) => expect.closeTo(t, 9)),
    );
    // 21 degC are 69.8 degF: 10 degF and more below that is 50 degF, 10 degC; 58 degC are 136.4 degF, held by 140, 60 degC.
    expect(barRange([iced], IMPERIAL).map((kelvin) => kelvin - DEGREES)).toEqual(
      [10, 60].map((t) => expect.closeTo(t, 9)),
    );
    expect(barRange([low, hot], METRIC).map((kelvin) => kelvin - DEGREES)).toEqual(
      [24, 74].map((t) => expect.closeTo(t, 9)),
    );
  });
});
