import type { TimeSeries } from '../results/time-series.ts';
import type { Config } from '../scenario/config.ts';
import type { Sentence } from '../sentence.ts';
import { summarisePulls } from './pull-summary.ts';
import { countPulls, decidingPull } from './pulls-to-limit.ts';
import type { Study } from './study.ts';

/** Figures that two cars are compared by, SI; absent where the run has no such pull. */
export interface ComparedFigures {
  readonly count: number;
  /** counted from 1; of two cars it has no difference */
  readonly decidingPull?: number;
  readonly decidingPeak?: number;
  /** peaks of all whole pulls, in order */
  readonly peaks: readonly number[];
  /** at the end of the first pull */
  readonly coolantFlow?: number;
  readonly coreAirDrop?: number;
  readonly drivePower?: number;
  readonly airFlow?: number;
}

interface ComparedCar extends ComparedFigures {
  /** why the run ended early */
  readonly stoppedBecause?: Sentence;
  /** these figures less those of the first car */
  readonly difference: ComparedFigures;
}

export interface Comparison {
  readonly cars: readonly ComparedCar[];
  /** true charge temperature on the time axis that all share, K; NaN where the run of a car is over */
  readonly time: readonly number[];
  readonly charge: readonly (readonly number[])[];
}

/** Cars side by side, each against the first; one run each, recorded every `interval` seconds too. */
export function* studyComparison(configs: readonly Config[], interval: number): Study<Comparison> {
  const runs = yield configs.map((config) => ({ config, interval }));
  return compareRuns(
    runs,
    configs.map(({ limit }) => limit.chargeTemperature),
    interval,
  );
}

/**
 * Runs side by side, each against the first.
 *
 * @param limits - charge temperature limit of each [K]
 * @param interval - step of the common time axis, which goes on to the end of the longest run [s]
 */
export function compareRuns(
  runs: readonly Pick<TimeSeries, 'columns' | 'phases' | 'outcome'>[],
  limits: readonly number[],
  interval: number,
): Comparison {
  const figures = runs.map((run, k) => figuresOf(run, limits[k]));
  const end = Math.max(...runs.map(({ columns: { time } }) => time[time.length - 1] ?? 0));
  const time = Array.from({ length: Math.floor(end / interval) + 1 }, (_, k) => k * interval);
  return {
    cars: figures.map((car) => ({ ...car, difference: lessFirst(car, figures[0]) })),
    time,
    charge: runs.map(({ columns }) => onAxis(time, columns.time, columns.chargeTemperature)),
  };
}

function figuresOf(
  run: Pick<TimeSeries, 'columns' | 'phases' | 'outcome'>,
  limit: number,
): Omit<ComparedCar, 'difference'> {
  const pulls = summarisePulls(run, limit);
  const deciding = decidingPull(pulls);
  const { outcome } = run;
  return {
    count: countPulls(pulls),
    ...(deciding && { decidingPull: deciding.pull, decidingPeak: deciding.peak }),
    peaks: pulls.map(({ peak }) => peak),
    ...(pulls.length > 0 && atEndOf(pulls[0])),
    ...(outcome.kind === 'stopped' && { stoppedBecause: outcome.reason }),
  };
}

function atEndOf({ atEnd }: ReturnType<typeof summarisePulls>[number]) {
  const { coolantFlow, coreAirDrop, drivePower, airFlow } = atEnd;
  return { coolantFlow, coreAirDrop, drivePower, airFlow };
}

const SINGLE = ['decidingPeak', 'coolantFlow', 'coreAirDrop', 'drivePower', 'airFlow'] as const;

/** Pulls that only one of the two has are left out. */
function lessFirst(car: ComparedFigures, first: ComparedFigures): ComparedFigures {
  const single = SINGLE.flatMap((name) => {
    const [from, to] = [first[name], car[name]];
    return from === undefined || to === undefined ? [] : [[name, to - from]];
  });
  const peaks = car.peaks.slice(0, first.peaks.length).map((peak, k) => peak - first.peaks[k]);
  return { count: car.count - first.count, peaks, ...Object.fromEntries(single) };
}

/** A recorded column at the times of an axis, straight between rows; where a time stands twice the later row holds. */
function onAxis(axis: readonly number[], time: Float64Array, values: Float64Array): number[] {
  let row = 0;
  return axis.map((at) => {
    while (row + 1 < time.length && time[row + 1] <= at) row++;
    if (!(time[row] <= at)) return Number.NaN;
    if (time[row] === at) return values[row];
    if (row + 1 === time.length) return Number.NaN;
    const share = (at - time[row]) / (time[row + 1] - time[row]);
    return values[row] + share * (values[row + 1] - values[row]);
  });
}
