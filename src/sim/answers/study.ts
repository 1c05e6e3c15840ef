import type { TimeSeries } from '../results/time-series.ts';
import type { Config } from '../scenario/config.ts';
import { type Run, startRun } from '../simulate.ts';
import { continueUntil, type RunEnd } from './run-end.ts';

/** A run that an answer asks for; plain data. */
export interface RunJob {
  readonly config: Config;
  /** left out: the end of the cycle */
  readonly until?: RunEnd;
  /** also record on every multiple of this [s] */
  readonly interval?: number;
}

/** A run that ends with pull `pull`, counted from 1. */
export const jobToPull = (config: Config, pull: number): RunJob => ({ config, until: { kind: 'pull', pull } });

/**
 * An answer made of many runs: it asks for runs, any number at once, and is handed their results in the same order.
 * Whoever conducts it decides where and when the runs happen, and may stop between them.
 */
export type Study<Result> = Generator<readonly RunJob[], Result, readonly TimeSeries[]>;

/** Starts a run that an answer asks for. */
export function startJob({ config, until, interval }: RunJob): Run {
  return startRun(config, {
    ...(until && { continueAfter: continueUntil(until, config) }),
    ...(interval !== undefined && { interval }),
  });
}

/** Conducts a study here and now, one run after the other. */
export function conduct<Result>(study: Study<Result>): Result {
  let step = study.next();
  while (!step.done) step = study.next(step.value.map(runJob));
  return step.value;
}

/**
 * Conducts a study whose runs are made elsewhere.
 *
 * @param runAll - makes the runs that the study asks for together, in their order; undefined ends the study
 * @returns the result by name, since a study may come to undefined; undefined where it was ended
 */
export function conductWith<Result>(
  study: Study<Result>,
  runAll: (jobs: readonly RunJob[]) => Promise<readonly TimeSeries[]>,
): Promise<{ readonly result: Result }>;
export function conductWith<Result>(
  study: Study<Result>,
  runAll: (jobs: readonly RunJob[]) => Promise<readonly TimeSeries[] | undefined>,
): Promise<{ readonly result: Result } | undefined>;
export async function conductWith<Result>(
  study: Study<Result>,
  runAll: (jobs: readonly RunJob[]) => Promise<readonly TimeSeries[] | undefined>,
): Promise<{ readonly result: Result } | undefined> {
  let step = study.next();
  while (!step.done) {
    const runs = await runAll(step.value);
    if (runs === undefined) return undefined;
    step = study.next(runs);
  }
  return { result: step.value };
}

/** Runs what an answer asks for, here and now. */
export function runJob(job: RunJob): TimeSeries {
  const run = startJob(job);
  while (run.step());
  return run.finish();
}

/** Some studies side by side: what each of them waits for is asked for at once. */
export function* together<Result>(studies: readonly Study<Result>[]): Study<Result[]> {
  let steps = studies.map((study) => study.next());
  while (steps.some(({ done }) => !done)) {
    const runs = yield steps.flatMap((step) => (step.done ? [] : step.value));
    let next = 0;
    steps = steps.map((step, k) => {
      if (step.done) return step;
      const first = next;
      next += step.value.length;
      return studies[k].next(runs.slice(first, next));
    });
  }
  return steps.map(({ value }) => value as Result);
}
