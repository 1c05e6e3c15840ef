import { describe, expect, it } from 'vitest';
import { IMPERIAL, METRIC } from '../../../src/viewer/state/display.ts';
import { layOutBars, shareOut } from '../../../src/viewer/time/bars.ts';
import {
  gaugeMarks,
  haveRoom,
  heightsOf,
  missOf,
  numberFoot,
  type PlacedMark,
  placeMarks,
} from '../../../src/viewer/time/gauge-marks.ts';
import { DEGREES, handMadeRun, minutePhases } from './hand-made.ts';

const phases = minutePhases(3);
const reading = (pull: number, degrees: number) => ({ pull, indicated: degrees + DEGREES });
/** 2 px a second, 4 px a degree above 27 degC, floor at 200 px. */
const FRAME = {
  x: (time: number) => 2 * time,
  y: (kelvin: number) => 200 - 4 * (kelvin - DEGREES - 27),
  width: 500,
  wholeDigits: 2,
};

describe('readings beside the model', () => {
  // A gauge would read 5 K less than each peak.
  const run = handMadeRun({ peaks: [50, 52], phases, solvedTo: 140 });

  it('have what a gauge would show there, and the miss', () => {
    const [first, second] = gaugeMarks(run, [reading(1, 44), reading(2, 49.5)]);
    expect(first).toEqual({
      pull: 1,
      gauge: 44 + DEGREES,
      model: { indicated: 45 + DEGREES, miss: expect.closeTo(1, 9) },
    });
    expect([first, second].map((mark) => missOf(mark, METRIC))).toEqual(['+1.0', '−2.5']);
    expect(missOf(second, IMPERIAL)).toBe('−4.5');
    expect(heightsOf([second])).toEqual([49.5 + DEGREES, 47 + DEGREES]);
  });

  it('stand alone where the pull is not solved, and not at all where there is no such pull', () => {
    const marks = gaugeMarks(run, [reading(3, 44), reading(4, 44)]);
    expect(marks).toEqual([{ pull: 3, gauge: 44 + DEGREES }]);
    expect(missOf(marks[0], METRIC)).toBe('');
    expect(heightsOf(marks)).toEqual([44 + DEGREES]);
    expect(gaugeMarks(undefined, [reading(1, 44)])).toEqual([]);
  });
});

describe('marks on the bars', () => {
  const before = handMadeRun({ peaks: [63, 64, 65], phases });
  const after = handMadeRun({ which: 'after', peaks: [50, 52, 54], phases });
  const placed = (runs: (typeof before)[], degrees: number, right = 500) => {
    const hand = runs[runs.length - 1];
    return placeMarks(gaugeMarks(hand, [reading(1, degrees)]), {
      ...layOutBars(runs, FRAME),
      y: FRAME.y,
      limit: FRAME.y(58 + DEGREES),
      right,
      write: (mark) => missOf(mark, METRIC),
    });
  };

  it('stand on the middle of the bar at their heights, the miss right of it', () => {
    // Middle of pull 1 at 66 s = 132 px, its bar 34 px wide of which 1.5 are left free. 42 degC is 15 K over the floor.
    const [mark] = placed([after], 42);
    expect(mark).toMatchObject({ pull: 1, x: 131.25, dot: 140, radius: 4.5 });
    // A gauge in the model shows 45 degC.
    expect(mark.tick).toEqual({ y: 128, half: 18.25 });
    expect(mark.miss).toEqual({ text: '+3.0', x: 153.5, y: 140 });
  });

  it('stand on the bar of After where there are two', () => {
    expect(placed([before, after], 42)[0].x).toBe(132 + 16.25);
  });

  it('keep the miss off the line of the limit, on the side of the dot', () => {
    // The line of 58 degC is at 76 px: dots at 77 and 75 px.
    expect(placed([after], 57.75)[0].miss?.y).toBe(85);
    expect(placed([after], 58.25)[0].miss?.y).toBe(67);
  });

  it('leave out a miss that would reach over the end of the drawing', () => {
    expect(placed([after], 42, 181)[0].miss).toEqual(expect.anything());
    expect(placed([after], 42, 180)[0].miss).toBeUndefined();
  });

  it('shrink where bars are thin, and the tick stays wider than the dot', () => {
    const bars = [{ which: 'before', pull: 1, time: 72, x: 99, width: 2 }] as const;
    const marks = gaugeMarks(before, [reading(1, 60)]);
    const [mark] = placeMarks(marks, { bars, slot: 8, y: FRAME.y, limit: 0, right: 500 });
    expect(mark).toMatchObject({ x: 100, radius: 2.4, tick: { half: 4.9 } });
    expect(mark.miss).toBeUndefined();
  });

  it('have their misses written where all of them fit between the bars', () => {
    // Pulls 60 s apart: 120 px less a bar of 34 px leaves 86; at 1 px a second 60 less 34 leaves 26.
    const slots = (pixels: number, ...runs: (typeof before)[]) =>
      shareOut(runs, { x: (time) => pixels * time, width: 500 });
    // Four letters of 6.8 px, 6 px before and 8 px after them are 41.2 px.
    expect(haveRoom(['+3.0', '-0.2'], slots(2, after))).toBe(true);
    expect(haveRoom(['+3.0', '-0.2'], slots(1, after))).toBe(false);
    // Two bars leave 52 px: enough for four letters, not for six.
    expect(haveRoom(['+3.0'], slots(2, before, after))).toBe(true);
    expect(haveRoom(['+3.0', '-103.2'], slots(2, before, after))).toBe(false);
    expect(haveRoom(['', ''], slots(2, after))).toBe(false);
  });
});

