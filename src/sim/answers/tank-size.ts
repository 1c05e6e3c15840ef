import { CoolantRing } from '../model/coolant-ring.ts';
import { volumeBetween } from '../model/loop-volume.ts';
import { pullsOfCycle } from '../scenario/config/cycle.ts';
import type { Config } from '../scenario/config.ts';
import type { Sentence } from '../sentence.ts';
import { withTank } from './car-changes.ts';
import { countingJob, countRun, withPulls } from './count-run.ts';
import { smallestEnough } from './halving.ts';
import { countPulls } from './pulls-to-limit.ts';
import type { Study } from './study.ts';

/** What is put in: litres of coolant in the tank, or kilograms of ice. */
export type StoreKind = 'tank' | 'ice';

/** One size of the store. */
interface StorePoint {
  /** m3 of coolant in the tank, or kg of ice */
  readonly size: number;
  /** pulls to the limit, at most those asked for */
  readonly count: number;
  /** peak of the first pull and of the last that was asked for [K]; NaN where the run did not come so far */
  readonly firstPeak: number;
  readonly lastPeak: number;
  /** with ice: pulls that ended with ice left */
  readonly pullsOnIce: number;
  readonly stoppedBecause?: Sentence;
}

export interface StoreStudy {
  readonly kind: StoreKind;
  /** pulls asked for */
  readonly pulls: number;
  /** those of the session, where it has fewer and repeats none */
  readonly tooFew?: number;
  /** as the car is */
  readonly now: number;
  readonly points: readonly StorePoint[];
  /** smallest size that makes the pulls asked for; absent where none of those tried does */
  readonly smallest?: number;
  /** size beyond which more buys ever less; absent where the curve has no bend */
  readonly knee?: number;
  /** sizes larger than one that does the job that do not do it: more is not always better */
  readonly tooLarge: readonly number[];
  /** coolant in the tank, beside the ice [m3] */
  readonly coolant: number;
  /** temperature to which the tank's coolant is taken to be chilled where a car without ice gets some [K] */
  readonly chilledTo?: number;
  /** s until coolant that leaves the core is back at it at the soonest, at the flow of a pull */
  readonly soonestReturn: number;
}

/** Times the tank as it is. */
const TANK_LADDER = [0.25, 0.5, 0.75, 1, 1.5, 2, 3, 4, 6, 8];
/** kg; what the car has is tried beside them */
const ICE_LADDER = [0, 2.5, 5, 7.5, 10, 15, 20, 30];
const LEAST_TANK = 0.05e-3;
const MOST_TANK = 0.2;
/** Where a car without ice gets some: its coolant comes with it chilled. */
const CHILLED = 273.15 + 2;
/** m3 or kg that the smallest size is found to */
const FOUND_TO: Readonly<Record<StoreKind, number>> = { tank: 0.05e-3, ice: 0.05 };
/** A curve that bends by less than this share of its height has no knee. */
const STRAIGHT = 0.1;

/** The same car with another tank, or other ice in it. */
export function withStore(config: Config, kind: StoreKind, size: number): Config {
  if (kind === 'tank') return withTank(config, size);
  const { reservoir, start } = config;
  const isChilled = reservoir.iceMass > 0 || size === 0;
  return {
    ...config,
    reservoir: { ...reservoir, iceMass: size, ...(size > 0 && { layers: 1 }) },
    start: isChilled ? start : { ...start, reservoir: Math.min(start.reservoir, CHILLED) },
  };
}

/**
 * Pulls against the size of the tank, or against ice: a ladder of sizes, then the smallest that makes `pulls` between
 * two rungs by halving, and where the curve of the last pull's peak bends.
 *
 * The knee is the size farthest from the chord of the curve, both axes scaled to 1 (V. Satopaa et al., Finding a
 * "kneedle" in a haystack, 2011: from memory).
 *
 * @param pulls - wanted; the repeated block is run as often as that takes
 */
