import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import {
  convert,
  decimals,
  type FileUnit,
  figure,
  figureWithUnit,
  fromSi,
  readQuantity,
  toSi,
  unitSymbols,
} from '../../src/sim/units.ts';

// NIST SP 811 (2008), appendix B.8, factors as printed there (six or seven figures); exact ones in full.
const NIST: readonly (readonly [number, string, FileUnit, number])[] = [
  [1, 'in', 'mm', 25.4],
  [1, 'ft', 'm', 0.3048],
  [1, 'psi', 'kPa', 6.894757],
  [1, 'psi abs', 'kPa abs', 6.894757],
  [1, 'inHg', 'kPa abs', 3.386389],
  [1, 'inH2O', 'kPa', 0.2490889],
  [1, 'gpm', 'L/min', 6.30902e-5 * 60000],
  [1, 'imp gpm', 'L/min', 7.57682e-5 * 60000],
  [1, 'lb/min', 'kg/s', 7.559873e-3],
  [1, 'hp', 'W', 745.6999],
  [1, 'mph', 'm/s', 0.44704],
  [1, 'ft/min', 'm/s', 5.08e-3],
  [1, 'km/h', 'm/s', 1 / 3.6],
  [1, 'cu in', 'L', 1.638706e-2],
  [1, 'cu in/rev', 'L/rev', 1.638706e-2],
  [1, 'gal', 'L', 3.785412],
  [1, 'sq ft', 'm2', 9.290304e-2],
  [1, 'sq in', 'm2', 6.4516e-4],
  [1, 'mbar', 'kPa', 0.1],
  [1, 'bar', 'kPa', 100],
  [1, 'kg/h', 'kg/s', 1 / 3600],
  [1, 'm3/h', 'L/min', 1000 / 60],
  [9, 'degF', 'K', 5],
  [95, 'degF', 'degC', 35],
  [-40, 'degF', 'degC', -40],
  [212, 'degF', 'degC', 100],
  [330, 'K', 'degC', 56.85],
  [2, 'h', 's', 7200],
  [60, '%', 'share', 0.6],
];

describe('conversion', () => {
  it.each(NIST)('%d %s in %s is %d', (value, symbol, fileUnit, expected) => {
    expect(Math.abs(convert(value, symbol, fileUnit) / expected - 1)).toBeLessThan(6e-7);
  });

  it('SI of file units, by hand', () => {
    expect(toSi(27, 'degC')).toBeCloseTo(300.15, 10);
    expect(toSi(6, 'K')).toBe(6);
    expect(toSi(99.5, 'kPa abs')).toBe(99500);
    expect(toSi(26, 'L/min')).toBeCloseTo(26e-3 / 60, 15);
    expect(toSi(40, '%')).toBeCloseTo(0.4, 15);
    // 1 Pa at 1 L/min is 60000^1.8 Pa at 1 m3/s: log10 = 1.8 * 4.778151 = 8.600672
    expect(Math.log10(toSi(1, 'Pa/(L/min)^1.8'))).toBeCloseTo(1.8 * Math.log10(60000), 10);
  });

  it('refuses a unit of another quantity', () => {
    expect(() => convert(1, 'psi', 'mm')).toThrow('unit is psi; expected mm, in, cm, m, ft, um');
  });

  it('there and back, in every unit', () => {
    const fileUnits: FileUnit[] = ['degC', 'K', 'kPa abs', 'kPa', 'kg/s', 'L/min', 'mm', 'm', 'W/K', 'L/rev', 'share'];
    for (const fileUnit of fileUnits) {
      for (const symbol of unitSymbols(fileUnit)) {
        fc.assert(
          fc.property(fc.double({ min: -1e3, max: 1e3, noNaN: true }), (value) => {
            expect(fromSi(toSi(value, fileUnit), fileUnit)).toBeCloseTo(value, 9);
            const reading = readQuantity(`${value} ${symbol}`, fileUnit);
            expect(reading.kind === 'value' && reading.value).toBeCloseTo(convert(value, symbol, fileUnit), 9);
          }),
        );
      }
    }
  });
});

