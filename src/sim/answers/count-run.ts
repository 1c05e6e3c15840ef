import type { TimeSeries } from '../results/time-series.ts';
import { pullsIn } from '../scenario/config/cycle.ts';
import type { Config } from '../scenario/config.ts';
import type { Sentence } from '../sentence.ts';
import { type PullSummary, summarisePulls } from './pull-summary.ts';
import { countPulls, decidingPull } from './pulls-to-limit.ts';
import type { RunJob } from './study.ts';

/** What one run comes to where many are compared. */
export interface CountedRun {
  /** pulls to the limit */
  readonly count: number;
  readonly pulls: readonly PullSummary[];
  /** peak of the deciding pull [K]; NaN where the run had no pull */
  readonly decidingPeak: number;
  /** why the run ended early */
  readonly stoppedBecause?: Sentence;
}

/**
 * The same car with the repeated block run as often as it takes for `pulls` of them; as it is where nothing repeats.
 */
export function withPulls(config: Config, pulls: number): Config {
  const { before, block, repeats } = config.cycle;
  const [first, inBlock] = [pullsIn(before), pullsIn(block)];
  if (repeats === 0 || inBlock === 0) return config;
  const needed = Math.max(1, Math.ceil((pulls - first) / inBlock));
  return { ...config, cycle: { ...config.cycle, repeats: needed } };
}

/** A run that ends with the first pull over the limit, or with pull `pulls`. */
export const countingJob = (config: Config, pulls: number): RunJob => ({
  config: withPulls(config, pulls),
  until: { kind: 'limit', pulls },
});

export function countRun(config: Config, series: TimeSeries): CountedRun {
  const pulls = summarisePulls(series, config.limit.chargeTemperature);
  const { outcome } = series;
  return {
    count: countPulls(pulls),
    pulls,
    decidingPeak: decidingPull(pulls)?.peak ?? Number.NaN,
    ...(outcome.kind === 'stopped' && { stoppedBecause: outcome.reason }),
  };
}
