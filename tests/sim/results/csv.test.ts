import { describe, expect, it } from 'vitest';
import { seriesToCsv } from '../../../src/sim/results/csv.ts';
import { COLUMNS, type ColumnName } from '../../../src/sim/results/time-series.ts';
import { simulate } from '../../../src/sim/simulate.ts';
import { shortConfig } from '../../support/short-session.ts';

const series = simulate(shortConfig());
const names = Object.keys(COLUMNS) as ColumnName[];

/** SI to the unit of a column by the definition of the unit. */
const FROM_SI: Record<string, (value: number) => number> = {
  s: (value) => value,
  rpm: (value) => value,
  degC: (value) => value - 273.15,
  kg: (value) => value,
  'kg/s': (value) => value,
  '-': (value) => value,
  'kPa abs': (value) => value / 1000,
  kPa: (value) => value / 1000,
  kW: (value) => value / 1000,
  'L/min': (value) => value * 60000,
};

describe('a time series as comma-separated text', () => {
  const text = seriesToCsv(series);
  const lines = text.split('\r\n');

  it('ends every line, the last too, with carriage return and line feed, and has no other', () => {
    expect(lines.pop()).toBe('');
    expect(text.replaceAll('\r\n', '')).not.toMatch(/[\r\n]/);
  });

  it('begins with the names of all columns, each with its unit', () => {
    expect(lines[0].split(',')).toEqual(names.map((name) => `${name} [${COLUMNS[name][0]}]`));
    for (const field of lines[0].split(','))
      expect(field).toMatch(/^[a-z][A-Za-z]+ \[(s|rpm|degC|kg|kg\/s|-|kPa abs|kPa|kW|L\/min)\]$/);
  });

  it('has one row per recorded instant, every number to nine digits in its unit', () => {
    expect(lines.slice(1).filter((line) => line !== '')).toHaveLength(series.rowCount);
    for (const row of [0, 1, 57, series.rowCount - 1]) {
      lines[row + 1].split(',').forEach((field, column) => {
        const name = names[column];
        if (Number.isNaN(series.columns[name][row])) {
          expect(field, name).toBe('');
          return;
        }
        const expected = FROM_SI[COLUMNS[name][0]](series.columns[name][row]);
        expect(field, name).toMatch(/^-?\d+(\.\d+)?(e-?\d+)?$/);
        expect(Math.abs(Number(field) - expected), name).toBeLessThanOrEqual(6e-9 * Math.abs(expected) + 1e-12);
      });
    }
  });
});
