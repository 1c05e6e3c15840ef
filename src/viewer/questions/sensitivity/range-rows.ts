import {
  type FileUnit,
  issuesOfRanges,
  type Scenario,
  type UncertainInput,
  uncertainInputs,
} from '../../../sim/index.ts';
import { capitalised, onScreen, writtenUnit } from '../../format.ts';
import type { UnitChoice } from '../../state/display.ts';
import type { FileNumber } from '../file-numbers.ts';
import { expected, isNumber, keyOfFile, type Range } from '../typed.ts';
import { type OwnRanges, SIDES, type Side, type TypedEnds } from './own-ranges.ts';
import { captionOf } from './range-words.ts';

/** An input of the list. */
export interface RangeRow {
  readonly key: string;
  /** as it is varied; for an end that cannot be read stands the one before anything was typed */
  readonly input: UncertainInput;
  readonly fileUnit: FileUnit;
  /** least and greatest that a box takes */
  readonly bounds: Range;
  readonly ends: TypedEnds;
  readonly isVaried: boolean;
  /** the number of the file that was added; absent: one of the trade's inputs */
  readonly number?: FileNumber;
}

const EXPONENT = keyOfFile('engine.temperatureExponent');

/** How ends of the trade's inputs are typed: limits of factor and shift are own judgement; the one value is an exponent. */
const TRADE_ENDS: Readonly<Record<UncertainInput['kind'], Pick<RangeRow, 'fileUnit' | 'bounds'>>> = {
  factor: { fileUnit: 'share', bounds: [0.1, 10] },
  shift: { fileUnit: 'K', bounds: [-50, 50] },
  value: { fileUnit: EXPONENT.unit, bounds: EXPONENT.range },
};

/** Either side of an added number: a share of it, or of what is usual where it is 0. */
const SHARE = 0.1;
/** A share of a temperature says nothing, since its 0 is anywhere: as far as the trade takes that of the outside air. */
const KELVINS = 3;

/**
 * The list for a car: the trade's inputs that it has, then the added numbers that it has.
 *
 * @param numbers - all of the car
 */
export function rangeRows(scenario: Scenario, numbers: readonly FileNumber[], own: OwnRanges): RangeRow[] {
  const added = own.added.flatMap(({ path }) => numbers.find((number) => number.path === path) ?? []);
  const ranges = added.map((number) => ({ path: number.path, ...firstEnds(number) }));
  return uncertainInputs(scenario, ranges).map((input) => {
    const number = added.find(({ path }) => path === input.path);
    const key = input.path ?? input.name;
    const ends = own.ends[key] ?? {};
    return {
      key,
      input: withTyped(number === undefined ? input : named(input, number), ends),
      ...(number === undefined
        ? TRADE_ENDS[input.kind]
        : { number, fileUnit: number.row.unit, bounds: [number.row.min, number.row.max] }),
      ends,
      isVaried: !own.leftOut.includes(key),
    };
  });
}

function firstEnds({ value, row: { unit, min, max, usual = [min, max] } }: FileNumber): Record<Side, number> {
  const off = unit === 'degC' ? KELVINS : SHARE * (value === 0 ? usual[1] - usual[0] : Math.abs(value));
  const end = (side: number): number => Number(Math.min(max, Math.max(min, value + side * off)).toPrecision(4));
  return { low: end(-1), high: end(1) };
}

function named(input: UncertainInput, { name, row: { unit } }: FileNumber): UncertainInput {
  return { ...input, name, source: 'typed', ...(writtenUnit(unit) !== '' && { unit }) };
}

function withTyped(input: UncertainInput, ends: TypedEnds): UncertainInput {
  const end = (side: Side): number => {
    const value = ends[side]?.value;
    return value !== undefined && isNumber(value) ? value : input[side];
  };
  return SIDES.some((side) => ends[side]) ? { ...input, source: 'typed', low: end('low'), high: end('high') } : input;
}

export const variedInputs = (rows: readonly RangeRow[]): UncertainInput[] =>
  rows.filter(({ isVaried }) => isVaried).map(({ input }) => input);

/** Names of what was added or typed for inputs that a car does not have. */
export function lostRanges(scenario: Scenario, numbers: readonly FileNumber[], own: OwnRanges): string[] {
  const { ends, added, leftOut } = own;
  const known = [...numbers.map(({ path }) => path), ...uncertainInputs(scenario, []).map(({ name }) => name)];
  const isLost = (key: string): boolean => !leftOut.includes(key) && !known.includes(key);
  const ofTrade = Object.keys(ends).filter((key) => added.every(({ path }) => path !== key));
  return [...ofTrade.filter(isLost), ...added.filter(({ path }) => isLost(path)).map(({ name }) => name)];
}

/** Why a list cannot be worked with, and where; both ends where it does not lie at one. */
export interface RangeFault {
  readonly message: string;
  readonly key?: string;
  readonly side?: Side;
}

/** Ranked is one input against another. */
const FEWEST_INPUTS = 2;

/** The first thing that is wrong with what is ticked. */
export function faultOf(rows: readonly RangeRow[], scenario: Scenario, units: UnitChoice): RangeFault | undefined {
  const varied = rows.filter(({ isVaried }) => isVaried);
  if (varied.length < FEWEST_INPUTS) return { message: 'Tick at least two inputs: one is ranked against another.' };
  for (const row of varied) {
    const fault = faultOfRow(row, scenario, units);
    if (fault !== undefined) return { key: row.key, ...fault };
  }
  return undefined;
}

function faultOfRow({ input, ends, ...row }: RangeRow, scenario: Scenario, units: UnitChoice): RangeFault | undefined {
  const { low, high } = input;
  const name = capitalised(input.name);
  const unread = SIDES.find((side) => ends[side] && !isNumber(ends[side].value));
  if (unread !== undefined) {
    const { fileUnit, bounds } = row;
    const caption = captionOf({ input, fileUnit }, units);
    return { side: unread, message: expected(`${name}, ${unread}`, fileUnit, units, bounds, caption) };
  }
  if (low >= high) return { message: `${name}: expected a low end below the high end.` };
  const [issue] = issuesOfRanges(scenario, [input]);
  // The library makes a variant of the range, which nobody on the page has seen.
  return (
    issue && { message: `Range of ${input.name}: ${onScreen(issue.message.replace(/^In variant "[^"]*": /, ''))}` }
  );
}
