import type { Study } from './study.ts';

/**
 * The smallest size that does, by halving between two of which the larger one does.
 *
 * @param isEnough - whether a size does; taken to hold for every larger one between the two
 * @param foundTo - how near it is found, in the unit of the sizes
 * @returns a size that does; `high` where the two are one
 */
export function* smallestEnough(
  low: number,
  high: number,
  foundTo: number,
  isEnough: (size: number) => Study<boolean>,
): Study<number> {
  let [below, above] = [low, high];
  while (above - below > foundTo) {
    const middle = 0.5 * (below + above);
    if (yield* isEnough(middle)) above = middle;
    else below = middle;
  }
  return above;
}
