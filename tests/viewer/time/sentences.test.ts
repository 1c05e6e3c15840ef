import { describe, expect, it } from 'vitest';
import { METRIC } from '../../../src/viewer/state/display.ts';
import { describeBars } from '../../../src/viewer/time/sentences.ts';
import { handMadeRun, minutePhases } from './hand-made.ts';

const phases = minutePhases(3);
const said = (...runs: Parameters<typeof describeBars>[0]) => describeBars(runs, METRIC).replaceAll('\u00a0', ' ');

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
