/**
 * A formula was asked for a value outside the range it has an answer for. Rules refuse what they foresee; what is left
 * of a core's measures becomes an issue in scenario/geometry-values.ts, else it is a programmer's mistake.
 */
export class OutOfRangeError extends RangeError {
  constructor(what: string, value: number, expected: string) {
    super(`${what} is ${value}; expected ${expected}`);
    this.name = 'OutOfRangeError';
  }
}

/** @throws {OutOfRangeError} unless `low <= value <= high` */
export function requireWithin(what: string, value: number, low: number, high: number): void {
  if (!(value >= low && value <= high)) throw new OutOfRangeError(what, value, `${low} to ${high}`);
}

/** @throws {OutOfRangeError} unless `value > 0` */
export function requirePositive(what: string, value: number): void {
  if (!(value > 0)) throw new OutOfRangeError(what, value, 'above 0');
}
