import { convert, type FileUnit, type JsonValue, readQuantity } from '../../sim/index.ts';
import { joined, onScreen, writtenUnit } from '../format.ts';
import { shownUnit, type UnitChoice } from '../state/display.ts';

/** A key's unit in the file and the unit in which its box shows it. */
export interface Measure {
  readonly fileUnit: FileUnit;
  /** symbol of the unit shown, as it may be typed */
  readonly symbol: string;
  /** the same as it is written on screen */
  readonly caption: string;
  readonly fromFile: (value: number) => number;
}

export function measureOf(fileUnit: FileUnit, units: UnitChoice): Measure {
  const symbol = shownUnit(fileUnit, units);
  const caption = captionOf(symbol);
  if (symbol === fileUnit) return { fileUnit, symbol, caption, fromFile: (value) => value };
  // Every unit is a straight line in every other.
  const zero = convert(0, symbol, fileUnit);
  const one = convert(1, symbol, fileUnit) - zero;
  return { fileUnit, symbol, caption, fromFile: (value) => (value - zero) / one };
}

/** A unit on screen: "of 1" for a share. */
function captionOf(symbol: string): string {
  return symbol === 'share' ? 'of 1' : writtenUnit(symbol);
}

/** A value of the file as its box shows it: to the last digit in the file's unit, four figures in another. */
export function boxText(value: number, measure: Measure): string {
  const figures = measure.symbol === measure.fileUnit ? 12 : 4;
  return String(Number(measure.fromFile(value).toPrecision(figures)));
}

/** A value with its unit: "390 W/K". */
export const valueText = (value: number, measure: Measure): string =>
  joined({ value: onScreen(boxText(value, measure)), unit: measure.caption });

/**
 * What a typed text becomes in the file.
 *
 * A bare number is in the unit shown: a number in the file where that is the file's unit, else a text with the unit.
 * Everything else goes into the file as typed, for the reader of scenarios to judge. Nothing is a key without value.
 *
 * @example
 * storedValue('95', measureOf('degC', IMPERIAL)) // "95 degF"
 */
export function storedValue(text: string, { fileUnit, symbol }: Measure): JsonValue | undefined {
  const typed = text.trim();
  if (typed === '') return undefined;
  const reading = readQuantity(typed, fileUnit);
  if (reading.kind !== 'value' || reading.unit !== undefined) return typed;
  return symbol === fileUnit ? reading.value : `${reading.value} ${symbol}`;
}
