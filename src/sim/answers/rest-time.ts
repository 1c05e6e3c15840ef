import type { PhaseConfig } from '../scenario/config/cycle.ts';
import type { Config } from '../scenario/config.ts';
import type { Sentence } from '../sentence.ts';
import { countingJob, countRun } from './count-run.ts';
import { smallestEnough } from './halving.ts';
import { summarisePulls } from './pull-summary.ts';
import type { Study } from './study.ts';

export interface RestStudy {
  /** pulls asked for */
  readonly pulls: number;
  /** s between two pulls as the cycle has it; all phases of the repeated block that are no pull */
  readonly now: number;
  /** pulls to the limit with it, at most those asked for */
  readonly countNow: number;
  /** shortest rest that makes them [s]; absent where none tried does */
  readonly needed?: number;
  /** rests tried [s], shortest first, with the pulls that each makes, at most those asked for */
  readonly curve: readonly { readonly rest: number; readonly count: number }[];
  /** s after the first pull until coolant enters the core within 3 K of where it began; absent: not within an hour */
  readonly recovery?: number;
  /** why the run of that pull and the hour after it ended early: then nothing is known of the recovery */
  readonly recoveryStopped?: Sentence;
}

/** Times the rest of the cycle, from next to none to twenty times as long; own choice. */
const FACTORS = [0.02, 0.05, 0.1, 0.2, 0.35, 0.5, 0.7, 1, 1.5, 2, 3, 5, 8, 12, 20];
/** s; own choice */
const FOUND_TO = 1;
/** K: back within it, a pull begins as the one before did: the usual stop of a log on rollers, common practice */
export const RECOVERED_WITHIN = 3;
const RECOVERY_LIMIT = 3600;
const RECOVERY_INTERVAL = 1;

/** The same car whose rests in the repeated block last `factor` times as long. */
export function withRest(config: Config, factor: number): Config {
  const stretched = (phase: PhaseConfig) =>
    phase.kind === 'pull' ? phase : { ...phase, duration: factor * phase.duration };
  return { ...config, cycle: { ...config.cycle, block: config.cycle.block.map(stretched) } };
}

/**
 * Shortest rest between pulls with which `pulls` of them stay under the limit, by halving below the first that does of
 * some between a fiftieth and twenty times the rest of the cycle; and how long the coolant takes to recover from one
 * pull.
 *
 * @returns undefined where the cycle does not repeat a pull and a rest
 */
export function* studyRest(config: Config, pulls: number): Study<RestStudy | undefined> {
  const now = config.cycle.block.reduce((sum, { kind, duration }) => (kind === 'pull' ? sum : sum + duration), 0);
  if (now === 0 || !config.cycle.block.some(({ kind }) => kind === 'pull')) return undefined;

  function* countAt(factors: readonly number[]): Study<number[]> {
    const cars = factors.map((factor) => withRest(config, factor));
    const runs = yield cars.map((car) => countingJob(car, pulls));
    return runs.map((series, k) => Math.min(pulls, countRun(cars[k], series).count));
  }

  const counts = yield* countAt(FACTORS);
  const made = counts.findIndex((count) => count >= pulls);
  const isEnough = function* (factor: number): Study<boolean> {
    const [count] = yield* countAt([factor]);
    return count >= pulls;
  };
  const needed =
    made < 0
      ? undefined
      : now * (yield* smallestEnough(FACTORS[Math.max(0, made - 1)], FACTORS[made], FOUND_TO / now, isEnough));
  const recovery = yield* studyRecovery(config);
  return {
    pulls,
    now,
    countNow: counts[FACTORS.indexOf(1)],
    ...(needed !== undefined && { needed }),
    curve: FACTORS.map((factor, k) => ({ rest: factor * now, count: counts[k] })),
    ...recovery,
  };
}

/** The first pull, then its rest for an hour. */
function* studyRecovery(config: Config): Study<Pick<RestStudy, 'recovery' | 'recoveryStopped'>> {
  const { before, block } = config.cycle;
  const all = [...before, ...block];
  const pull = all.findIndex(({ kind }) => kind === 'pull');
  const rest = [...all.slice(pull + 1), ...block].find(({ kind }) => kind !== 'pull');
  if (rest === undefined) return {};
  const phases = [...all.slice(0, pull + 1), { ...rest, duration: RECOVERY_LIMIT }];
  const [series] = yield [
    {
      config: { ...config, cycle: { before: phases, block: [], repeats: 0, after: [] } },
      interval: RECOVERY_INTERVAL,
    },
  ];
  const { outcome } = series;
  if (outcome.kind === 'stopped') return { recoveryStopped: outcome.reason };
  const [first] = summarisePulls(series, config.limit.chargeTemperature);
  const { time, coolantIntoCore } = series.columns;
  const lift = first.start + first.duration;
  const from = time.findIndex((t, row) => t >= lift && row > 0 && time[row - 1] === lift);
  // Looked for from the end: it may pass through on the way to its highest, which comes after the pull.
  let row = series.rowCount - 1;
  while (row > from && coolantIntoCore[row] <= first.coolantIntoCoreAtStart + RECOVERED_WITHIN) row--;
  return row === series.rowCount - 1 ? {} : { recovery: time[row] - lift };
}
