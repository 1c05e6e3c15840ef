import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { bestOrder, cheapestWays, type SetWorth, upgradesOf } from '../../../src/sim/answers/upgrade-order.ts';

/** A set as one bit an upgrade. */
const maskOf = (upgrades: readonly number[]): number => upgrades.reduce((mask, each) => mask + 2 ** each, 0);

/** Every order of some upgrades. */
function ordersOf(upgrades: readonly number[]): number[][] {
  if (upgrades.length === 0) return [[]];
  return upgrades.flatMap((first) =>
    ordersOf(upgrades.filter((other) => other !== first)).map((rest) => [first, ...rest]),
  );
}

/** The rule, said by going through all orders in the order of the file. */
function byTrying(count: number, worthOf: (mask: number) => SetWorth | undefined): number[] | undefined {
  let best: { order: number[]; pulls: number; peak: number; money: number } | undefined;
  for (const order of ordersOf([...Array(count).keys()])) {
    const sets = order.map((_, k) => worthOf(maskOf(order.slice(0, k + 1))));
    if (sets.includes(undefined)) continue;
    const sum = (value: (worth: SetWorth) => number) =>
      sets.reduce((total, worth) => total + (worth ? value(worth) : 0), 0);
    const found = {
      order,
      pulls: sum(({ pulls }) => pulls),
      peak: sum(({ peak }) => Math.round(100 * peak)),
      money: sum(({ money }) => money),
    };
    const isBetter =
      best === undefined ||
      found.pulls > best.pulls ||
      (found.pulls === best.pulls &&
        (found.peak < best.peak || (found.peak === best.peak && found.money < best.money)));
    if (isBetter) best = found;
  }
  return best?.order;
}

const peak = fc.constantFrom(320, 320.004, 321, 321.5, 322.25, 1e4);
const aTable = fc.integer({ min: 1, max: 4 }).chain((count) =>
  fc.record({
    count: fc.constant(count),
    prices: fc.array(fc.integer({ min: 0, max: 3 }), { minLength: count, maxLength: count }),
    sets: fc.array(fc.option(fc.record({ pulls: fc.integer({ min: 0, max: 2 }), peak }), { nil: undefined, freq: 8 }), {
      minLength: 1 << count,
      maxLength: 1 << count,
    }),
  }),
);

describe('the best order of upgrades', () => {
  it('is the one that trying all orders finds', () => {
    const seen = { found: 0, none: 0, byMoney: 0 };
    fc.assert(
      fc.property(aTable, ({ count, prices, sets }) => {
        const worth = (withMoney: boolean) => (mask: number) => {
          const set = sets[mask];
          const money = withMoney ? upgradesOf(mask).reduce((sum, upgrade) => sum + prices[upgrade], 0) : 0;
          return set && { ...set, money };
        };
        const expected = byTrying(count, worth(true));
        expect(bestOrder(count, worth(true))).toEqual(expected);
        seen[expected === undefined ? 'none' : 'found']++;
        if (String(byTrying(count, worth(false))) !== String(expected)) seen.byMoney++;
      }),
      { numRuns: 1000 },
    );
    // The census shows that every rule was put to use.
    expect(Math.min(seen.found, seen.none, seen.byMoney)).toBeGreaterThan(20);
  });

  it('goes for pulls before peaks, for peaks before money', () => {
    const worth = (table: Record<number, SetWorth>) => (mask: number) => table[mask];
    const both = { pulls: 3, peak: 310, money: 30 };
    expect(
      bestOrder(2, worth({ 1: { pulls: 1, peak: 320, money: 10 }, 2: { pulls: 2, peak: 330, money: 20 }, 3: both })),
    ).toEqual([1, 0]);
    expect(
      bestOrder(2, worth({ 1: { pulls: 2, peak: 320, money: 10 }, 2: { pulls: 2, peak: 319, money: 20 }, 3: both })),
    ).toEqual([1, 0]);
    expect(
      bestOrder(2, worth({ 1: { pulls: 2, peak: 320, money: 20 }, 2: { pulls: 2, peak: 320, money: 10 }, 3: both })),
    ).toEqual([1, 0]);
    expect(
      bestOrder(2, worth({ 1: { pulls: 2, peak: 320, money: 10 }, 2: { pulls: 2, peak: 320, money: 10 }, 3: both })),
    ).toEqual([0, 1]);
  });
});

describe('the cheapest ways', () => {
  // Worked by hand: a 100 / 2 h, b 150 / 1 h, c 50 / no hours.
  const WAYS = [
    { pulls: 1, money: 0, hours: 0, upgrades: [] },
    { pulls: 3, money: 100, hours: 2, upgrades: [0] },
    { pulls: 3, money: 150, hours: 1, upgrades: [1] },
    { pulls: 1, money: 50, upgrades: [2] },
    { pulls: 3, money: 250, hours: 3, upgrades: [0, 1] },
    { pulls: 4, money: 150, upgrades: [0, 2] },
    { pulls: 4, money: 200, upgrades: [1, 2] },
    { pulls: 6, money: 300, upgrades: [0, 1, 2] },
  ];

  it('are those with more pulls than all that cost less', () => {
    expect(cheapestWays(WAYS).map(({ pulls, money }) => [pulls, money])).toEqual([
      [1, 0],
      [3, 100],
      [4, 150],
      [6, 300],
    ]);
  });

  it('of one price: the one with most pulls, however long it takes', () => {
    const [few, many] = [
      { pulls: 2, money: 10, hours: 1, upgrades: [0] },
      { pulls: 3, money: 10, hours: 9, upgrades: [1] },
    ];
    expect(cheapestWays([few, many])).toEqual([many]);
  });

  it('of one price and count: fewer hours, unknown hours last, then fewer parts', () => {
    const at = (hours: number | undefined, ...upgrades: number[]) => ({
      pulls: 2,
      money: 10,
      upgrades,
      ...(hours !== undefined && { hours }),
    });
    expect(cheapestWays([at(undefined, 0), at(3, 1), at(2, 2, 3), at(2, 4)])).toEqual([at(2, 4)]);
    expect(cheapestWays([at(undefined, 0), at(3, 1, 2, 3)])).toEqual([at(3, 1, 2, 3)]);
  });
});
