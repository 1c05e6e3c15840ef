import { fitLine } from '../kernels/least-squares.ts';
import { quasiRandom } from '../kernels/quasi-random.ts';
import type { Config, Ramp } from '../scenario/config.ts';
import { type Issue, isError, type JsonObject } from '../scenario/issue.ts';
import { onDay } from '../scenario/other-day.ts';
import { COMMON_PRACTICE } from '../scenario/parameters/sources.ts';
import { numberInWords } from '../scenario/row-at.ts';
import type { Scenario } from '../scenario/scenario.ts';
import { toConfig } from '../scenario/to-config.ts';
import { applyChanges } from '../scenario/variants.ts';
import type { FileUnit } from '../units.ts';
import {
  withCoreConductance,
  withIdlePower,
  withPhases,
  withPumpCurve,
  withSwallowingExponent,
} from './car-changes.ts';
import { summarisePulls } from './pull-summary.ts';
import { countPulls, decidingPull } from './pulls-to-limit.ts';
import type { Study } from './study.ts';

/** Runs asked for at a time: a long series is kept only until its pulls are read. */
const RUNS_AT_A_TIME = 32;
/** The band leaves out this share of the runs at either end. */
const TAIL = 0.05;

/** An input that is not known well, and how far it may lie from what the file has. */
export interface UncertainInput {
  readonly name: string;
  /** how low and high are meant: times the value, added to it, or the value itself */
  readonly kind: 'factor' | 'shift' | 'value';
  readonly low: number;
  readonly high: number;
  readonly unit?: FileUnit;
  readonly source: string;
  /** a key of the file, for a range by a user; absent: one of the trade's inputs */
  readonly path?: string;
}

/** Inputs of the trade with their usual ranges, and what one of them does to a car. */
interface TradeInput extends UncertainInput {
  /** keys of the file that a range by a user puts in this one's place */
  readonly insteadOf: readonly string[];
  readonly isThere?: (config: Config) => boolean;
  readonly apply: (config: Config, value: number) => Config;
}

const factor = (share: number) =>
  ({ kind: 'factor', low: 1 - share, high: 1 + share, source: COMMON_PRACTICE }) as const;

const TRADE_INPUTS: readonly TradeInput[] = [
  {
    ...factor(0.15),
    name: 'core conductance, air side',
    insteadOf: ['core.airConductance'],
    apply: (config, value) => withCoreConductance(config, value, 1),
  },
  {
    ...factor(0.15),
    name: 'core conductance, coolant side',
    insteadOf: ['core.coolantConductance'],
    apply: (config, value) => withCoreConductance(config, 1, value),
  },
  {
    ...factor(0.1),
    name: 'pump free flow',
    insteadOf: ['pump.freeFlow'],
    apply: (config, value) => withPumpCurve(config, value, 1),
  },
  {
    ...factor(0.1),
    name: 'pump shut-off pressure',
    insteadOf: ['pump.shutOffPressure'],
    apply: (config, value) => withPumpCurve(config, 1, value),
  },
  {
    ...factor(0.25),
    name: 'air speed at the exchanger',
    insteadOf: ['exchanger.ramShare'],
    isThere: ({ exchanger }) => exchanger !== undefined,
    apply: withAirSpeed,
  },
  {
    kind: 'factor',
    low: 0.5,
    high: 2,
    source: COMMON_PRACTICE,
    name: 'compressor idle power',
    insteadOf: ['compressor.idlePower'],
    apply: withIdlePower,
  },
  {
    kind: 'value',
    low: 0,
    high: 0.5,
    source: COMMON_PRACTICE,
    name: 'swallowing exponent',
    insteadOf: ['engine.temperatureExponent'],
    apply: withSwallowingExponent,
  },
];

/** Outside air moves with the phases and with the start temperatures that follow it, so it goes through the file. */
const OUTSIDE: UncertainInput = {
  kind: 'shift',
  low: -3,
  high: 3,
  unit: 'K',
  source: COMMON_PRACTICE,
  name: 'outside temperature',
};

