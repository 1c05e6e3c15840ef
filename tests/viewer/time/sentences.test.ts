import { describe, expect, it } from 'vitest';
import { IMPERIAL, METRIC } from '../../../src/viewer/state/display.ts';
import { gaugeMarks } from '../../../src/viewer/time/gauge-marks.ts';
import { describeBars, describeMarks, explainBase, explainMarks } from '../../../src/viewer/time/sentences.ts';
import { DEGREES, handMadeRun, minutePhases } from './hand-made.ts';

const phases = minutePhases(3);
const said = (...runs: Parameters<typeof describeBars>[0]) => describeBars(runs, METRIC).replaceAll('\u00a0', ' ');

describe('what the bars stand on', () => {
  it('is said where it is not the outside air', () => {
    const base = (degrees: number, units = METRIC) =>
      explainBase(36 + DEGREES, degrees + DEGREES, units).replaceAll('\u00a0', ' ');
    expect(base(36)).toBe('');
    expect(base(20)).toBe('Bars stand on 20 °C, below the outside air of 36 °C (dashed).');
    // 36 degC are 96.8 degF.
    expect(base(10, IMPERIAL)).toBe('Bars stand on 50 °F, below the outside air of 97 °F (dashed).');
  });
});

describe('bars in words', () => {
  it('counts the pulls under the limit and says how the peaks go', () => {
    expect(said(handMadeRun({ peaks: [57, 59, 61], phases }))).toBe(
      '1 of 3 pulls stays at or under 58.0 °C; peaks go from 57.0 °C in pull 1 to 61.0 °C in pull 3.',
    );
  });

  it('names both cars when there are two', () => {
    const before = handMadeRun({ peaks: [59, 60, 61], phases });
    const after = handMadeRun({ which: 'after', peaks: [55, 54, 53], phases });
    expect(said(before, after)).toBe(
      'Before: 0 of 3 pulls stay at or under 58.0 °C; peaks go from 59.0 °C in pull 1 to 61.0 °C in pull 3. ' +
        'After: 3 of 3 pulls stay at or under 58.0 °C; the hottest, pull 1, peaks at 55.0 °C.',
    );
  });

  it('says of a part that it is a part', () => {
    expect(said(handMadeRun({ peaks: [50, 52], phases, solvedTo: 150 }))).toBe(
      '2 of 2 solved pulls stay at or under 58.0 °C; peaks go from 50.0 °C in pull 1 to 52.0 °C in pull 2; ' +
        'the run is known up to 2:30.0.',
    );
    expect(said(handMadeRun({ peaks: [], phases, solvedTo: 20 }))).toBe('no pull is solved yet, of 3.');
    expect(said()).toBe('No run yet.');
  });
});

describe('readings in words', () => {
  // A gauge would read 5 K less than each peak.
  const run = handMadeRun({ peaks: [57, 59], phases, solvedTo: 140 });
  const marks = (...degrees: (number | null)[]) =>
    gaugeMarks(
      run,
      degrees.flatMap((each, k) => (each === null ? [] : [{ pull: k + 1, indicated: each + DEGREES }])),
    );
  const told = (...degrees: (number | null)[]) => describeMarks(marks(...degrees), METRIC).replaceAll('\u00a0', ' ');

  it('say how many there are, and how far the model is off', () => {
    expect(told(50, 55)).toBe('Gauge readings are shown at 2 pulls; model less gauge goes from −1.0 K to +2.0 K.');
    expect(told(null, 55)).toBe('A gauge reading is shown at pull 2; model less gauge is −1.0 K.');
    expect(told(51, 53)).toBe('Gauge readings are shown at 2 pulls; model less gauge is +1.0 K.');
    expect(describeMarks(marks(null, 49), IMPERIAL)).toContain('is +9.0\u00a0°F.');
  });

  it('say no more of a pull that is not solved, and nothing of none', () => {
    expect(told(null, null, 55)).toBe('A gauge reading is shown at pull 3.');
    expect(told()).toBe('');
  });

  it('explain what is drawn, with the car that it is drawn at', () => {
    expect(explainMarks([run], true, METRIC)).toBe(
      'Dot: gauge at the end of the pull, tick: model as a gauge reads it, number beside it: model less gauge, K.',
    );
    expect(explainMarks([run, { ...run, which: 'after' }], false, METRIC)).toBe(
      'Dot: gauge at the end of the pull, tick: After as a gauge reads it.',
    );
  });
});