describe('the number of a bar', () => {
  const bar = { top: 100, floor: 200, span: [90, 120] as const };
  /** a limit far above the bar */
  const FAR = 20;
  const mark = (dot: number, tick: number, x = 105): PlacedMark => ({
    pull: 1,
    x,
    dot,
    radius: 4.5,
    tick: { y: tick, half: 19 },
  });

  it('stands where it always does as long as no mark is near', () => {
    expect(numberFoot({ ...bar, mayBeInside: false }, [], [FAR])).toEqual({ foot: 95, isInside: false });
    expect(numberFoot({ ...bar, mayBeInside: true }, [], [FAR])).toEqual({ foot: 115, isInside: true });
    expect(numberFoot({ ...bar, mayBeInside: false }, [mark(120, 130)], [FAR]).foot).toBe(95);
    expect(numberFoot({ ...bar, mayBeInside: false }, [mark(60, 130)], [FAR]).foot).toBe(95);
    expect(numberFoot({ ...bar, mayBeInside: false }, [mark(90, 95, 150)], [FAR]).foot).toBe(95);
  });

  it('is lifted over a dot, and over a tick above that', () => {
    // 3 px over a dot that reaches 4.5 px up from 92; then 3 px over the upper edge of the tick at 80.
    expect(numberFoot({ ...bar, mayBeInside: false }, [mark(92, 130)], [FAR]).foot).toBe(84.5);
    expect(numberFoot({ ...bar, mayBeInside: false }, [mark(92, 80)], [FAR]).foot).toBe(75);
  });

  it('stands inside under the marks, or above where nothing is left inside', () => {
    // 10 px of digits 3 px under the lower edge of the tick at 112; and then under a dot that reaches to 128.5.
    expect(numberFoot({ ...bar, mayBeInside: true }, [mark(60, 112)], [FAR])).toEqual({ foot: 127, isInside: true });
    expect(numberFoot({ ...bar, mayBeInside: true }, [mark(124, 112)], [FAR])).toEqual({ foot: 141.5, isInside: true });
    expect(numberFoot({ ...bar, floor: 130, mayBeInside: true }, [mark(124, 112)], [FAR])).toEqual({
      foot: 95,
      isInside: false,
    });
  });

  it('is lifted over the line of the limit where it would stand in it, and over a dot that is then in its way', () => {
    // 10 px of digits over a foot at 95, 3 px free on either side; the line is 2 px wide.
    const footUnder = (limit: number, ...marks: PlacedMark[]) =>
      numberFoot({ ...bar, mayBeInside: false }, marks, [limit]).foot;
    expect(footUnder(80)).toBe(95);
    expect(footUnder(83)).toBe(79);
    expect(footUnder(90)).toBe(86);
    expect(footUnder(90, mark(84, 130))).toBe(76.5);
    expect(numberFoot({ ...bar, mayBeInside: true }, [], [95])).toEqual({ foot: 115, isInside: true });
  });
});
