import { quasiRandom } from '../kernels/quasi-random.ts';
import type { Config } from '../scenario/config.ts';
import type { Scenario } from '../scenario/scenario.ts';
import { toConfig } from '../scenario/to-config.ts';
import { summarisePulls } from './pull-summary.ts';
import { countPulls, decidingPull } from './pulls-to-limit.ts';
import type { Study } from './study.ts';
import { carAt, type UncertainInput, valueAt } from './uncertain-inputs.ts';
import { varianceShares } from './variance-shares.ts';

/** Runs asked for at a time: a long series is kept only until its pulls are read. */
const RUNS_AT_A_TIME = 32;
/** The band leaves out this share of the runs at either end. */
const TAIL = 0.05;

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
 * that decides changes from run to run, and its peak would jump with it. Beside the shares (see `varianceShares`) stand
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
  const { shares, unexplained } = varianceShares(
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

/** Quantiles by the nearest run. */
function bandOf(values: readonly number[]): Band {
  const sorted = values.toSorted((a, b) => a - b);
  const at = (share: number): number => sorted[Math.round(share * (sorted.length - 1))];
  return { low: at(TAIL), middle: at(0.5), high: at(1 - TAIL) };
}
