import { type PullSummary, summarisePulls } from '../../sim/index.ts';
import type { Car, CarRole, CarRun } from '../state/cars.ts';
import type { Session } from '../state/session.ts';
import { endOf, type Phase, plannedPhases } from './phases.ts';

/** One of the two cars with what is known of its run, as band and plots show it. */
export interface ShownRun {
  readonly which: CarRole;
  readonly car: Car;
  readonly run: CarRun;
  readonly pulls: readonly PullSummary[];
  /** nothing behind this time is known [s] */
  readonly solvedTo: number;
  readonly phases: readonly Phase[];
}

/** The cars on screen, Before first. */
export function shownRuns(session: Session): ShownRun[] {
  const isDragging = session.isDragging.value;
  const runs: ShownRun[] = [];
  const { value: before } = session.before;
  const { value: after } = session.after;
  if (before !== undefined) runs.push(shownRun('before', before, session.beforeRun.value, isDragging));
  if (after !== undefined) runs.push(shownRun('after', after, session.afterRun.value, isDragging));
  return runs;
}

/**
 * What of a run is shown. Under a moving finger the last whole answer stays until the next is whole: bars that come
 * and go with every value would say nothing.
 */
function shownRun(which: CarRole, car: Car, run: CarRun, isDragging: boolean): ShownRun {
  const { series, of } = run;
  const phases = plannedPhases(car.config.cycle);
  const end = endOf(phases);
  if (run.kind === 'running' && series !== undefined && of !== undefined && (isDragging || run.time === 0)) {
    const pulls = summarisePulls(series, of.config.limit.chargeTemperature);
    return { which, car, run, pulls, phases, solvedTo: series.outcome.kind === 'finished' ? end : lastTime(series) };
  }
  const solvedTo = run.kind === 'solved' ? end : run.time;
  return { which, car, run, pulls: run.pulls, phases, solvedTo };
}

const lastTime = ({ columns, rowCount }: NonNullable<CarRun['series']>): number => columns.time[rowCount - 1];

/** The run that edits go to. */
export const inHand = (runs: readonly ShownRun[]): ShownRun | undefined => runs[runs.length - 1];

/** How long the line of time is: as long as the longer of both cycles [s]. */
export const lengthOf = (runs: readonly ShownRun[]): number => Math.max(0, ...runs.map(({ phases }) => endOf(phases)));
