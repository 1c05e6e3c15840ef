import type { Config } from '../scenario/config.ts';
import { hasExchanger, withCoreConductance } from './car-changes.ts';
import { type PullSummary, summarisePulls } from './pull-summary.ts';
import { jobToPull, type Study } from './study.ts';

/** What the gauge showed at the end of a pull. */
export interface GaugeReading {
  /** counted from 1 */
  readonly pull: number;
  /** K */
  readonly indicated: number;
}

/** What a gauge may show [degC], and what its last figure may be worth [K]: least and greatest; own judgement. */
export const GAUGE_RANGE = [-50, 200] as const;
export const GAUGE_STEP_RANGE = [0.01, 10] as const;

/** One reading beside the model: K, misses are model less reading. */
interface PullMiss extends GaugeReading {
  readonly model: number;
  readonly miss: number;
  /** with the core conductance that fits best */
  readonly missLeft: number;
}

/** The one factor on both conductances of the core that brings the model nearest to the gauge. */
interface CoreFit {
  readonly factor: number;
  /** ends of the doubt, within the range that was searched */
  readonly low: number;
  readonly high: number;
  /** the best factor is an end of the range: a better one may lie beyond */
  readonly isAtEnd: boolean;
  /** K */
  readonly rmsLeft: number;
}

export interface CarAgreement {
  readonly kind: 'compared';
  /** K */
  readonly gaugeStep: number;
  readonly pulls: readonly PullMiss[];
  /** K */
  readonly meanMiss: number;
  readonly rmsMiss: number;
  readonly fit: CoreFit;
  readonly verdict: 'within the gauge' | 'core factor' | 'no one factor';
  /** change of the misses left from the first read pull to the last, on their straight line [K] */
  readonly drift: number;
  /** whether the car has a front exchanger, the second alone counted too */
  readonly hasExchanger: boolean;
}

/** The run does not come to the end of a pull that was read. */
export interface NoSuchPull {
  readonly kind: 'no such pull';
  readonly pull: number;
  readonly pullsRun: number;
}

/** Factors between which the best one is looked for; what lies beyond is another core. */
export const CORE_FACTORS = [0.25, 4] as const;
const [LOW, HIGH] = [Math.log(CORE_FACTORS[0]), Math.log(CORE_FACTORS[1])];
/** Grid that finds the neighbourhood of the best factor; 0 in the middle is the core as typed. */
const GRID = [LOW, LOW / 2, 0, HIGH / 2, HIGH];
/** Of the logarithm: 0.1 % of the factor. */
const SEARCH_TOLERANCE = 1e-3;
/** Either side of the best logarithm for the slopes of the misses. */
const SLOPE_STEP = 0.02;

/**
 * Holds the gauge readings of some pulls against the model, and finds the one core conductance that fits them best.
 *
 * Compared is the indicated temperature at the end of each pull, at lift. The factor multiplies the conductance of both
 * sides and is found by least squares: a coarse grid over 0.25 to 4, then golden section on its logarithm [1].
 * All else stays as typed: a factor that fits is no proof that the core is what differs.
 *
 * @param config - the car as typed
 * @param readings - at least one, each of another pull
 * @param gaugeStep - what the last figure of the gauge is worth [K]
 *
 * [1] R. P. Brent, Algorithms for Minimization without Derivatives, 1973, chapter 5.
 */
