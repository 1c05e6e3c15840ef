import { describe, expect, it } from 'vitest';
import { COLUMNS, type ColumnName, type TimeSeries } from '../../../src/sim/index.ts';
import { csvOf, textCell } from '../../../src/viewer/files/csv.ts';
import { fileName } from '../../../src/viewer/files/export.ts';

/** Two phases of two rows each, every column at 300 K, 0.5 and so on; only what a table needs. */
function seriesOf(first: string, second: string): TimeSeries {
  const names = Object.keys(COLUMNS) as ColumnName[];
  const columns = Object.fromEntries(names.map((name) => [name, new Float64Array([300, 301, 301, 302.5])]));
  columns.time = new Float64Array([0, 1.5, 1.5, 3]);
  const phases = [
    { name: first, firstRow: 0, lastRow: 1 },
    { name: second, firstRow: 2, lastRow: 3 },
  ];
  return { columns, rowCount: 4, phases } as unknown as TimeSeries;
}

const rowsOf = (text: string, separator: string) =>
  text
    .trimEnd()
    .split('\r\n')
    .map((line) => line.split(separator));

describe('the plain table', () => {
  const rows = rowsOf(csvOf(seriesOf('warm-up', 'pull'), 'plain'), ',');

  it('has one column a quantity, with its unit, and the phase', () => {
    expect(rows[0]).toHaveLength(Object.keys(COLUMNS).length + 1);
    expect(rows[0].slice(0, 4)).toEqual([
      'time [s]',
      'engineSpeed [rpm]',
      'outsideTemperature [degC]',
      'chargeTemperature [degC]',
    ]);
    expect(rows[0].at(-1)).toBe('phase');
  });

  it('has a row an instant with decimal points: 302.5 K is 29.35 degC', () => {
    expect(rows.map(([time]) => time)).toEqual(['time [s]', '0', '1.5', '1.5', '3']);
    expect(rows[4][2]).toBe('29.35');
    expect(rows.map((row) => row.at(-1))).toEqual(['phase', 'warm-up', 'warm-up', 'pull', 'pull']);
  });
});

describe('the table for spreadsheets', () => {
  const text = csvOf(seriesOf('warm-up', 'pull; hot'), 'for spreadsheets');

  it('has a byte-order mark, semicolons and decimal commas', () => {
    expect(text.charCodeAt(0)).toBe(0xfeff);
    const rows = rowsOf(text.slice(1), ';');
    expect(rows[1].slice(0, 3)).toEqual(['0', '300', '26,85']);
    expect(text).not.toMatch(/\d\.\d/);
  });

  it('quotes a name that holds the separator', () => {
    expect(text).toMatch(/;"pull; hot"\r\n$/);
  });
});

describe('a text cell', () => {
  it.each([
    ['=1+1', "'=1+1"],
    ['+pull', "'+pull"],
    ['-pull', "'-pull"],
    ['@pull', "'@pull"],
    ['\t=1+1', "'\t=1+1"],
    ['pull = hard', 'pull = hard'],
    ['say "go", then', '"say ""go"", then"'],
    ['=cmd,"x"', '"\'=cmd,""x"""'],
    ['two\nlines', '"two\nlines"'],
  ])('%j becomes %j', (typed, cell) => expect(textCell(typed, ',')).toBe(cell));

  it('names of phases go through it', () => {
    expect(csvOf(seriesOf('=HYPERLINK(1)', 'pull'), 'plain')).toMatch(/,'=HYPERLINK\(1\)\r\n/);
  });
});

describe('a file name', () => {
  it.each([
    [['Rolling-road estate', 'bigger core'], 'rolling-road-estate-bigger-core.csv'],
    [['Köhler / ../x', '22 mm'], 'kohler-x-22-mm.csv'],
    [['??'], 'scenario.csv'],
  ])('%j', (words, name) => expect(fileName(words, 'csv')).toBe(name));
});
