/** What being at one set of upgrades is worth to an order that passes through it. */
export interface SetWorth {
  readonly pulls: number;
  /** deciding peak [K]; finite, or sums could not be told apart */
  readonly peak: number;
  /** paid by then; 0 everywhere where not all prices are known */
  readonly money: number;
}

/** The upgrades of a set, in the order of the file; a set has one bit an upgrade. */
export function upgradesOf(mask: number): number[] {
  const upgrades: number[] = [];
  for (let upgrade = 0; 1 << upgrade <= mask; upgrade++) if (mask & (1 << upgrade)) upgrades.push(upgrade);
  return upgrades;
}

/**
 * The best order of `count` upgrades: most pulls summed over its steps, then the lowest deciding peaks summed, then the
 * least money early (the sum of what is paid by each step), then the file's own order.
 *
 * Each of the three is a sum over the sets that an order passes through, and what a set is worth does not hang on the
 * way to it. The best order to a set is therefore the best order to that set less its last upgrade, with that upgrade
 * behind it: one pass over the 2^n sets finds what going through all n! orders finds. Peaks are summed in whole
 * hundredths of a kelvin, so that the rounding of a sum decides nothing.
 *
 * @param worthOf - by mask; undefined where the set cannot be fitted: no order passes through it
 * @returns undefined where no order gets by
 */
export function bestOrder(count: number, worthOf: (mask: number) => SetWorth | undefined): number[] | undefined {
  interface Reached {
    readonly order: readonly number[];
    readonly sums: readonly number[];
  }
  const reached: (Reached | undefined)[] = [{ order: [], sums: [0, 0, 0] }];
  for (let mask = 1; mask < 1 << count; mask++) {
    const worth = worthOf(mask);
    const befores = upgradesOf(mask).flatMap((last) => {
      const before = reached[mask ^ (1 << last)];
      return before === undefined ? [] : [{ order: [...before.order, last], sums: before.sums }];
    });
    if (worth === undefined || befores.length === 0) {
      reached.push(undefined);
      continue;
    }
    const { order, sums } = befores.reduce((best, next) => (compare(next, best) < 0 ? next : best));
    const own = [-worth.pulls, Math.round(100 * worth.peak), worth.money];
    reached.push({ order, sums: sums.map((sum, k) => sum + own[k]) });
  }
  return reached[(1 << count) - 1]?.order.slice();

  function compare(a: Reached, b: Reached): number {
    const k = a.sums.findIndex((sum, criterion) => sum !== b.sums[criterion]);
    if (k >= 0) return a.sums[k] < b.sums[k] ? -1 : 1;
    const first = a.order.findIndex((upgrade, step) => upgrade !== b.order[step]);
    return a.order[first] - b.order[first];
  }
}

/** One way to a number of pulls. */
export interface UpgradeWay {
  readonly pulls: number;
  readonly money: number;
  /** absent where not all hours are known */
  readonly hours?: number;
  /** places in the list */
  readonly upgrades: readonly number[];
}

/**
 * The ways that are worth their money: from cheap to dear, each with more pulls than all cheaper ones. The cheapest way
 * to N pulls is the first with N or more. Of two ways of one price and count the one with fewer hours stands, one with
 * hours unknown last; then the one with fewer parts.
 */
export function cheapestWays(ways: readonly UpgradeWay[]): UpgradeWay[] {
  const sorted = ways.toSorted(
    (a, b) =>
      a.money - b.money ||
      b.pulls - a.pulls ||
      Number(a.hours === undefined) - Number(b.hours === undefined) ||
      (a.hours ?? 0) - (b.hours ?? 0) ||
      a.upgrades.length - b.upgrades.length,
  );
  let most = Number.NEGATIVE_INFINITY;
  return sorted.filter(({ pulls }) => {
    const isMore = pulls > most;
    most = Math.max(most, pulls);
    return isMore;
  });
}
