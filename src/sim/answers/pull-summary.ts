import { PEAK_COUNTS_FROM } from '../model/drive-cycle.ts';
import type { ColumnName, PhaseSpan, TimeSeries } from '../results/time-series.ts';

/** After lift the sensor may still rise; its highest reading is looked for this long [s]; own choice. */
const SENSOR_AFTER_LIFT = 15;

/** One wide-open pull of a run, SI. Values "at the end" are those at lift. */
export interface PullSummary {
  /** counted from 1 */
  readonly pull: number;
  readonly name: string;
  readonly block: number;
  /** s */
  readonly start: number;
  readonly duration: number;
  /** highest true charge temperature from 1 s after opening to lift, and when */
  readonly peak: number;
  readonly peakTime: number;
  /** highest true charge temperature of the first second: soaked heat, not counted */
  readonly soakPeak: number;
  readonly indicatedPeak: number;
  /** highest indicated temperature from opening to 15 s after lift: the sensor's lag, not counted */
  readonly indicatedPeakAfterLift: number;
  /** limit less peak [K] */
  readonly margin: number;
  /** share of the pull at which the counted peak first passes the limit; absent where it does not */
  readonly crossedAtShare?: number;
  /** s above the limit, counted part only */
  readonly timeAboveLimit: number;
  readonly coolantIntoCoreAtStart: number;
  readonly atEnd: Readonly<Record<PullEndColumn, number>>;
  /** J from charge air into the core, and J at the compressor shaft */
  readonly heatIntoCore: number;
  readonly driveWork: number;
  /** J and kg of water that condensed in the core */
  readonly latentHeat: number;
  readonly condensate: number;
}

const PULL_END_COLUMNS = [
  'chargeTemperature',
  'indicatedTemperature',
  'airFlow',
  'pressureRatio',
  'manifoldPressure',
  'dischargeTemperature',
  'coreOutletTemperature',
  'drivePower',
  'coreAirDrop',
  'coolantFlow',
  'coolantIntoCore',
  'coolantOutOfCore',
  'reservoirTemperature',
  'iceMass',
  'airToCorePower',
] as const satisfies readonly ColumnName[];
type PullEndColumn = (typeof PULL_END_COLUMNS)[number];

/**
 * Every pull of a run, in order.
 *
 * @param series - a run; a pull that the run ended inside is left out
 * @param limit - charge temperature limit [K]
 */
export function summarisePulls(series: Pick<TimeSeries, 'columns' | 'phases'>, limit: number): PullSummary[] {
  const pulls = series.phases.filter(({ kind, isWhole }) => kind === 'pull' && isWhole);
  return pulls.map((phase, index) => summarisePull(series.columns, phase, index + 1, limit));
}

function summarisePull(columns: TimeSeries['columns'], phase: PhaseSpan, pull: number, limit: number): PullSummary {
  const { firstRow, lastRow, start, end } = phase;
  const { time, chargeTemperature, indicatedTemperature } = columns;
  const countsFrom = Math.min(start + PEAK_COUNTS_FROM, end);
  let peak = Number.NEGATIVE_INFINITY;
  let peakTime = end;
  let soakPeak = Number.NEGATIVE_INFINITY;
  let indicatedPeak = Number.NEGATIVE_INFINITY;
  for (let row = firstRow; row <= lastRow; row++) {
    const temperature = chargeTemperature[row];
    indicatedPeak = Math.max(indicatedPeak, indicatedTemperature[row]);
    if (time[row] <= countsFrom) soakPeak = Math.max(soakPeak, temperature);
    if (time[row] >= countsFrom && temperature > peak) {
      peak = temperature;
      peakTime = time[row];
    }
  }
  let indicatedPeakAfterLift = indicatedPeak;
  for (let row = lastRow + 1; row < time.length && time[row] <= end + SENSOR_AFTER_LIFT; row++) {
    indicatedPeakAfterLift = Math.max(indicatedPeakAfterLift, indicatedTemperature[row]);
  }
  const above = timeAbove(time, chargeTemperature, firstRow, lastRow, countsFrom, limit);
  return {
    pull,
    name: phase.name,
    block: phase.block,
    start,
    duration: end - start,
    peak,
    peakTime,
    soakPeak,
    indicatedPeak,
    indicatedPeakAfterLift,
    margin: limit - peak,
    ...(above.first === undefined ? {} : { crossedAtShare: (above.first - start) / (end - start) }),
    timeAboveLimit: above.total,
    coolantIntoCoreAtStart: columns.coolantIntoCore[firstRow],
    atEnd: Object.fromEntries(PULL_END_COLUMNS.map((name) => [name, columns[name][lastRow]])) as PullSummary['atEnd'],
    heatIntoCore: integrate(time, columns.airToCorePower, firstRow, lastRow),
    latentHeat: integrate(time, columns.condensationPower, firstRow, lastRow),
    condensate: integrate(time, columns.condensateFlow, firstRow, lastRow),
    driveWork: integrate(time, columns.drivePower, firstRow, lastRow),
  };
}

/** When a piecewise-linear temperature is above the limit, counted from `from` on. */
function timeAbove(
  time: Float64Array,
  temperature: Float64Array,
  firstRow: number,
  lastRow: number,
  from: number,
  limit: number,
): { first: number | undefined; total: number } {
  let first: number | undefined;
  let total = 0;
  for (let row = firstRow; row < lastRow; row++) {
    const span = time[row + 1] - time[row];
    if (time[row] < from || span === 0) continue;
    const a = temperature[row] - limit;
    const b = temperature[row + 1] - limit;
    if (a <= 0 && b <= 0) continue;
    const crossing = a * b < 0 ? time[row] + (span * a) / (a - b) : undefined;
    first ??= a > 0 ? time[row] : (crossing ?? time[row]);
    if (crossing === undefined) total += span;
    else total += b > 0 ? time[row + 1] - crossing : crossing - time[row];
  }
  return { first, total };
}

function integrate(time: Float64Array, values: Float64Array, firstRow: number, lastRow: number): number {
  let sum = 0;
  for (let row = firstRow; row < lastRow; row++) {
    sum += 0.5 * (values[row] + values[row + 1]) * (time[row + 1] - time[row]);
  }
  return sum;
}
