import { convert, figure, figureWithUnit, readQuantity, unitSymbols } from '../units.ts';
import {
  alternatives,
  capitalised,
  type Fix,
  type Issue,
  isList,
  type JsonValue,
  quoted,
  type Report,
} from './issue.ts';
import { nearestWord } from './nearest.ts';
import { isNumberRow, isWordRow, type NumberRow, type Parameter, type WordRow } from './table.ts';
import { TRAPS } from './traps.ts';

/** "0.5 to 30 kPa": what a row takes, as messages and guides say it. */
export function rangeOf({ min, max, unit }: NumberRow): string {
  return `${figure(min)} to ${figureWithUnit(max, unit)}`;
}

/** What a row takes, as messages say it. */
function expectationOf(row: Parameter): string {
  if (isWordRow(row)) return alternatives(row.choices.map((choice) => quoted(choice)));
  if (!isNumberRow(row)) return 'a text';
  return row.whole ? `a whole number from ${rangeOf(row)}` : rangeOf(row);
}

/** What a faulty or missing value leaves behind: nothing that a comparison could take for a fault of its own. */
export function blankOf(row: Parameter): unknown {
  if (!isNumberRow(row)) return '';
  return row.ramp ? [Number.NaN, Number.NaN] : Number.NaN;
}

/** Reports a key that must be there and is not. */
export function reportMissing(row: Parameter, path: string, report: Report): void {
  const expected = expectationOf(row);
  const why = row.whenMissing ?? `Expected ${expected}: ${row.meaning}.`;
  report({
    severity: 'error',
    path,
    message: `${capitalised(row.label)} is missing. ${why}`,
    found: quoted(undefined),
    expected,
  });
}

/**
 * The value of one key: a number in the file unit, a word or a text.
 *
 * Everything wrong or doubtful about it is reported; what is wrong reads as `blankOf(row)`.
 */
export function readValue(row: Parameter, typed: JsonValue, path: string, report: Report): unknown {
  if (isWordRow(row)) return readWord(row, typed, path, report);
  if (!isNumberRow(row)) {
    if (typeof typed === 'string') return typed;
    report(wrongKind(row, typed, path));
    return blankOf(row);
  }
  if (!row.ramp) return readNumber(row, typed, path, report);
  if (!isList(typed)) {
    const value = readNumber(row, typed, path, report);
    return [value, value];
  }
  if (typed.length === 2) return typed.map((end, index) => readNumber(row, end, `${path}.${index}`, report));
  report(wrongKind(row, typed, path));
  return blankOf(row);
}

function wrongKind(row: Parameter, typed: JsonValue, path: string): Issue {
  const pair = 'ramp' in row ? ', or a pair [at the start, at the end]' : '';
  const expected = `${expectationOf(row)}${pair}`;
  return {
    severity: 'error',
    path,
    message: `${capitalised(row.label)} is ${quoted(typed)}; expected ${expected}.`,
    found: quoted(typed),
    expected,
  };
}

function readWord(row: WordRow, typed: JsonValue, path: string, report: Report): string {
  if (typeof typed === 'string' && row.choices.includes(typed)) return typed;
  const meant = typeof typed === 'string' ? nearestWord(typed, row.choices) : undefined;
  const issue = wrongKind(row, typed, path);
  if (meant !== undefined) {
    const message = `${issue.message} Did you mean ${quoted(meant)}?`;
    report({ ...issue, message, fix: { path, value: meant, label: `Use ${quoted(meant)}` } });
  } else if (row.othersNotModelled && typeof typed === 'string') {
    const message = `${capitalised(row.label)} ${quoted(typed)} is not modelled yet; this version computes ${issue.expected}.`;
    report({ ...issue, message });
  } else {
    report(issue);
  }
  return '';
}

function readNumber(row: NumberRow, typed: JsonValue, path: string, report: Report): number {
  if (typeof typed === 'number') {
    const { misread } = row;
    if (misread === undefined || typed <= misread.above) return checked(row, typed, typed, path, report);
    const value = convert(typed, misread.unit, row.unit);
    if (value >= row.min && value <= row.max) report(readInOtherUnit(row, typed, misread.unit, value, path));
    return checked(row, value, typed, path, report);
  }
  if (typeof typed !== 'string') {
    report(wrongKind(row, typed, path));
    return Number.NaN;
  }
  const reading = readQuantity(typed, row.unit);
  if (reading.kind === 'value') return checked(row, reading.value, typed, path, report);
  report(unreadable(row, typed, path));
  return Number.NaN;
}

