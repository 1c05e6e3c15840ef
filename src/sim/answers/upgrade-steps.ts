import type { TimeSeries } from '../results/time-series.ts';
import type { Config } from '../scenario/config.ts';
import type { Sentence } from '../sentence.ts';
import { type PullSummary, summarisePulls } from './pull-summary.ts';
import { countPulls, decidingPull } from './pulls-to-limit.ts';
import type { RunJob, Study } from './study.ts';
import { bestOrder, cheapestWays, type UpgradeWay, upgradesOf } from './upgrade-order.ts';

/** One step of a build, as the file lists it. */
export interface Upgrade {
  readonly name: string;
  /** the shop's own money */
  readonly price?: number | undefined;
  readonly hours?: number | undefined;
}

const FIGURES = ['coolantFlow', 'coreAirDrop', 'drivePower', 'airFlow'] as const;
/** At the end of the first pull: m3/s, Pa, W, kg/s. */
type UpgradeFigures = Readonly<Record<(typeof FIGURES)[number], number>>;

/** A car with some upgrades, run through its own cycle. SI. */
interface UpgradedCar {
  /** whole pulls from the first that stay at or under the limit */
  readonly count: number;
  readonly pullsRun: number;
  /**
   * the pull that breaks the limit, else the earliest of the hottest, and its peak [K]; absent where no pull is whole
   */
  readonly deciding?: Pick<PullSummary, 'pull' | 'peak'>;
  readonly firstPull?: UpgradeFigures;
  /** why the run ended early: only the pulls until then are counted */
  readonly stoppedBecause?: Sentence;
}

/** better and worse by the count, at the same count by the deciding peak; no effect: same count, peak within 0.1 K. */
type UpgradeEffect = 'better' | 'worse' | 'no effect';

/** One car less another. */
interface UpgradeChange {
  /** absent where the counts are the same and one of the two has no whole pull */
  readonly effect?: UpgradeEffect;
  readonly count: number;
  /** K; absent where one of the two has no whole pull */
  readonly peak?: number;
  readonly firstPull?: UpgradeFigures;
}

export interface UpgradeStep {
  /** place in the list */
  readonly upgrade: number;
  /** absent where the car cannot be: the file refuses it */
  readonly car?: UpgradedCar;
  /** against the car without this one upgrade; absent where one of the two cannot be */
  readonly change?: UpgradeChange;
  /** against the car as it is */
  readonly total?: UpgradeChange;
}

export interface UpgradeStudy {
  /** K */
  readonly limit: number;
  readonly base: UpgradedCar;
  /** places in the list of those that the car has already: they are in nothing that follows */
  readonly fitted: readonly number[];
  /** each upgrade on the car as it is */
  readonly alone: readonly UpgradeStep[];
  /** one on top of the other, as the file lists them */
  readonly inOrder: readonly UpgradeStep[];
  /** where it was asked for and no more than eight are left to weigh */
  readonly best?: UpgradeOrders;
}

interface UpgradeOrders {
  /** absent where every order passes through a car that cannot be */
  readonly order?: readonly UpgradeStep[];
  /** absent where no upgrade has a price; upgrades without one, and cars whose run stopped, are in none */
  readonly ways?: readonly UpgradeWay[];
}

/** Above it 2^n runs are too many. */
export const MOST_UPGRADES_ORDERED = 8;
/**
 * A deciding peak that moves by less is no effect [K]: at the usual tolerance each of the two runs is good to 0.02 K
 * (numerics.tolerance).
 */
export const NO_EFFECT = 0.1;
/** Stands in the sums of an order for the deciding peak of a car that ends no pull: hotter than any [K]. */
const NO_PEAK = 1e4;
/** Runs asked for at once: their series are held together. */
const BATCH = 32;

/**
 * What each upgrade buys alone and on top of those before it, in pulls, deciding peak and the figures of the first
 * pull. With `withOrders` every set of upgrades is run, once each, for the best order and the cheapest ways.
 *
 * @param upgrades - in the order of the file
 * @param configOf - the car with these upgrades, places in ascending order; undefined where it cannot be
 * @returns undefined where there is no car to begin with
 */