export function* studyCarAgreement(
  config: Config,
  readings: readonly GaugeReading[],
  gaugeStep: number,
): Study<CarAgreement | NoSuchPull> {
  const last = Math.max(...readings.map(({ pull }) => pull));
  const missesAt = function* (logs: readonly number[]): Study<readonly (readonly number[])[]> {
    const runs = yield logs.map((log) => jobToPull(withCoreConductance(config, Math.exp(log)), last));
    return runs.map((run) => missesOf(summarisePulls(run, config.limit.chargeTemperature), readings));
  };

  const [typed] = yield [jobToPull(config, last)];
  const pulls = summarisePulls(typed, config.limit.chargeTemperature);
  const unread = readings.find(({ pull }) => pulls[pull - 1] === undefined);
  if (unread !== undefined) return { kind: 'no such pull', pull: unread.pull, pullsRun: pulls.length };
  const asTyped = missesOf(pulls, readings);

  const onGrid = (yield* missesAt(GRID)).map(sumOfSquares);
  const nearest = onGrid.indexOf(Math.min(...onGrid));
  let low = GRID[Math.max(0, nearest - 1)];
  let high = GRID[Math.min(GRID.length - 1, nearest + 1)];
  const golden = (Math.sqrt(5) - 1) / 2;
  let [left, right] = [high - golden * (high - low), low + golden * (high - low)];
  let [atLeft, atRight] = (yield* missesAt([left, right])).map(sumOfSquares);
  while (high - low > SEARCH_TOLERANCE) {
    if (atLeft < atRight) {
      [high, right, atRight] = [right, left, atLeft];
      left = high - golden * (high - low);
      atLeft = sumOfSquares((yield* missesAt([left]))[0]);
    } else {
      [low, left, atLeft] = [left, right, atRight];
      right = low + golden * (high - low);
      atRight = sumOfSquares((yield* missesAt([right]))[0]);
    }
  }

  const isAtEnd = low === LOW || high === HIGH;
  const best = low === LOW ? LOW : high === HIGH ? HIGH : (low + high) / 2;
  const [below, missesLeft, above] = yield* missesAt([best - SLOPE_STEP, best, best + SLOPE_STEP]);
  const slopes = above.map((miss, k) => (miss - below[k]) / (2 * SLOPE_STEP));
  const doubt = doubtOfFit(missesLeft, slopes, gaugeStep);
  const rmsLeft = rms(missesLeft);
  return {
    kind: 'compared',
    gaugeStep,
    pulls: readings.map((reading, k) => ({
      ...reading,
      model: reading.indicated + asTyped[k],
      miss: asTyped[k],
      missLeft: missesLeft[k],
    })),
    meanMiss: asTyped.reduce((sum, miss) => sum + miss, 0) / asTyped.length,
    rmsMiss: rms(asTyped),
    fit: {
      factor: Math.exp(best),
      low: Math.exp(Math.max(LOW, best - doubt)),
      high: Math.exp(Math.min(HIGH, best + doubt)),
      isAtEnd,
      rmsLeft,
    },
    verdict: verdictOf(asTyped, rmsLeft, gaugeStep),
    drift: driftOf(readings, missesLeft),
    hasExchanger: hasExchanger(config),
  };
}

/**
 * Half a step is what rounding hides. Were some factor right, rounding alone would leave no more than that as rms
 * there, and least squares leaves less still.
 */
function verdictOf(asTyped: readonly number[], rmsLeft: number, gaugeStep: number): CarAgreement['verdict'] {
  if (asTyped.every((miss) => Math.abs(miss) <= gaugeStep / 2)) return 'within the gauge';
  return rmsLeft <= gaugeStep / 2 ? 'core factor' : 'no one factor';
}

/** Infinite where the run does not come to the end of the pull. */
function missesOf(pulls: readonly PullSummary[], readings: readonly GaugeReading[]): number[] {
  return readings.map(({ pull, indicated }) => {
    const model = pulls[pull - 1]?.atEnd.indicatedTemperature;
    return model === undefined ? Number.POSITIVE_INFINITY : model - indicated;
  });
}

const sumOfSquares = (misses: readonly number[]): number => misses.reduce((sum, miss) => sum + miss ** 2, 0);
const rms = (misses: readonly number[]): number => Math.sqrt(sumOfSquares(misses) / misses.length);

/**
 * Doubt of a parameter fitted by least squares, from the misses r that are left and their slopes d against it.
 *
 *     doubt = 2 s / sqrt(sum d^2) + (step/2) sum |d| / sum d^2,    s^2 = sum r^2 / (n - 1)
 *
 * The first term is two standard errors, by the curvature 2 sum d^2 of the sum of squares [1]. The second is the shift
 * when the gauge rounds every reading the same way by half a step: settled pulls read alike, so their rounding does not
 * average out. With one reading only the second is left.
 *
 * @param misses - r [K]
 * @param slopes - d, K per unit of the parameter
 * @param gaugeStep - K
 * @returns the doubt either side, in units of the parameter; infinite where the misses do not hang on it
 *
 * [1] P. R. Bevington, D. K. Robinson, Data Reduction and Error Analysis for the Physical Sciences, 3rd ed., 2003,
 *     chapter 8.
 */
export function doubtOfFit(misses: readonly number[], slopes: readonly number[], gaugeStep: number): number {
  const curvature = sumOfSquares(slopes);
  const spread = misses.length > 1 ? Math.sqrt(sumOfSquares(misses) / (misses.length - 1)) : 0;
  const lean = slopes.reduce((sum, slope) => sum + Math.abs(slope), 0);
  const doubt = (2 * spread) / Math.sqrt(curvature) + ((gaugeStep / 2) * lean) / curvature;
  return Number.isFinite(doubt) ? doubt : Number.POSITIVE_INFINITY;
}

/** Change of some misses from the first pull to the last on their least-squares line; 0 for a single one. */
function driftOf(readings: readonly GaugeReading[], misses: readonly number[]): number {
  const numbers = readings.map(({ pull }) => pull);
  const mean = numbers.reduce((sum, pull) => sum + pull, 0) / numbers.length;
  const spread = sumOfSquares(numbers.map((pull) => pull - mean));
  if (spread === 0) return 0;
  const slope = misses.reduce((sum, miss, k) => sum + miss * (numbers[k] - mean), 0) / spread;
  return slope * (Math.max(...numbers) - Math.min(...numbers));
}
