import { decimals } from '../sim/index.ts';

/**
 * A difference as text, its sign before it; what rounds to nothing has none.
 *
 * @example
 * signed(0.25, 1) // '+0.3'
 * signed(-0.04, 1) // '0.0'
 */
export function signed(value: number, digits: number): string {
  const text = decimals(value, digits);
  return Number(text) > 0 ? `+${text}` : text;
}