const scaled = ({ from, to }: Ramp, by: number): Ramp => ({ from: by * from, to: by * to });

function withAirSpeed(config: Config, by: number): Config {
  return withPhases(config, (phase) => ({
    ...phase,
    exchangerAir: { ...phase.exchangerAir, speed: scaled(phase.exchangerAir.speed, by) },
    secondExchangerAir: { ...phase.secondExchangerAir, speed: scaled(phase.secondExchangerAir.speed, by) },
  }));
}

/** A range that a user gives a key of the file, in the file's unit. */
export interface OwnRange {
  readonly path: string;
  readonly low: number;
  readonly high: number;
}

/** The trade's inputs that a car has, and a user's own, which go before those on the same key. */
export function uncertainInputs(scenario: Scenario, own: readonly OwnRange[]): UncertainInput[] {
  const config = toConfig(scenario);
  const paths = own.map(({ path }) => path);
  const trade = TRADE_INPUTS.filter(
    ({ insteadOf, isThere }) => !insteadOf.some((path) => paths.includes(path)) && (isThere?.(config) ?? true),
  ).map(({ insteadOf: _, isThere: __, apply: ___, ...input }) => input);
  return [
    ...trade,
    ...(paths.includes('ambient.temperature') ? [] : [OUTSIDE]),
    ...own.map(({ path, low, high }): UncertainInput => {
      const { label: name, ...unit } = numberInWords(path);
      return { name, path, kind: 'value', low, high, ...unit, source: 'as given' };
    }),
  ];
}

/** A factor runs evenly by its logarithm where its ends are each other's inverse, all else evenly as it stands. */
function valueAt({ kind, low, high }: UncertainInput, place: number): number {
  const isByRatio = kind === 'factor' && Math.abs(low * high - 1) < 1e-9;
  return isByRatio ? low * (high / low) ** place : low + (high - low) * place;
}

/** The car with each input at its place between low (0) and high (1); an input left out is as the file has it. */
function carAt(
  scenario: Scenario,
  inputs: readonly UncertainInput[],
  places: readonly (number | undefined)[],
): { readonly config?: Config; readonly issues: readonly Issue[] } {
  const changes: Record<string, number> = {};
  let shift: number | undefined;
  const factors: ((config: Config) => Config)[] = [];
  inputs.forEach((input, k) => {
    const place = places[k];
    if (place === undefined) return;
    const value = valueAt(input, place);
    const trade = TRADE_INPUTS.find(({ name }) => name === input.name);
    if (input.path !== undefined) changes[input.path] = value;
    else if (trade === undefined) shift = value;
    else factors.push((config) => trade.apply(config, value));
  });
  const temperature = shift === undefined ? undefined : scenario.values.ambient.temperature + shift;
  const changed = withChanges(scenario, changes);
  if (changed.scenario === undefined) return { issues: changed.issues };
  const there = onDay(changed.scenario, temperature === undefined ? {} : { temperature });
  if (there.scenario === undefined) return { issues: there.issues };
  const config = factors.reduce((changed, apply) => apply(changed), toConfig(there.scenario));
  return { config: scenario.measuredOn === undefined ? withOwnMeter(config) : config, issues: [] };
}

/**
 * What is not known well is no change of the car: its meter read what it read whatever pump and loop really are. How
 * well the meter is known is a range of its own, of `pump.measuredFlow`.
 */
function withOwnMeter(config: Config): Config {
  if (config.measuredFlow === undefined) return config;
  const { on: _, ...measuredFlow } = config.measuredFlow;
  return { ...config, measuredFlow };
}

const withChanges = (scenario: Scenario, changes: JsonObject) =>
  Object.keys(changes).length === 0 ? { scenario, issues: [] } : applyChanges(scenario, 'changed values', changes);

