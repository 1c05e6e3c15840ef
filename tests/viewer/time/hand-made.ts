import type { ColumnName, PullSummary, TimeSeries } from '../../../src/sim/index.ts';
import type { Car } from '../../../src/viewer/state/cars.ts';
import { NO_RUN } from '../../../src/viewer/state/cars.ts';
import { endOf, isPull, type Phase } from '../../../src/viewer/time/phases.ts';
import type { ShownRun } from '../../../src/viewer/time/runs.ts';

export const DEGREES = 273.15;

/** A minute of idle, then pulls of 12 s with 48 s of rest: pull n ends at 60 n + 12 s. */
export function minutePhases(pulls: number): Phase[] {
  const phases: Phase[] = [{ name: 'warm-up', kind: 'idle', start: 0, end: 60, pull: 0 }];
  for (let pull = 1; pull <= pulls; pull++) {
    phases.push({ name: 'pull', kind: 'pull', start: 60 * pull, end: 60 * pull + 12, pull });
    phases.push({ name: 'rest', kind: 'idle', start: 60 * pull + 12, end: 60 * pull + 60, pull });
  }
  return phases;
}

interface HandMadeRun {
  readonly which?: ShownRun['which'];
  /** degC */
  readonly limit?: number;
  readonly outside?: number;
  /** degC, of the pulls that are solved */
  readonly peaks: readonly number[];
  readonly phases: readonly Phase[];
  readonly solvedTo?: number;
}

/**
 * A run as the page shows it, from peaks alone; a pull over the limit crosses it half way, and a gauge reads 5 K less
 * than the peak at its end.
 */
export function handMadeRun({ which = 'before', limit = 58, outside = 27, peaks, ...rest }: HandMadeRun): ShownRun {
  const planned = rest.phases.filter(isPull);
  const pulls = peaks.map((peak, k) => {
    const { start, end, pull } = planned[k];
    return {
      pull,
      start,
      duration: end - start,
      peak: peak + DEGREES,
      peakTime: end,
      indicatedPeak: peak - 4 + DEGREES,
      atEnd: { indicatedTemperature: peak - 5 + DEGREES },
      margin: limit - peak,
      ...(peak > limit ? { crossedAtShare: 0.5 } : {}),
    } as PullSummary;
  });
  const config = { limit: { chargeTemperature: limit + DEGREES }, ambient: { temperature: outside + DEGREES } };
  return {
    which,
    car: { config } as unknown as Car,
    run: NO_RUN,
    pulls,
    solvedTo: rest.solvedTo ?? endOf(rest.phases),
    phases: rest.phases,
  };
}

/** A series of the given columns [SI]; joints of phases stand where a time comes twice. */
export function handMadeSeries(columns: Partial<Record<ColumnName, readonly number[]>>): TimeSeries {
  const arrays = Object.fromEntries(Object.entries(columns).map(([name, values]) => [name, Float64Array.from(values)]));
  const time = arrays.time;
  const ends = [...time.keys()].filter((row) => row === time.length - 1 || time[row + 1] === time[row]);
  const phases = ends.map((lastRow, k) => {
    const firstRow = k === 0 ? 0 : ends[k - 1] + 1;
    return { name: '', kind: 'idle', start: time[firstRow], end: time[lastRow], firstRow, lastRow, block: 0 };
  });
  return { columns: arrays, rowCount: time.length, phases } as unknown as TimeSeries;
}
