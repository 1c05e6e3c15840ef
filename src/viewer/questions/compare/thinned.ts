/** A point of a trace: a time and a value. */
export type Point = readonly [number, number];

/**
 * A trace in at most some `2 most` points: of each stretch of samples the lowest and the highest stay, in order, so
 * that no peak is lost. Samples without a value are left out.
 */
export function thinned(time: readonly number[], values: readonly number[], most: number): Point[] {
  const there = time.flatMap((at, k): Point[] => (Number.isNaN(values[k]) ? [] : [[at, values[k]]]));
  if (there.length <= 2 * most) return there;
  const stretch = Math.ceil(there.length / most);
  const kept: Point[] = [];
  for (let first = 0; first < there.length; first += stretch) {
    const some = there.slice(first, first + stretch);
    const low = some.reduce((lowest, point) => (point[1] < lowest[1] ? point : lowest));
    const high = some.reduce((highest, point) => (point[1] > highest[1] ? point : highest));
    kept.push(...(low === high ? [low] : low[0] < high[0] ? [low, high] : [high, low]));
  }
  return kept;
}