export function* studyUpgrades(
  upgrades: readonly Upgrade[],
  configOf: (chosen: readonly number[]) => Config | undefined,
  { withOrders }: { readonly withOrders: boolean },
): Study<UpgradeStudy | undefined> {
  const base = configOf([]);
  if (base === undefined) return undefined;
  const single = upgrades.map((_, upgrade) => configOf([upgrade]));
  const fitted = fittedUpgrades(base, single);
  const places = [...upgrades.keys()].filter((upgrade) => !fitted.includes(upgrade));
  const isOrdered = withOrders && isOrderable(places.length) && places.length > 0;

  const cars = yield* runCars(upgradeSets(places, withOrders), (chosen) =>
    chosen.length === 1 ? single[chosen[0]] : configOf(chosen),
  );
  const carOf = (chosen: readonly number[]): UpgradedCar | undefined => cars.get(keyOf(chosen));
  const asItIs = carOf([]);
  if (asItIs === undefined) return undefined;
  const stepOf = (before: readonly number[], upgrade: number): UpgradeStep => {
    const [from, to] = [carOf(before), carOf([...before, upgrade])];
    return {
      upgrade,
      ...(to && { car: to, total: changeBetween(asItIs, to) }),
      ...(from && to && { change: changeBetween(from, to) }),
    };
  };
  const stepsOf = (order: readonly number[]) => order.map((upgrade, k) => stepOf(order.slice(0, k), upgrade));
  return {
    limit: base.limit.chargeTemperature,
    base: asItIs,
    fitted,
    alone: places.map((upgrade) => stepOf([], upgrade)),
    inOrder: stepsOf(places),
    ...(isOrdered && { best: ordersOf(upgrades, places, carOf, stepsOf) }),
  };
}

/**
 * Upgrades that a car has already: made alone, they leave it as it is to the model, whatever it is then called.
 *
 * @param single - the car with each upgrade of the list alone; undefined where it cannot be
 * @returns their places in the list
 */
export function fittedUpgrades(base: Config, single: readonly (Config | undefined)[]): number[] {
  const unnamed = (config: Config): string => JSON.stringify({ ...config, name: '' });
  const asItIs = unnamed(base);
  return single.flatMap((config, upgrade) => (config !== undefined && unnamed(config) === asItIs ? [upgrade] : []));
}

const isOrderable = (count: number): boolean => count <= MOST_UPGRADES_ORDERED;

/**
 * The sets of upgrades that {@link studyUpgrades} asks a car for, none first: places in ascending order.
 *
 * @param places - of the upgrades that are not fitted already
 */
export function upgradeSets(places: readonly number[], withOrders: boolean): number[][] {
  if (withOrders && isOrderable(places.length)) {
    return Array.from({ length: 2 ** places.length }, (_, mask) => upgradesOf(mask).map((k) => places[k]));
  }
  return [[], ...places.map((upgrade) => [upgrade]), ...places.slice(1).map((_, k) => places.slice(0, k + 2))];
}

const keyOf = (chosen: readonly number[]): string => chosen.toSorted((a, b) => a - b).join();

/** Runs every set that can be, some at a time. */
function* runCars(
  sets: readonly (readonly number[])[],
  configOf: (chosen: readonly number[]) => Config | undefined,
): Study<ReadonlyMap<string, UpgradedCar>> {
  const cars = new Map<string, UpgradedCar>();
  for (let first = 0; first < sets.length; first += BATCH) {
    const jobs = sets.slice(first, first + BATCH).flatMap((chosen): { chosen: readonly number[]; job: RunJob }[] => {
      const config = configOf(chosen);
      return config === undefined ? [] : [{ chosen, job: { config } }];
    });
    const runs = yield jobs.map(({ job }) => job);
    jobs.forEach(({ chosen, job }, k) => {
      cars.set(keyOf(chosen), upgradedCar(runs[k], job.config.limit.chargeTemperature));
    });
  }
  return cars;
}

