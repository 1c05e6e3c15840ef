import type { UpgradeWay } from '../../../sim/index.ts';

/** Corners of the stair of pulls over money: level until the next way is paid, then up; on to `end`. */
export function waySteps(ways: readonly UpgradeWay[], end: number): (readonly [money: number, pulls: number])[] {
  return ways.flatMap(({ money, pulls }, k) => [
    [money, pulls] as const,
    [k + 1 < ways.length ? ways[k + 1].money : end, pulls] as const,
  ]);
}
