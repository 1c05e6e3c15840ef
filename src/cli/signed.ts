/**
 * A difference as text, its sign before it; what rounds to nothing has none.
 *
 * @example
 * signed(0.25, 1) // '+0.3'
 * signed(-0.04, 1) // '0.0'
 */
export function signed(value: number, digits: number): string {
  const text = value.toFixed(digits);
  if (Number(text) === 0) return (0).toFixed(digits);
  return value > 0 ? `+${text}` : text;
}
