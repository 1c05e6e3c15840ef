import type { TimeSeries } from '../results/time-series.ts';
import type { Config } from '../scenario/config.ts';
import { type RunOptions, simulate } from '../simulate.ts';

/** A run that an answer asks for. */
export interface RunJob {
  readonly config: Config;
  readonly options?: RunOptions;
}

/**
 * An answer made of many runs: it asks for runs, any number at once, and is handed their results in the same order.
 * Whoever conducts it decides where and when the runs happen, and may stop between them.
 */
export type Study<Result> = Generator<readonly RunJob[], Result, readonly TimeSeries[]>;

/** Conducts a study here and now, one run after the other. */
export function conduct<Result>(study: Study<Result>): Result {
  let step = study.next();
  while (!step.done) step = study.next(step.value.map(({ config, options }) => simulate(config, options)));
  return step.value;
}

/** Options of a run that may end when pull `pull`, counted from 1, has ended. */
export function untilPull(pull: number): NonNullable<RunJob['options']> {
  let seen = 0;
  return {
    continueAfter: ({ kind }) => {
      if (kind === 'pull') seen++;
      return seen < pull;
    },
  };
}
