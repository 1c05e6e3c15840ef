import { InvalidArgumentError } from 'commander';
import { type FileUnit, readQuantity } from '../sim/index.ts';

/**
 * A number as it is typed, "60" or with a unit of its own "140F", in `unit`.
 *
 * @param orElse - what else may be typed, for the message
 * @throws {InvalidArgumentError} for what is no number, and for one outside the range
 * @example
 * numberIn('140F', -50, 150, 'degC') // 60
 */
export function numberIn(text: string, low: number, high: number, unit: FileUnit, orElse = ''): number {
  const value = readIn(text, unit);
  if (value >= low && value <= high) return value;
  throw refused(text, `${low} to ${high} ${unit}${orElse}`);
}

/** A whole number between two others, both allowed. */
export function wholeIn(text: string, low: number, high: number): number {
  const value = readIn(text, '-');
  if (Number.isInteger(value) && value >= low && value <= high) return value;
  throw refused(text, `a whole number from ${low} to ${high}`);
}

/** NaN where there is none. */
function readIn(text: string, unit: FileUnit): number {
  const reading = readQuantity(text, unit);
  return reading.kind === 'value' ? reading.value : Number.NaN;
}

const refused = (text: string, expected: string): InvalidArgumentError =>
  new InvalidArgumentError(`got ${text.trim() || 'nothing'}; expected ${expected}.`);
