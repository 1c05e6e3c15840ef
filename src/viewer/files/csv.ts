import { seriesToCsv, type TimeSeries } from '../../sim/index.ts';

export const CSV_FLAVOURS = ['plain', 'for spreadsheets'] as const;
export type CsvFlavour = (typeof CSV_FLAVOURS)[number];

/** Tells a spreadsheet that the text is UTF-8. */
const BYTE_ORDER_MARK = '\ufeff';

/**
 * A run as a table: recorded quantities with their units, and the phase that each row belongs to.
 *
 * 'plain' has commas and decimal points (RFC 4180). 'for spreadsheets' is for those set to a decimal comma:
 * semicolons, decimal commas and a byte-order mark.
 */
export function csvOf(series: TimeSeries, flavour: CsvFlavour): string {
  const isPlain = flavour === 'plain';
  const separator = isPlain ? ',' : ';';
  const number = (text: string): string => (isPlain ? text : text.replace('.', ','));
  // Numbers and names of quantities hold no commas, so that the lines can be cut at them.
  const [head, ...rows] = seriesToCsv(series)
    .trimEnd()
    .split('\r\n')
    .map((line) => line.split(','));
  const names = phaseNames(series);
  const lines = [
    [...head, 'phase'].map((cell) => textCell(cell, separator)),
    ...rows.map((cells, row) => [...cells.map(number), textCell(names[row] ?? '', separator)]),
  ];
  const text = lines.map((cells) => `${cells.join(separator)}\r\n`).join('');
  return isPlain ? text : BYTE_ORDER_MARK + text;
}

function phaseNames({ phases, rowCount }: TimeSeries): string[] {
  const names = new Array<string>(rowCount).fill('');
  for (const { name, firstRow, lastRow } of phases) names.fill(name, firstRow, lastRow + 1);
  return names;
}

/**
 * Text as a cell: quoted where it must be, and kept from being read as a formula.
 *
 * A spreadsheet runs a text that begins with = + - or @; an apostrophe before it makes it plain text.
 */
export function textCell(text: string, separator: string): string {
  const harmless = /^\s*[=+\-@]/.test(text) ? `'${text}` : text;
  return harmless.includes(separator) || /["\r\n]/.test(harmless) ? `"${harmless.replaceAll('"', '""')}"` : harmless;
}
