import type { Config } from '../scenario/config.ts';
import { isError } from '../scenario/issue.ts';
import { onDay } from '../scenario/other-day.ts';
import type { Scenario } from '../scenario/scenario.ts';
import { toConfig } from '../scenario/to-config.ts';
import type { Sentence } from '../sentence.ts';
import { fromSi, toSi } from '../units.ts';
import { countingJob, countRun } from './count-run.ts';
import { summarisePulls } from './pull-summary.ts';
import { conductanceBand, countPulls, decidingPull } from './pulls-to-limit.ts';
import type { Study } from './study.ts';

/** Days that are looked at, and the step from the day asked about until one is made and one is not; tenths of a K. */
const COLDEST = -400;
const HOTTEST = 600;
const STEP = 50;
/** How near the hottest day is found [K]. */
export const RESOLUTION = 0.1;

/** Pulls to the limit on one day; SI. */
export interface DayPulls {
  /** outside at the start: K, Pa, share */
  readonly temperature: number;
  readonly pressure: number;
  readonly relativeHumidity: number;
  readonly count: number;
  readonly pullsRun: number;
  /** the pull that breaks the limit, else the earliest within 0.05 K of the hottest; absent where there is no pull */
  readonly deciding?: { readonly pull: number; readonly peak: number; readonly margin: number };
  /** with both core conductances 5 % lower and 5 % higher: the count, and the peak of the same pull where it is run */
  readonly lower: BandEnd;
  readonly higher: BandEnd;
  /** why the run ended early */
  readonly stopped?: Sentence;
}

interface BandEnd {
  readonly count: number;
  readonly peak?: number;
}

/** Why a day is one too hot, or no day will do. */
export type NotMade =
  | { readonly kind: 'limit'; readonly pull: number }
  | { readonly kind: 'stopped'; readonly reason: Sentence }
  | { readonly kind: 'refused'; readonly message: string };

/** Outside temperatures in whole tenths of a degC, as K. */
export type HottestDay =
  /** made at `temperature`, not made 0.1 K above it */
  | { readonly kind: 'found'; readonly temperature: number; readonly beyond: NotMade }
  | { readonly kind: 'made on every day'; readonly upTo: number }
  | { readonly kind: 'made on no day'; readonly downTo: number; readonly because: NotMade }
  | TooFewPulls;

/** The cycle has fewer pulls and repeats none. */
interface TooFewPulls {
  readonly kind: 'too few pulls';
  readonly pulls: number;
}

export interface DayStudy {
  readonly limit: number;
  readonly typed: DayPulls;
  readonly day: DayPulls;
  /** pulls that the hottest day is about */
  readonly pulls: number;
  readonly hottest: HottestDay;
  /**
   * pulls in a row, at most `pulls`, on days every 5 K about those above; days that the file does not allow left out
   */
  readonly curve: readonly { readonly temperature: number; readonly count: number }[];
  readonly typedStart: TypedStart;
}

/** Parts whose start temperature is that of the air outside where none is typed; the rest follow these. */
const START_PARTS = ['coolant', 'casing', 'plenum'] as const;
/** Temperatures at the start that a file types, K: they are the same on every day. */
export type TypedStart = Readonly<Partial<Record<(typeof START_PARTS)[number], number>>>;

export function typedStart({ values: { start } }: Scenario, config: Config): TypedStart {
  return Object.fromEntries(
    START_PARTS.filter((part) => start[part] !== undefined).map((part) => [part, config.start[part]]),
  );
}

/**
 * A car as typed and on another day, and the hottest day on which it still makes so many pulls.
 *
 * The hottest day is looked for at the altitude and humidity of the day asked about: in steps of 5 K, up from that day
 * while the pulls are made or down while they are not, then by halving to 0.1 K. It is taken for granted that between
 * two days tried a hotter one never makes more pulls; tests hold that against every single degree.
 *
 * @param typed - the car as its file has it
 * @param there - the same car on the other day, of `onDay`
 * @param pulls - how many it must make; more than the cycle has repeat its block on
 */
export function* studyDay(typed: Scenario, there: Scenario, pulls: number): Study<DayStudy> {
  const config = toConfig(there);
  const before = toConfig(typed);
  const hottest = yield* studyHottestDay(there, pulls);
  const shown = [before.ambient.temperature, config.ambient.temperature];
  if (hottest.kind === 'found') shown.push(hottest.temperature);
  return {
    limit: config.limit.chargeTemperature,
    typed: yield* studyDayPulls(before),
    day: yield* studyDayPulls(config),
    pulls,
    hottest,
    curve: yield* studyCurve(there, shown, pulls),
    typedStart: typedStart(typed, before),
  };
}

