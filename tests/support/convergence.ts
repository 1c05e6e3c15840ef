/** Orders seen between successive errors when the cells or steps halve. */
export function observedOrders(errors: readonly number[]): number[] {
  return errors.slice(1).map((error, k) => Math.log2(Math.abs(errors[k] / error)));
}

export function rootMeanSquare(values: readonly number[]): number {
  return Math.sqrt(values.reduce((sum, value) => sum + value * value, 0) / values.length);
}

export function largest(values: readonly number[]): number {
  return values.reduce((most, value) => Math.max(most, Math.abs(value)), 0);
}