/** What is wrong with the ranges: errors that one input alone brings about at one of its ends. */
export function issuesOfRanges(scenario: Scenario, inputs: readonly UncertainInput[]): Issue[] {
  return inputs.flatMap((_, k) =>
    [0, 1].flatMap((place) => {
      const { issues } = carAt(
        scenario,
        inputs,
        inputs.map((__, other) => (other === k ? place : undefined)),
      );
      return issues.filter(isError);
    }),
  );
}

/** One run of the sample. */
interface SampleRun {
  /** value of each input, in the order of the inputs */
  readonly values: readonly number[];
  /** absent where the file refuses these values together, or where the run does not come to the deciding pull */
  readonly result?: { readonly count: number; readonly peak: number };
}

interface Band {
  /** 5 % of the runs lie below, half, 95 % */
  readonly low: number;
  readonly middle: number;
  readonly high: number;
}

export interface RankedInput {
  readonly input: UncertainInput;
  /** share of the variance of the peak that goes with this input in a straight line */
  readonly share: number;
  /** peak with this input alone at its low and its high end, K; absent where that run does not come so far */
  readonly peakAtLow?: number;
  readonly peakAtHigh?: number;
}

export interface Sensitivity {
  readonly inputs: readonly UncertainInput[];
  /** the deciding pull of the car as typed; every peak here is that of this pull */
  readonly pull: number;
  readonly limit: number;
  readonly typed: { readonly count: number; readonly peak: number };
  readonly count: Band & { readonly lowest: number; readonly highest: number };
  readonly peak: Band;
  /** largest share first: what to measure next */
  readonly ranking: readonly RankedInput[];
  /** share of the variance that no straight line in the inputs explains: curvature and inputs that act together */
  readonly unexplained: number;
  readonly runs: readonly SampleRun[];
  readonly unusable: number;
}

/**
 * How far the pulls to the limit and the deciding peak may be off when inputs are not known well, and which to measure
 * next.
 *
 * All inputs are drawn at once, evenly over their ranges, from a quasi-random sequence; the bands are quantiles of
 * those runs. What is ranked is the peak of one pull in every run, that which decides in the car as typed: the pull
 * that decides changes from run to run, and its peak would jump with it. Beside the shares (see `sharesOfSpread`) stand
 * two runs of each input alone at the ends of its range, all else as typed.
 *
 * @param scenario - the car as typed
 * @param inputs - of `uncertainInputs`, without issues at their ends
 * @param runs - size of the sample, above the count of inputs
 * @param seed - shifts the sequence
 * @returns undefined where the car as typed has no whole pull, or too few runs come to it for a ranking
 */
export function* studySensitivity(
  scenario: Scenario,
  inputs: readonly UncertainInput[],
  runs: number,
  seed: number,
): Study<Sensitivity | undefined> {
  const config = toConfig(scenario);
  const limit = config.limit.chargeTemperature;
  const [series] = yield [{ config }];
  const pulls = summarisePulls(series, limit);
  const deciding = decidingPull(pulls);
  if (deciding === undefined) return undefined;

  const points = quasiRandom(inputs.length, seed);
  const sample = Array.from({ length: runs }, (_, n) => points(n));
  const alone = inputs.flatMap((_, k) =>
    [0, 1].map((end) => inputs.map((__, other) => (other === k ? end : undefined))),
  );
  const results = yield* studyCars(
    [...sample, ...alone].map((places) => () => carAt(scenario, inputs, places).config),
    deciding.pull,
  );
  const used = sample.map((point, n) => ({ point, result: results[n] })).filter(({ result }) => result !== undefined);
  if (used.length <= inputs.length + 1) return undefined;
  const counts = used.map(({ result }) => result?.count ?? Number.NaN);
  const peaks = used.map(({ result }) => result?.peak ?? Number.NaN);
  const { shares, unexplained } = sharesOfSpread(
    used.map(({ point }) => point),
    peaks,
  );
  const ranking = inputs.map((input, k): RankedInput => {
    const [low, high] = [0, 1].map((end) => results[runs + 2 * k + end]?.peak);
    return {
      input,
      share: shares[k],
      ...(low !== undefined && { peakAtLow: low }),
      ...(high !== undefined && { peakAtHigh: high }),
    };
  });
  return {
    inputs,
    pull: deciding.pull,
    limit,
    typed: { count: countPulls(pulls), peak: deciding.peak },
    count: { ...bandOf(counts), lowest: Math.min(...counts), highest: Math.max(...counts) },
    peak: bandOf(peaks),
    ranking: ranking.sort((a, b) => b.share - a.share),
    unexplained,
    runs: sample.map((point, n) => ({
      values: inputs.map((input, k) => valueAt(input, point[k])),
      ...(results[n] && { result: results[n] }),
    })),
    unusable: runs - used.length,
  };
}

