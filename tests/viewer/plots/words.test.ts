import { describe, expect, it } from 'vitest';
import { describeTrace, readingAt } from '../../../src/viewer/plots/readings.ts';
import { describeCharge } from '../../../src/viewer/plots/sentences.ts';
import { tableRows } from '../../../src/viewer/plots/table-rows.ts';
import { viewOf } from '../../../src/viewer/plots/view.ts';
import { IMPERIAL, METRIC } from '../../../src/viewer/state/display.ts';
import { DEGREES, handMadeRun, handMadeSeries, minutePhases } from '../time/hand-made.ts';

const phases = minutePhases(3);
const pullOne = viewOf(phases, 240, 'one pull', 72, undefined);
const wholeRun = viewOf(phases, 240, 'whole run', 72, undefined);
const spaced = (text: string) => text.replaceAll('\u00a0', ' ');

describe('readings', () => {
  const series = handMadeSeries({
    time: [0, 60, 60, 72, 72, 100],
    coolantOutOfCore: [30, 32, 32, 44, 44, 20].map((degrees) => degrees + DEGREES),
    coreAirDrop: [100, 100, 5000, 6000, 100, 100],
  });

  it('lie straight between rows, and before a leap at a joint', () => {
    expect(readingAt(series, 'coolantOutOfCore', 66, METRIC)).toEqual({ value: '38.0', unit: '°C' });
    expect(readingAt(series, 'coreAirDrop', 72, METRIC)).toEqual({ value: '6.00', unit: 'kPa' });
    expect(readingAt(series, 'coolantOutOfCore', 66, IMPERIAL)).toEqual({ value: '100.4', unit: '°F' });
  });

  it('are unknown behind the end of a run', () => {
    expect(readingAt(series, 'coolantOutOfCore', 100.1, METRIC)).toBeUndefined();
    expect(readingAt(undefined, 'coolantOutOfCore', 5, METRIC)).toBeUndefined();
  });

  it('say between what a trace goes', () => {
    const title = 'Coolant out of core';
    expect(spaced(describeTrace(title, 'coolantOutOfCore', [series, undefined], pullOne, METRIC))).toBe(
      'Coolant out of core, pull 1: 32.0 to 44.0 °C.',
    );
    const still = handMadeSeries({ time: [0, 60, 72, 100], coolantOutOfCore: Array(4).fill(31 + DEGREES) });
    expect(spaced(describeTrace(title, 'coolantOutOfCore', [series, still], pullOne, METRIC))).toBe(
      'Coolant out of core, pull 1: Before 32.0 to 44.0 °C, After 31.0 °C.',
    );
    expect(describeTrace(title, 'coolantOutOfCore', [undefined, undefined], pullOne, METRIC)).toBe(
      'Coolant out of core: no run yet.',
    );
  });
});

describe('the charge temperature in words', () => {
  const before = handMadeRun({ peaks: [63.5], phases, solvedTo: 100 });
  const after = handMadeRun({ which: 'after', peaks: [50.1, 52, 54], phases });

  it('tells the pull of each car', () => {
    expect(spaced(describeCharge([before, after], pullOne, METRIC))).toBe(
      'Before: pull 1 peaks at 63.5 °C, 5.5 K over the limit, which it passes 6.0 s in; indicated 59.5 °C at most. ' +
        'After: pull 1 peaks at 50.1 °C, 7.9 K under the limit; indicated 46.1 °C at most.',
    );
  });

  it('says where a pull is not solved, and nothing without a car', () => {
    const pullTwo = viewOf(phases, 240, 'one pull', 132, undefined);
    expect(describeCharge([before], pullTwo, METRIC)).toBe('pull 2 is not solved.');
    expect(describeCharge([], pullOne, METRIC)).toBe('No run yet.');
  });

  it('tells all pulls where no single one is in view', () => {
    expect(spaced(describeCharge([after], wholeRun, METRIC))).toBe(
      '3 of 3 pulls stay at or under 58.0 °C; peaks go from 50.1 °C in pull 1 to 54.0 °C in pull 3.',
    );
  });
});

describe('rows of the table beside a plot', () => {
  it('go through the pull in round steps', () => {
    const rows = tableRows(pullOne, phases);
    expect(rows[0]).toEqual({ time: 58, name: '−2.0\u00a0s' });
    expect(rows.map(({ time }) => time)).toEqual(Array.from({ length: 25 }, (_, k) => 58 + k));
  });

  it('always have the lift', () => {
    const odd = phases.map((phase) => (phase.pull === 1 && phase.kind === 'pull' ? { ...phase, end: 72.5 } : phase));
    const view = { ...pullOne, pull: odd[1] };
    // Twelfths of 12.5 s are rounded up to steps of 2 s: 72 s, then lift, then 74 s.
    expect(tableRows(view, odd).map(({ time }) => time)).toEqual([
      58, 60, 62, 64, 66, 68, 70, 72, 72.5, 74, 76, 78, 80, 82,
    ]);
  });

  it('are the ends of the phases over a whole run', () => {
    const rows = tableRows(wholeRun, phases);
    expect(rows).toHaveLength(7);
    expect(rows[1]).toEqual({ time: 72, name: '1:12.0, end of pull 1' });
  });
});
