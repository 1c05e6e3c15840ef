import { quasiRandom } from '../kernels/quasi-random.ts';
import type { TimeSeries } from '../results/time-series.ts';
import { isError, type JsonObject, type JsonValue } from '../scenario/issue.ts';
import type { Scenario } from '../scenario/scenario.ts';
import { toConfig } from '../scenario/to-config.ts';
import { applyChanges } from '../scenario/variants.ts';
import type { Sentence } from '../sentence.ts';
import { fromSi } from '../units.ts';
import { type PullSummary, summarisePulls } from './pull-summary.ts';
import { countPulls, decidingPull, type SettledPeak, studySettledPeak } from './pulls-to-limit.ts';
import { type Study, together } from './study.ts';

/** A key of the file and the values it takes in turn, or the range its values are drawn from. */
export type SweepAxis =
  | { readonly path: string; readonly values: readonly JsonValue[] }
  | { readonly path: string; readonly low: number; readonly high: number };
export type GridAxis = Extract<SweepAxis, { values: unknown }>;
export type RangeAxis = Extract<SweepAxis, { low: unknown }>;

export const isRange = (axis: SweepAxis): axis is RangeAxis => 'low' in axis;
export const isGridAxis = (axis: SweepAxis): axis is GridAxis => 'values' in axis;

/** Cases of a sweep, counted from 0; any one can be asked for alone, so that no list of them is ever held. */
export interface SweepPlan {
  readonly count: number;
  readonly changesOf: (index: number) => Readonly<Record<string, JsonValue>>;
}

/** Every combination; the last axis moves fastest. */
export function gridPlan(axes: readonly GridAxis[]): SweepPlan {
  return {
    count: axes.reduce((product, { values }) => product * values.length, 1),
    changesOf: (index) => {
      let rest = index;
      const chosen = axes.toReversed().map(({ path, values }) => {
        const value = values[rest % values.length];
        rest = Math.floor(rest / values.length);
        return [path, value] as const;
      });
      return Object.fromEntries(chosen.reverse());
    },
  };
}

/** Quasi-random points of all ranges at once; another seed shifts them, and more of them keep the first. */
export function samplePlan(axes: readonly RangeAxis[], count: number, seed: number): SweepPlan {
  const points = quasiRandom(axes.length, seed);
  return {
    count,
    changesOf: (index) => {
      const point = points(index);
      return Object.fromEntries(axes.map(({ path, low, high }, k) => [path, plainly(low + (high - low) * point[k])]));
    },
  };
}

/** `count` values from low to high, both among them. */
export function evenly(low: number, high: number, count: number): number[] {
  return Array.from({ length: count }, (_, k) => plainly(low + ((high - low) * k) / (count - 1)));
}

/** Without the crumbs of binary fractions: 0.3, not 0.30000000000000004. */
const plainly = (value: number): number => Number(value.toPrecision(12));

/** What a line tells of one case, before it has a number and is written in units. */
export interface SweepResult extends Omit<SweepLine, 'case' | 'car' | 'stopped_because'> {
  readonly stoppedBecause?: Sentence;
}

/** One case of a sweep as a line of its file: units in the keys, what did not happen left out. Plain data. */
export interface SweepLine {
  readonly case: number;
  /** marks the car that was swept, so that lines of another are not taken for these */
  readonly car: string;
  readonly changes: JsonObject;
  /** the file refuses the changes: every error */
  readonly refused?: readonly string[];
  /** the run broke off by a fault of the program */
  readonly failed?: string;
  readonly pulls?: number;
  readonly pulls_run?: number;
  readonly deciding_pull?: number;
  readonly deciding_peak_degC?: number;
  readonly deciding_margin_K?: number;
  readonly hottest_peak_degC?: number;
  /** of the block repeated on */
  readonly settled?: SettledPeak['kind'];
  readonly settled_peak_degC?: number;
  readonly first_pull_over_limit_when_repeated?: number;
  readonly coolant_flow_at_end_of_first_pull_L_min?: number;
  readonly outcome?: TimeSeries['outcome']['kind'];
  readonly stopped_at_s?: number;
  readonly stopped_because?: string;
}

/**
 * Runs one case: the car with the changes, and its block repeated on until it settles.
 *
 * @param scenario - the car that is swept
 * @param changes - at least one path of its file with a new value
 */
export function* studySweepCase(scenario: Scenario, changes: JsonObject): Study<SweepResult> {
  const { scenario: changed, issues } = applyChanges(scenario, 'changed values', changes);
  if (changed === undefined) {
    return { changes, refused: issues.filter(isError).map(({ message }) => message) };
  }
  const config = toConfig(changed);
  const [series] = yield [{ config }];
  const pulls = summarisePulls(series, config.limit.chargeTemperature);
  const settled = yield* studySettledPeak(config);
  const { outcome } = series;
  return {
    changes,
    pulls: countPulls(pulls),
    pulls_run: pulls.length,
    ...decidingLine(decidingPull(pulls)),
    ...(pulls.length > 0 && { hottest_peak_degC: fromSi(Math.max(...pulls.map(({ peak }) => peak)), 'degC') }),
    ...settledLine(settled),
    ...(pulls.length > 0 && { coolant_flow_at_end_of_first_pull_L_min: fromSi(pulls[0].atEnd.coolantFlow, 'L/min') }),
    outcome: outcome.kind,
    ...(outcome.kind === 'stopped' && { stopped_at_s: outcome.time, stoppedBecause: outcome.reason }),
  };
}

/** Cases that are under way together: enough for many cores, few enough to hold their runs. */
const CASES_TOGETHER = 16;

/** Runs every case of a grid; results in the order of the plan. */
export function* studyGrid(scenario: Scenario, axes: readonly GridAxis[]): Study<SweepResult[]> {
  const { count, changesOf } = gridPlan(axes);
  const results: SweepResult[] = [];
  while (results.length < count) {
    const some = Array.from({ length: Math.min(CASES_TOGETHER, count - results.length) }, (_, k) =>
      studySweepCase(scenario, changesOf(results.length + k)),
    );
    results.push(...(yield* together(some)));
  }
  return results;
}

function decidingLine(deciding: PullSummary | undefined): Partial<SweepLine> {
  return deciding === undefined
    ? {}
    : {
        deciding_pull: deciding.pull,
        deciding_peak_degC: fromSi(deciding.peak, 'degC'),
        deciding_margin_K: deciding.margin,
      };
}

function settledLine(settled: SettledPeak): Partial<SweepLine> {
  if (settled.kind === 'no repeated pulls') return { settled: settled.kind };
  const { kind, peak, firstOverLimit } = settled;
  return {
    settled: kind,
    settled_peak_degC: fromSi(peak, 'degC'),
    ...(firstOverLimit !== undefined && { first_pull_over_limit_when_repeated: firstOverLimit }),
  };
}
