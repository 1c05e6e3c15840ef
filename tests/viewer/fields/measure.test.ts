import { describe, expect, it } from 'vitest';
import { boxText, measureOf, storedValue, valueText } from '../../../src/viewer/fields/measure.ts';
import { IMPERIAL, METRIC } from '../../../src/viewer/state/display.ts';

const celsius = measureOf('degC', METRIC);
const fahrenheit = measureOf('degC', IMPERIAL);

describe('a value in its box', () => {
  it('is shown to the last digit in the unit of the file', () => {
    expect(boxText(0.9556, measureOf('m/s', IMPERIAL))).toBe('0.9556');
    expect(boxText(2.834, measureOf('kJ/K', METRIC))).toBe('2.834');
    expect(boxText(0.1 + 0.2, measureOf('m', METRIC))).toBe('0.3');
  });

  // 27 degC = 80.6 degF and 5 K = 9 degF by definition; 28 kPa / 6.894757 = 4.0611 psi; 16.5 mm / 25.4 = 0.64961 in.
  it.each([
    ['degC', 27, '80.6\u00a0°F'],
    ['K', 5, '9\u00a0°F'],
    ['kPa', 28, '4.061\u00a0psi'],
    ['mm', 16.5, '0.6496\u00a0in'],
    ['W/K', 390, '390\u00a0W/K'],
    ['share', 0.66, '0.66\u00a0of 1'],
    ['-', 1.62, '1.62'],
    ['m2', 0.11, '0.11\u00a0m²'],
  ] as const)('of a key in %s: %d is %s', (unit, value, shown) => {
    expect(valueText(value, measureOf(unit, IMPERIAL))).toBe(shown);
  });
});

describe('a typed text becomes in the file', () => {
  it.each([
    ['a number in the unit of the file', '95', celsius, 95],
    ['a number from a decimal comma', ' 2,5 ', celsius, 2.5],
    ['a number with the unit shown, where that is another', '95', fahrenheit, '95 degF'],
    ['the same from a fraction', '3/4', measureOf('mm', IMPERIAL), '0.75 in'],
    ['just what was typed, where it names its unit', '14 psi', measureOf('kPa', IMPERIAL), '14 psi'],
    ['just what was typed, where it cannot be read', '58,5o', celsius, '58,5o'],
    ['just what was typed, where it has two readings', '1,234', fahrenheit, '1,234'],
    ['no key, where nothing is typed', '  ', celsius, undefined],
  ])('%s', (_, text, measure, stored) => expect(storedValue(text, measure)).toBe(stored));
});