export function* studyStore(config: Config, kind: StoreKind, pulls: number): Study<StoreStudy> {
  const now = kind === 'tank' ? config.reservoir.coolantVolume : config.reservoir.iceMass;
  const most = pullsOfCycle(withPulls(config, pulls).cycle);
  const sizes = ladder(config, kind);
  const points = (yield* tryAll(config, kind, sizes, pulls)).sort((a, b) => a.size - b.size);
  const made = points.findIndex(({ count }) => count >= pulls);
  const isEnough = function* (size: number): Study<boolean> {
    const car = withStore(config, kind, size);
    const [series] = yield [countingJob(car, pulls)];
    return countRun(car, series).count >= pulls;
  };
  const rung = (k: number): number => points[Math.max(0, k)].size;
  const smallest = made < 0 ? undefined : yield* smallestEnough(rung(made - 1), rung(made), FOUND_TO[kind], isEnough);
  const tooLarge =
    made < 0
      ? []
      : points
          .slice(made)
          .filter(({ count }) => count < pulls)
          .map(({ size }) => size);
  const knee = kneeOf(points);
  return {
    kind,
    pulls,
    ...(most < pulls && { tooFew: most }),
    now,
    points,
    ...(smallest !== undefined && { smallest }),
    ...(knee !== undefined && { knee }),
    tooLarge,
    coolant: config.reservoir.coolantVolume,
    ...(kind === 'ice' && now === 0 && config.start.reservoir > CHILLED && { chilledTo: CHILLED }),
    soonestReturn: returnInPull(config),
  };
}

function ladder({ reservoir }: Config, kind: StoreKind): number[] {
  if (kind === 'ice') return [...new Set([...ICE_LADDER, reservoir.iceMass])].sort((a, b) => a - b);
  const sizes = TANK_LADDER.map((times) => times * reservoir.coolantVolume);
  return [...new Set(sizes.map((size) => Math.min(MOST_TANK, Math.max(LEAST_TANK, size))))];
}

function* tryAll(config: Config, kind: StoreKind, sizes: readonly number[], pulls: number): Study<StorePoint[]> {
  const cars = sizes.map((size) => withStore(config, kind, size));
  const runs = yield cars.map((car) => ({ config: withPulls(car, pulls) }));
  return runs.map((series, k) => {
    const { pulls: all, stoppedBecause } = countRun(cars[k], series);
    const asked = all.slice(0, pulls);
    const melted = asked.findIndex(({ atEnd }) => !(atEnd.iceMass > 0));
    return {
      size: sizes[k],
      count: countPulls(asked),
      firstPeak: asked[0]?.peak ?? Number.NaN,
      lastPeak: asked[pulls - 1]?.peak ?? Number.NaN,
      pullsOnIce: melted < 0 ? asked.length : melted,
      ...(stoppedBecause !== undefined && { stoppedBecause }),
    };
  });
}

function kneeOf(points: readonly StorePoint[]): number | undefined {
  const curve = points.filter(({ lastPeak }) => Number.isFinite(lastPeak));
  const [first, last] = [curve[0], curve[curve.length - 1]];
  if (curve.length < 3 || first.lastPeak === last.lastPeak) return undefined;
  const bends = curve.map(({ size, lastPeak }) => {
    const along = (size - first.size) / (last.size - first.size);
    const fallen = (first.lastPeak - lastPeak) / (first.lastPeak - last.lastPeak);
    return fallen - along;
  });
  const most = Math.max(...bends);
  return most < STRAIGHT ? undefined : curve[bends.indexOf(most)].size;
}

function returnInPull(config: Config): number {
  const phases = [...config.cycle.before, ...config.cycle.block];
  const pull = phases.find(({ kind }) => kind === 'pull');
  if (pull === undefined) return Number.POSITIVE_INFINITY;
  return soonestReturn(config, new CoolantRing(config).flowAt(pull, config.coolant.propertiesAt));
}

/**
 * When coolant that leaves the core is back at it at the soonest [s]: what lies between has passed by then, but for a
 * mixed tank, which hands on a little of what comes in at once.
 *
 * @param flow - of coolant [m3/s]
 */
export function soonestReturn(config: Config, flow: number): number {
  const { layers, coolantVolume } = config.reservoir;
  return (volumeBetween(config) + (layers > 1 ? coolantVolume : 0)) / flow;
}