function upgradedCar(series: TimeSeries, limit: number): UpgradedCar {
  const pulls = summarisePulls(series, limit);
  const deciding = decidingPull(pulls);
  const { outcome } = series;
  return {
    count: countPulls(pulls),
    pullsRun: pulls.length,
    ...(deciding && {
      deciding: { pull: deciding.pull, peak: deciding.peak },
      firstPull: figuresOf((figure) => pulls[0].atEnd[figure]),
    }),
    ...(outcome.kind === 'stopped' && { stoppedBecause: outcome.reason }),
  };
}

const figuresOf = (value: (figure: keyof UpgradeFigures) => number): UpgradeFigures =>
  Object.fromEntries(FIGURES.map((figure) => [figure, value(figure)])) as UpgradeFigures;

function changeBetween(from: UpgradedCar, to: UpgradedCar): UpgradeChange {
  const count = to.count - from.count;
  const peak = from.deciding && to.deciding && to.deciding.peak - from.deciding.peak;
  const [before, after] = [from.firstPull, to.firstPull];
  // Colder is better; more pulls are, whatever the peaks.
  const gain = count === 0 && peak !== undefined ? (Math.abs(peak) < NO_EFFECT ? 0 : -peak) : count;
  const isKnown = count !== 0 || peak !== undefined;
  return {
    ...(isKnown && { effect: gain > 0 ? 'better' : gain < 0 ? 'worse' : 'no effect' }),
    count,
    ...(peak !== undefined && { peak }),
    ...(before && after && { firstPull: figuresOf((figure) => after[figure] - before[figure]) }),
  };
}

function ordersOf(
  upgrades: readonly Upgrade[],
  places: readonly number[],
  carOf: (chosen: readonly number[]) => UpgradedCar | undefined,
  stepsOf: (order: readonly number[]) => UpgradeStep[],
): UpgradeOrders {
  const hasAllPrices = places.every((upgrade) => upgrades[upgrade].price !== undefined);
  const order = bestOrder(places.length, (mask) => {
    const chosen = upgradesOf(mask).map((k) => places[k]);
    const car = carOf(chosen);
    const money = hasAllPrices ? sumOf(chosen, (upgrade) => upgrades[upgrade].price ?? 0) : 0;
    return car && { pulls: car.count, peak: car.deciding?.peak ?? NO_PEAK, money };
  });
  return { ...(order && { order: stepsOf(order.map((k) => places[k])) }), ...waysOf(upgrades, places, carOf) };
}

function waysOf(
  upgrades: readonly Upgrade[],
  places: readonly number[],
  carOf: (chosen: readonly number[]) => UpgradedCar | undefined,
): Pick<UpgradeOrders, 'ways'> {
  const priced = places.filter((upgrade) => upgrades[upgrade].price !== undefined);
  if (priced.length === 0) return {};
  const ways = Array.from({ length: 2 ** priced.length }, (_, mask) => mask).flatMap((mask): UpgradeWay[] => {
    const chosen = upgradesOf(mask).map((k) => priced[k]);
    const car = carOf(chosen);
    if (car === undefined || car.stoppedBecause !== undefined) return [];
    const areHoursKnown = chosen.every((upgrade) => upgrades[upgrade].hours !== undefined);
    return [
      {
        pulls: car.count,
        money: sumOf(chosen, (upgrade) => upgrades[upgrade].price ?? 0),
        ...(areHoursKnown && { hours: sumOf(chosen, (upgrade) => upgrades[upgrade].hours ?? 0) }),
        upgrades: chosen,
      },
    ];
  });
  return { ways: cheapestWays(ways) };
}

const sumOf = (chosen: readonly number[], value: (upgrade: number) => number): number =>
  chosen.reduce((sum, upgrade) => sum + value(upgrade), 0);
