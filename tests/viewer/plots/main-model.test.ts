import { describe, expect, it } from 'vitest';
import { scaleOf } from '../../../src/viewer/format.ts';
import { besideLimit, degreeStep, mainMarks, mainRange, movedApart } from '../../../src/viewer/plots/main-model.ts';
import { viewOf } from '../../../src/viewer/plots/view.ts';
import { IMPERIAL, METRIC } from '../../../src/viewer/state/display.ts';
import { DEGREES, handMadeRun, handMadeSeries, minutePhases } from '../time/hand-made.ts';

const phases = minutePhases(3);
const before = handMadeRun({ peaks: [63.5, 65, 66.8], phases });
const after = handMadeRun({ which: 'after', peaks: [50.1, 52, 54.7], phases });
const pullOne = viewOf(phases, 240, 'one pull', 72, undefined);
const wholeRun = viewOf(phases, 240, 'whole run', 72, undefined);

describe('what stands beside the lines of the charge temperature', () => {
  it('marks peak and crossing of the pull that is looked at', () => {
    const marks = mainMarks([before, after], pullOne, METRIC);
    expect(marks.shades).toEqual([{ from: 60, to: 72 }]);
    expect(marks.peaks).toEqual([
      { which: 'before', time: 72, kelvin: 63.5 + DEGREES, text: '63.5\u00a0°C' },
      { which: 'after', time: 72, kelvin: 50.1 + DEGREES, text: '50.1\u00a0°C' },
    ]);
    // Crossed half way through 12 s, at the limit of 58 degC.
    expect(marks.crossings).toEqual([
      { which: 'before', time: 66, kelvin: expect.closeTo(58 + DEGREES, 9), text: 'over at 6.0\u00a0s' },
    ]);
    expect(marks.limit?.text).toBe('Limit 58.0\u00a0°C');
    expect(marks.otherLimit).toBeUndefined();
  });

  it('writes only the hottest over a whole run', () => {
    const { peaks, crossings } = mainMarks([before], wholeRun, METRIC);
    expect(peaks.map(({ time, text }) => [time, text])).toEqual([
      [72, undefined],
      [132, undefined],
      [192, '66.8\u00a0°C'],
    ]);
    expect(crossings).toEqual([]);
  });

  it('keeps a crossing whose peak is out of view', () => {
    const zoom = viewOf(phases, 240, 'one pull', 66, { from: 64, to: 68 });
    const { peaks, crossings } = mainMarks([before], zoom, METRIC);
    expect(peaks).toEqual([]);
    expect(crossings.map(({ time }) => time)).toEqual([66]);
  });

  it('shows both limits where they differ', () => {
    const stricter = handMadeRun({ which: 'after', peaks: [50.1], phases, limit: 48 });
    const marks = mainMarks([before, stricter], pullOne, METRIC);
    expect(marks.limit?.text).toBe('Limit 48.0\u00a0°C');
    expect(marks.otherLimit?.text).toBe('Before 58.0\u00a0°C');
  });

  it('shows nothing without a car', () => {
    expect(mainMarks([], pullOne, METRIC)).toEqual({ shades: [], peaks: [], crossings: [] });
  });
});

describe('the height axis', () => {
  const colours = { low: 25 + DEGREES, high: 75 + DEGREES };
  const charge = (...degrees: number[]) =>
    handMadeSeries({
      time: degrees.map((_, k) => k),
      chargeTemperature: degrees.map((each) => each + DEGREES),
      indicatedTemperature: degrees.map((each) => each + DEGREES),
    });
  const range = (low: number, high: number) => [low, high].map((each) => expect.closeTo(each + DEGREES, 9));

  it('is that of the colours as long as the charge fits in', () => {
    expect(mainRange(colours, [charge(30, 70), undefined], [58 + DEGREES])).toEqual(range(25, 75));
    expect(mainRange(colours, [undefined, undefined], [])).toEqual(range(25, 75));
  });

  it('grows by 25 K for a charge or a limit beyond them', () => {
    expect(mainRange(colours, [charge(30, 76)], [58 + DEGREES])).toEqual(range(25, 100));
    expect(mainRange(colours, [charge(30, 70)], [80 + DEGREES])).toEqual(range(25, 100));
    expect(mainRange(colours, [charge(-10, 126)], [])).toEqual(range(-25, 150));
  });

  it('is numbered every 10 to 50 degrees', () => {
    const kelvins = [25 + DEGREES, 75 + DEGREES] as const;
    expect(degreeStep(kelvins, scaleOf('degC', METRIC))).toBe(10);
    expect(degreeStep(kelvins, scaleOf('degC', IMPERIAL))).toBe(25);
    expect(degreeStep([25 + DEGREES, 125 + DEGREES], scaleOf('degC', METRIC))).toBe(25);
    expect(degreeStep([25 + DEGREES, 125 + DEGREES], scaleOf('degC', IMPERIAL))).toBe(50);
  });

  it('keeps two numbers apart and in order', () => {
    expect(movedApart([100, 105], 16)).toEqual([100, 116]);
    expect(movedApart([105, 100], 16)).toEqual([116, 100]);
    expect(movedApart([100, 140], 16)).toEqual([100, 140]);
  });

  it('stand off the line of the limit, each on the side of its point', () => {
    expect(besideLimit([98], 16, 100)).toEqual([94]);
    expect(besideLimit([103], 16, 100)).toEqual([116]);
    expect(besideLimit([98, 103], 16, 100)).toEqual([94, 116]);
    expect(besideLimit([98, 90], 16, 100)).toEqual([94, 78]);
    expect(besideLimit([40, 160], 16, 100)).toEqual([40, 160]);
    expect(besideLimit([100, 105], 16, undefined)).toEqual([100, 116]);
  });
});