type CarResult = SampleRun['result'];

/** Count and peak of pull `pull` of each car, a few at a time: made, run and forgotten. */
function* studyCars(cars: readonly (() => Config | undefined)[], pull: number): Study<CarResult[]> {
  const results: CarResult[] = [];
  for (let first = 0; first < cars.length; first += RUNS_AT_A_TIME) {
    const some = cars.slice(first, first + RUNS_AT_A_TIME).map((make) => make());
    const known = some.filter((config) => config !== undefined);
    const series = known.length === 0 ? [] : yield known.map((config) => ({ config }));
    for (const config of some) {
      const run = config && series[known.indexOf(config)];
      const pulls = config && run ? summarisePulls(run, config.limit.chargeTemperature) : [];
      const peak = pulls[pull - 1]?.peak;
      results.push(peak === undefined ? undefined : { count: countPulls(pulls), peak });
    }
  }
  return results;
}

/**
 * What share of the variance of a result goes with each input: the squares of the standardised regression coefficients.
 *
 *     y = b_0 + sum b_i x_i + rest,   share_i = (b_i^2/12) / (sum b_j^2/12 + variance of the rest)
 *
 * x_i runs evenly from 0 to 1, with variance 1/12. Exact for a straight-line model whatever the points; where the model
 * is curved or inputs act together, the shares and `unexplained` still add up to 1, and `unexplained` says how much the
 * ranking leaves open. Not a rank correlation: peaks here are nearly straight in these inputs.
 *
 * @param points - rows of x, each 0 to 1, more rows than inputs + 1
 * @param results - y of each row
 * @returns shares in the order of the inputs; all 0 where the result does not vary
 *
 * @example
 * sharesOfSpread([[0, 0], [1, 0], [0, 1], [1, 1]], [0, 2, 1, 3]).shares // [0.8, 0.2]
 *
 * [1] A. Saltelli et al., Global Sensitivity Analysis: The Primer, Wiley, 2008, section 1.2.5.
 */
export function sharesOfSpread(
  points: readonly (readonly number[])[],
  results: readonly number[],
): { readonly shares: readonly number[]; readonly unexplained: number } {
  const [level, ...slopes] = fitLine(points, results);
  const rest = points.map((point, row) =>
    slopes.reduce((sum, slope, axis) => sum - slope * point[axis], results[row] - level),
  );
  const restVariance = rest.reduce((sum, each) => sum + each ** 2, 0) / rest.length;
  const parts = slopes.map((slope) => slope ** 2 / 12);
  const total = parts.reduce((sum, part) => sum + part, restVariance);
  if (!(total > 0)) return { shares: parts, unexplained: 0 };
  return { shares: parts.map((part) => part / total), unexplained: restVariance / total };
}

/** Quantiles by the nearest run. */
function bandOf(values: readonly number[]): Band {
  const sorted = values.toSorted((a, b) => a - b);
  const at = (share: number): number => sorted[Math.round(share * (sorted.length - 1))];
  return { low: at(TAIL), middle: at(0.5), high: at(1 - TAIL) };
}