describe('reading what was typed', () => {
  const value = (text: string, fileUnit: FileUnit) => readQuantity(text, fileUnit);

  it.each([
    ['14 psi', 'kPa', 96.5266],
    ['0.75 in', 'mm', 19.05],
    ['3/4 in', 'mm', 19.05],
    ['1 1/4 in', 'mm', 31.75],
    ['3/4"', 'mm', 19.05],
    ['9 gpm', 'L/min', 34.0687],
    ['95 degF', 'degC', 35],
    ['95°F', 'degC', 35],
    ['2,5 kPa', 'kPa', 2.5],
    ['0,125', 'kPa', 0.125],
    [' -8,5 °C ', 'degC', -8.5],
    ['−8,5 °C', 'degC', -8.5],
    ['.5L', 'L', 0.5],
    ['1e3 W', 'kW', 1],
    ['40', '%', 40],
    ['40 %', '%', 40],
    ['1500 cc', 'L/rev', 1.5],
    ['0,11 m²', 'm2', 0.11],
  ] as const)('%s is %s %d', (text, fileUnit, expected) => {
    const reading = value(text, fileUnit);
    expect(reading.kind).toBe('value');
    expect(reading.kind === 'value' && reading.value).toBeCloseTo(expected, 3);
  });

  it.each(['1,234', '1,234.5', '1.234,5', '12,345', '1.234.567', '1,2,3'])('%s is ambiguous', (text) => {
    expect(value(text, 'kPa').kind).toBe('ambiguous');
  });

  it('shows both readings of an ambiguous number', () => {
    expect(value('1,234.5', 'kPa')).toEqual({ kind: 'ambiguous', decimal: '1234.5', thousands: '12345' });
    expect(value('1,234', 'kPa')).toEqual({ kind: 'ambiguous', decimal: '1.234', thousands: '1234' });
  });

  it.each(['', 'abc', 'kPa 5', '-', '.', 'NaN', 'Infinity', '--5', '3/0', '3/0 in', '1 1/0 in'])(
    '%s is no number',
    (text) => {
      expect(value(text, 'kPa').kind).toBe('not a number');
    },
  );

  it('names a unit that does not fit', () => {
    expect(value('14 furlongs', 'mm')).toEqual({ kind: 'unknown unit', unit: 'furlongs' });
    expect(value('14 psi', 'mm')).toEqual({ kind: 'unknown unit', unit: 'psi' });
    expect(value('5 m/s', 'm')).toEqual({ kind: 'unknown unit', unit: 'm/s' });
  });

  it('a temperature and a difference of temperatures are not one thing', () => {
    expect(value('18 degF', 'K')).toMatchObject({ value: 10 });
    expect(value('50 degF', 'degC')).toMatchObject({ value: 10 });
  });

  it('never throws', () => {
    fc.assert(
      fc.property(fc.string(), (text) => {
        expect(['value', 'unknown unit', 'ambiguous', 'not a number']).toContain(value(text, 'mm').kind);
      }),
      { numRuns: 2000 },
    );
  });
});

describe('showing numbers', () => {
  it.each([
    [19.05, '19.05'],
    [0.9, '0.9'],
    [15745, '15745'],
    [96.526598, '96.53'],
    [1 / 3, '0.3333'],
    [22007.6, '22008'],
    [0, '0'],
    [-8, '-8'],
  ])('%d as %s', (number, text) => {
    expect(figure(number)).toBe(text);
  });

  it.each([
    [1.26, 1, '1.3'],
    [-1.26, 1, '-1.3'],
    [-0.04, 1, '0.0'],
    [-0, 2, '0.00'],
    [-0.4, 0, '0'],
    [-10.02, 1, '-10.0'],
  ])('%d to %d decimals is %s', (number, digits, text) => {
    expect(decimals(number, digits)).toBe(text);
  });

  it('leaves out the unit of pure numbers and shares', () => {
    expect([figureWithUnit(2, '-'), figureWithUnit(0.6, 'share'), figureWithUnit(60, '%')]).toEqual([
      '2',
      '0.6',
      '60 %',
    ]);
  });
});
