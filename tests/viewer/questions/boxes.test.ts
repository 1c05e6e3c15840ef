import { describe, expect, it } from 'vitest';
import { dayOf } from '../../../src/viewer/questions/day/day-question.tsx';
import { boxesOf } from '../../../src/viewer/questions/gauge/gauge-question.tsx';
import { expected, readTyped, whyNotWhole } from '../../../src/viewer/questions/typed.ts';
import { IMPERIAL, METRIC } from '../../../src/viewer/state/display.ts';

describe('a box', () => {
  const range = [-50, 200] as const;

  it.each([
    ['52,5', METRIC, 52.5],
    [' 52.5 ', METRIC, 52.5],
    // 126.5 degF is 52.5 degC.
    ['126.5', IMPERIAL, 52.5],
    ['126,5 F', METRIC, 52.5],
    ['52.5 degC', IMPERIAL, 52.5],
  ])('reads %s', (text, units, degrees) => {
    expect(readTyped(text, 'degC', units, range)).toBeCloseTo(degrees, 9);
  });

  it('reads a difference in the unit chosen, without the offset of a temperature', () => {
    expect(readTyped('9', 'K', METRIC, range)).toBe(9);
    expect(readTyped('9', 'K', IMPERIAL, range)).toBeCloseTo(5, 9);
  });

  it('tells nothing from what is no number, no unit of it, or out of range', () => {
    expect(readTyped('  ', 'degC', METRIC, range)).toBe('empty');
    for (const text of ['warm', '52 kPa', '201', '-51']) {
      expect(readTyped(text, 'degC', METRIC, range)).toBe('unreadable');
    }
    expect(readTyped('201', 'degC', IMPERIAL, range)).toBeCloseTo((201 - 32) / 1.8, 9);
  });

  it('says what it takes in its own unit', () => {
    expect(expected('Pull 2', 'degC', METRIC, range)).toBe('Pull 2: expected a number, -50 to 200 °C.');
    expect(expected('Pull 2', 'degC', IMPERIAL, range)).toBe('Pull 2: expected a number, -58 to 392 °F.');
  });
});

describe('a box of a whole number', () => {
  it('says what it takes where something else stands in it', () => {
    for (const pulls of [0, 501, 2.5, Number.NaN]) {
      expect(whyNotWhole('Pulls wanted', pulls, 1, 500)).toBe('Pulls wanted: expected a whole number, 1 to 500.');
    }
    for (const pulls of [1, 500]) expect(whyNotWhole('Pulls wanted', pulls, 1, 500)).toBeUndefined();
  });
});

describe('the boxes of the gauge', () => {
  it('hold the readings, and texts that are none behind them too', () => {
    expect(boxesOf([52, null, 57], new Set())).toEqual([52, 'empty', 57]);
    expect(boxesOf([52, null], new Set([1, 3]))).toEqual([52, 'unreadable', 'empty', 'unreadable']);
    expect(boxesOf([], new Set())).toEqual([]);
  });
});

it('leaves the day as the file has it where a box is empty', () => {
  expect(dayOf({ temperature: 0, altitude: 'empty', relativeHumidity: 'unreadable' })).toEqual({ temperature: 0 });
});
