import { describe, expect, it } from 'vitest';
import { dayOf } from '../../../src/viewer/questions/day-question.tsx';
import { signedDifference } from '../../../src/viewer/questions/gauge-figure.tsx';
import { boxesFor, readingsOf, withReading } from '../../../src/viewer/questions/gauge-question.tsx';
import { expected, readTyped } from '../../../src/viewer/questions/typed-box.tsx';
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

describe('the readings of the gauge', () => {
  it('have three boxes at first, then always an empty one, and no more than pulls', () => {
    expect(boxesFor([], 8)).toBe(3);
    expect(boxesFor([52, 'empty', 57], 8)).toBe(4);
    expect(boxesFor([52, 'unreadable', 'empty', 'empty'], 8)).toBe(3);
    expect(boxesFor([52, 55, 57], 3)).toBe(3);
    expect(boxesFor([], 1)).toBe(1);
  });

  it('keep their pull when one before them is left out', () => {
    const typed = withReading(withReading([], 2, 57), 0, 52);
    expect(typed).toEqual([52, 'empty', 57]);
    expect(readingsOf([...typed, 'unreadable'])).toEqual([
      { pull: 1, indicated: 325.15 },
      { pull: 3, indicated: 330.15 },
    ]);
  });
});

it('signs a miss, and a miss of nothing has no sign', () => {
  expect([1.24, -1.24, 0.04, -0.04].map((miss) => signedDifference(miss, METRIC))).toEqual([
    '+1.2',
    '-1.2',
    '0.0',
    '0.0',
  ]);
  expect(signedDifference(5, IMPERIAL)).toBe('+9.0');
});

it('leaves the day as the file has it where a box is empty', () => {
  expect(dayOf({ temperature: 0, altitude: 'empty', relativeHumidity: 'unreadable' })).toEqual({ temperature: 0 });
});