/**
 * Pulls on days every {@link STEP}, from a step or more below the coldest of some days [K] to one above the hottest.
 */
function* studyCurve(scenario: Scenario, shown: readonly number[], pulls: number): Study<DayStudy['curve']> {
  const tenths = shown.map((each) => Math.round(10 * fromSi(each, 'degC')));
  const first = Math.max(COLDEST, STEP * (Math.floor(Math.min(...tenths) / STEP) - 1));
  const last = Math.min(HOTTEST, STEP * (Math.ceil(Math.max(...tenths) / STEP) + 1));
  const days = Array.from({ length: (last - first) / STEP + 1 }, (_, k) => first + STEP * k).flatMap((at) => {
    const { scenario: there } = dayAt(scenario, at);
    return there === undefined ? [] : [{ at, config: toConfig(there) }];
  });
  const runs = yield days.map(({ config }) => countingJob(config, pulls));
  return days.map(({ at, config }, k) => ({ temperature: kelvin(at), count: countRun(config, runs[k]).count }));
}

function* studyDayPulls(config: Config): Study<DayPulls> {
  const limit = config.limit.chargeTemperature;
  const runs = yield [config, ...conductanceBand(config)].map((each) => ({ config: each }));
  const [pulls, lower, higher] = runs.map((run) => summarisePulls(run, limit));
  const { outcome } = runs[0];
  const deciding = decidingPull(pulls);
  const end = (list: typeof pulls): BandEnd => {
    const peak = deciding && list[deciding.pull - 1]?.peak;
    return { count: countPulls(list), ...(peak === undefined ? {} : { peak }) };
  };
  return {
    ...config.ambient,
    count: countPulls(pulls),
    pullsRun: pulls.length,
    ...(deciding && { deciding: { pull: deciding.pull, peak: deciding.peak, margin: deciding.margin } }),
    lower: end(lower),
    higher: end(higher),
    ...(outcome.kind === 'stopped' && { stopped: outcome.reason }),
  };
}

/** The hottest day, to a tenth of a degC, on which a car makes `pulls` pulls. */
export function* studyHottestDay(scenario: Scenario, pulls: number): Study<HottestDay> {
  let at = Math.min(Math.max(Math.round(10 * scenario.values.ambient.temperature), COLDEST), HOTTEST);
  let made: number | undefined;
  let missed: { readonly at: number; readonly why: NotMade } | undefined;
  while (made === undefined || missed === undefined || missed.at - made > 1) {
    const why = yield* whyNotMade(scenario, at, pulls);
    if (why?.kind === 'too few pulls') return why;
    if (why === undefined) made = at;
    else missed = { at, why };
    if (made === HOTTEST) return { kind: 'made on every day', upTo: kelvin(HOTTEST) };
    if (missed?.at === COLDEST) return { kind: 'made on no day', downTo: kelvin(COLDEST), because: missed.why };
    if (missed === undefined) at = Math.min(at + STEP, HOTTEST);
    else if (made === undefined) at = Math.max(at - STEP, COLDEST);
    else at = Math.floor((made + missed.at) / 2);
  }
  return { kind: 'found', temperature: kelvin(made), beyond: missed.why };
}

const kelvin = (tenths: number): number => toSi(tenths / 10, 'degC');
const dayAt = (scenario: Scenario, tenths: number) => onDay(scenario, { temperature: tenths / 10 });

/** Why a car does not make `pulls` pulls at so many tenths of a degC outside; undefined where it does. */
function* whyNotMade(scenario: Scenario, tenths: number, pulls: number): Study<NotMade | TooFewPulls | undefined> {
  const { scenario: there, issues } = dayAt(scenario, tenths);
  if (there === undefined) return { kind: 'refused', message: issues.find(isError)?.message ?? 'refused' };
  const config = toConfig(there);
  const [series] = yield [countingJob(config, pulls)];
  const run = countRun(config, series);
  if (run.count < run.pulls.length) return { kind: 'limit', pull: run.count + 1 };
  if (run.stoppedBecause !== undefined) return { kind: 'stopped', reason: run.stoppedBecause };
  return run.count < pulls ? { kind: 'too few pulls', pulls: run.count } : undefined;
}
