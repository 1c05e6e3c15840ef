import { OutOfRangeError, requirePositive, requireWithin } from '../errors.ts';

/** Layers that run as one: how many, and the flow of each over the mean flow of all layers. */
export interface LayerGroup {
  readonly layers: number;
  readonly relativeFlow: number;
}

/**
 * Layers gathered into a few groups of neighbours, as even in number as they go.
 *
 * @param shares - share of the flow of every layer, in their order across the stack [-]
 * @param groups - how many groups, 1 to the number of layers [-]
 * @returns the groups; layers x relativeFlow over all of them is the number of layers
 * @throws {OutOfRangeError} when groups is not a whole number from 1 to the number of layers
 */
export function layerGroups(shares: readonly number[], groups: number): readonly LayerGroup[] {
  const n = shares.length;
  if (!Number.isInteger(groups)) throw new OutOfRangeError('groups of layers', groups, 'a whole number');
  requireWithin('groups of layers', groups, 1, n);
  return Array.from({ length: groups }, (_, g) => {
    const members = shares.slice(Math.round((g * n) / groups), Math.round(((g + 1) * n) / groups));
    const flow = members.reduce((sum, share) => sum + share, 0);
    return { layers: members.length, relativeFlow: (flow * n) / members.length };
  });
}

/**
 * Air speed over the length of a core as weights of its cells: straight lines through the points, the mean over every
 * cell exact, scaled to a mean of 1. Past the first and last point the speed stays that of the point.
 *
 * @param points - place from 0 to 1 along the length, in order, and speed in any unit [-]
 * @param cells - number of equal cells along the length [-]
 * @returns weight of every cell, mean 1
 * @throws {OutOfRangeError} when places are not within 0 to 1 and in order, a speed is below 0, or all are 0
 */
export function velocityWeights(points: readonly (readonly [place: number, speed: number])[], cells: number): number[] {
  if (points.length === 0) throw new OutOfRangeError('number of points of a velocity profile', 0, '1 or more');
  points.forEach(([place, speed], k) => {
    requireWithin('place along the core', place, k === 0 ? 0 : points[k - 1][0], 1);
    requireWithin('air speed', speed, 0, Number.MAX_VALUE);
  });
  const ends = Array.from({ length: cells + 1 }, (_, k) => passedUpTo(points, k / cells));
  requirePositive('mean air speed', ends[cells]);
  return ends.slice(1).map((end, k) => ((end - ends[k]) * cells) / ends[cells]);
}

/** Integral of the profile from 0 to x. */
function passedUpTo(points: readonly (readonly [number, number])[], x: number): number {
  const first: readonly [number, number] = [0, points[0][1]];
  const last: readonly [number, number] = [1, points[points.length - 1][1]];
  let sum = 0;
  let [from, speed] = first;
  for (const [to, next] of [...points, last]) {
    const width = to - from;
    if (width > 0) {
      const part = Math.min(Math.max(x - from, 0), width);
      const there = speed + ((next - speed) * part) / width;
      sum += (part * (speed + there)) / 2;
    }
    from = to;
    speed = next;
  }
  return sum;
}
