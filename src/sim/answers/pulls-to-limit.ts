import type { TimeSeries } from '../results/time-series.ts';
import { pullsIn } from '../scenario/config/cycle.ts';
import type { Config } from '../scenario/config.ts';
import type { Sentence } from '../sentence.ts';
import { withCoreConductance } from './car-changes.ts';
import { type PullSummary, summarisePulls } from './pull-summary.ts';
import { hasSettled } from './run-end.ts';
import type { RunJob, Study } from './study.ts';

/** Two peaks closer than this share the title of the hottest; the earlier one decides [K]; own choice. */
const SAME_PEAK = 0.05;
/** So often a block is repeated at most; own choice. */
const MOST_BLOCKS = 200;
/** Change of the core's conductance, both sides, that shows how much an answer hangs on it; own judgement. */
const CONDUCTANCE_CHANGE = 0.05;

/** The car with both core conductances 5 % lower, and 5 % higher. */
export function conductanceBand(config: Config): [lower: Config, higher: Config] {
  return [withCoreConductance(config, 1 - CONDUCTANCE_CHANGE), withCoreConductance(config, 1 + CONDUCTANCE_CHANGE)];
}

/** Where the hottest pull of the repeated block ends up when the block goes on for ever. */
export type SettledPeak =
  | { readonly kind: 'settled'; readonly peak: number; readonly afterPulls: number; readonly firstOverLimit?: number }
  | {
      readonly kind: 'not settled';
      readonly peak: number;
      readonly afterPulls: number;
      readonly firstOverLimit?: number;
      /** why the repeated run ended early; absent where 200 blocks were not enough */
      readonly stoppedBecause?: Sentence;
    }
  /** nothing repeats, or the run stopped before the first block was over */
  | { readonly kind: 'no repeated pulls' };

export interface PullsToLimit {
  /** K */
  readonly limit: number;
  /** whole pulls from the first whose peak stays at or under the limit, ending with the first that does not */
  readonly count: number;
  readonly pullsRun: number;
  /** number of the pull that breaks the limit; absent where none of this run does */
  readonly breakingPull?: number;
  /** the breaking pull, else the earliest within 0.05 K of the hottest; absent where there is no pull */
  readonly decidingPull?: number;
  readonly settled: SettledPeak;
  /** the count with both core conductances 5 % lower and 5 % higher */
  readonly countAtLowerConductance: number;
  readonly countAtHigherConductance: number;
}

/** Pulls to the limit of one run, without the runs beside it. */
export function countPulls(pulls: readonly PullSummary[]): number {
  const broken = pulls.findIndex(({ margin }) => margin < 0);
  return broken < 0 ? pulls.length : broken;
}

/** The pull that decides: the one that breaks the limit, else the earliest within 0.05 K of the hottest. */
export function decidingPull(pulls: readonly PullSummary[]): PullSummary | undefined {
  const broken = pulls.find(({ margin }) => margin < 0);
  if (broken !== undefined) return broken;
  const hottest = Math.max(...pulls.map(({ peak }) => peak));
  return pulls.find(({ peak }) => peak >= hottest - SAME_PEAK);
}

/** Pulls to the limit with everything that belongs beside it; takes three more runs. */
export function* studyPullsToLimit(config: Config, pulls: readonly PullSummary[]): Study<PullsToLimit> {
  const limit = config.limit.chargeTemperature;
  const count = countPulls(pulls);
  const deciding = decidingPull(pulls);
  const settling = watchSettling(config);
  const [lower, higher, endless] = yield [
    ...conductanceBand(config).map((each) => ({ config: each })),
    ...settling.jobs,
  ];
  return {
    limit,
    count,
    pullsRun: pulls.length,
    ...(count < pulls.length ? { breakingPull: count + 1 } : {}),
    ...(deciding === undefined ? {} : { decidingPull: deciding.pull }),
    settled: settling.read(endless),
    countAtLowerConductance: countPulls(summarisePulls(lower, limit)),
    countAtHigherConductance: countPulls(summarisePulls(higher, limit)),
  };
}

/** Where the hottest pull of the repeated block ends up, by itself: one more run where something repeats. */
export function* studySettledPeak(config: Config): Study<SettledPeak> {
  const settling = watchSettling(config);
  const [series] = settling.jobs.length === 0 ? [] : yield settling.jobs;
  return settling.read(series);
}

interface Settling {
  /** the run that goes on until the block has settled; none where nothing repeats */
  readonly jobs: readonly RunJob[];
  read(series: TimeSeries | undefined): SettledPeak;
}

/** Runs the repeated block on until each of its pulls peaks where it did in the block before. */
function watchSettling(config: Config): Settling {
  const perBlock = pullsIn(config.cycle.block);
  if (perBlock === 0 || config.cycle.repeats < 2) {
    return { jobs: [], read: () => ({ kind: 'no repeated pulls' }) };
  }
  const endless: Config = { ...config, cycle: { ...config.cycle, repeats: MOST_BLOCKS, after: [] } };
  return {
    jobs: [{ config: endless, until: { kind: 'settled' } }],
    read: (series) => {
      const pulls = series === undefined ? [] : summarisePulls(series, config.limit.chargeTemperature);
      const peaks = pulls.filter(({ block }) => block > 0).map(({ peak }) => peak);
      const whole = peaks.slice(0, peaks.length - (peaks.length % perBlock));
      if (series === undefined || whole.length === 0) return { kind: 'no repeated pulls' };
      const over = pulls.find(({ margin }) => margin < 0);
      const found = {
        peak: Math.max(...whole.slice(-perBlock)),
        afterPulls: pulls.length,
        ...(over === undefined ? {} : { firstOverLimit: over.pull }),
      };
      if (hasSettled(peaks, perBlock)) return { kind: 'settled', ...found };
      const { outcome } = series;
      return {
        kind: 'not settled',
        ...found,
        ...(outcome.kind === 'stopped' ? { stoppedBecause: outcome.reason } : {}),
      };
    },
  };
}