function readInOtherUnit(row: NumberRow, typed: number, unit: string, value: number, path: string): Issue {
  const meant = figureWithUnit(value, row.unit);
  const read = unit === '%' ? `${figure(typed)} %` : figureWithUnit(typed, unit);
  return {
    severity: 'warning',
    path,
    message: `${capitalised(row.label)} ${figure(typed)} read as ${read}: using ${meant}.`,
    found: quoted(typed),
    expected: rangeOf(row),
    fix: { path, value: Number(value.toPrecision(12)), label: `Write ${meant}` },
  };
}

/** The value, once its range has been looked at. `typed` is what stands in the file. */
function checked(row: NumberRow, value: number, typed: JsonValue, path: string, report: Report): number {
  const { min, max, usual = [min, max], unit, typical } = row;
  const isAllowed = value >= min && value <= max && (!row.whole || Number.isInteger(value));
  if (isAllowed && value >= usual[0] && value <= usual[1]) return value;

  const found = typeof typed === 'string' ? quoted(typed) : figureWithUnit(value, unit);
  const said = `${capitalised(row.label)} is ${typeof typed === 'string' ? typed : found}`;
  const proposal = typeof typed === 'number' ? proposalFor(row, typed, !isAllowed, path) : undefined;
  const hints = [
    !isAllowed && value === 0 && row.whenMissing,
    typical && `${capitalised(typical)}.`,
    proposal?.sentence,
  ].filter(Boolean);
  const expected = isAllowed ? `usually ${figure(usual[0])} to ${figureWithUnit(usual[1], unit)}` : expectationOf(row);
  const percent = unit === 'share' ? ` (${figure(100 * value)} %)` : '';
  const verdict = isAllowed
    ? `${percent}: unusually ${value > usual[1] ? 'high' : 'low'}, ${expected}.`
    : `; expected ${expected}.`;
  report({
    severity: isAllowed ? 'warning' : 'error',
    path,
    message: [`${said}${verdict}`, ...hints].join(' '),
    found,
    expected,
    ...(proposal?.fix && { fix: proposal.fix }),
  });
  return isAllowed ? value : Number.NaN;
}

interface Proposal {
  readonly sentence?: string;
  readonly fix?: Fix;
}

/** What a bare number out of range was probably meant to be, or else, where it cannot stand, the default. */
function proposalFor(row: NumberRow, typed: number, isRefused: boolean, path: string): Proposal | undefined {
  if (row.trap !== undefined && row.trap !== 'fitting size') return massProposal(row, row.trap, typed, path);
  const [low, high] = row.usual ?? [row.min, row.max];
  for (const symbol of unitSymbols(row.unit)) {
    const value = convert(typed, symbol, row.unit);
    if (value < low || value > high || symbol === row.unit) continue;
    const text = `${figure(typed)} ${symbol}`;
    const both = `${text} (${figureWithUnit(value, row.unit)})`;
    return { sentence: `Did you mean ${both}?`, fix: { path, value: text, label: `Use ${both}` } };
  }
  if (!isRefused || typeof row.default !== 'number') return undefined;
  const label = `Use the default, ${figureWithUnit(row.default, row.unit)}`;
  return { fix: { path, value: row.default, label } };
}

/** A share out of range may be one by mass; where even that is too much, the difference is shown at 50 %. */
function massProposal(
  row: NumberRow,
  trap: 'ethylene by mass' | 'propylene by mass',
  typed: number,
  path: string,
): Proposal {
  const [own, example] = [typed, 50].map((share) => TRAPS[trap](`${share} % by mass`));
  if (own === undefined || own.value > row.max) return example ? { sentence: example.message } : {};
  return { sentence: own.message, fix: { path, value: own.value, label: own.label } };
}

/** Why a text is no number: a mistake of the trade, an unknown unit, two readings, or no number at all. */
function unreadable(row: NumberRow, typed: string, path: string): Issue {
  const issue = wrongKind(row, typed, path);
  const say = (message: string, value?: JsonValue, label?: string): Issue => ({
    ...issue,
    message: `${capitalised(row.label)} is ${quoted(typed)}. ${message}`,
    ...(value !== undefined && label !== undefined && { fix: { path, value, label } }),
  });

  const trap = row.trap && TRAPS[row.trap](typed);
  if (trap !== undefined) {
    return trap.value <= row.max ? say(trap.message, trap.value, trap.label) : say(trap.message);
  }

  const reading = readQuantity(typed, row.unit);
  if (reading.kind === 'ambiguous') {
    const { decimal, thousands } = reading;
    return say(`It can be read as ${decimal} or as ${thousands}. Write it without a thousands separator.`);
  }
  if (reading.kind === 'unknown unit') {
    const known = unitSymbols(row.unit);
    const shown = known[0] === '-' ? 'no unit' : alternatives(known);
    return say(`${quoted(reading.unit)} is not a unit for it; expected ${shown}.`);
  }
  return say(`That is not a number; expected ${issue.expected}.`);
}
