import { type Config, decidingPull, type PhaseSpan, type PullSummary } from '../../sim/index.ts';
import { clockTime, joined, seconds } from '../format.ts';

/** A phase as the drive cycle plans it, solved or not. */
export interface Phase {
  readonly name: string;
  readonly kind: PhaseSpan['kind'];
  /** s */
  readonly start: number;
  readonly end: number;
  /** number of the pull, from 1: this one, or the last one before it; 0 before the first */
  readonly pull: number;
}

/** Times closer than this are one and the same [s]: the scrubber moves in tenths. */
const SAME_TIME = 0.05;

/** Every phase of a drive cycle in order. */
export function plannedPhases({ before, block, repeats, after }: Config['cycle']): Phase[] {
  const phases: Phase[] = [];
  let start = 0;
  let pull = 0;
  for (const { name, kind, duration } of [...before, ...Array(repeats).fill(block).flat(), ...after]) {
    if (kind === 'pull') pull++;
    phases.push({ name, kind, start, end: start + duration, pull });
    start += duration;
  }
  return phases;
}

export const isPull = ({ kind }: Phase): boolean => kind === 'pull';

/** End of the last phase [s]. */
export const endOf = (phases: readonly Phase[]): number => phases.at(-1)?.end ?? 0;

/** The phase at a time; at a joint the earlier one, so that a pull's end belongs to the pull. */
export function phaseAt(phases: readonly Phase[], time: number): Phase | undefined {
  return phases.find(({ end }) => time <= end) ?? phases[phases.length - 1];
}

/** "pull 1", "warm-up idle", "rest after pull 1" */
export function nameOf({ name, kind, pull }: Phase): string {
  if (kind === 'pull') return `pull ${pull}`;
  return pull === 0 ? name : `${name} after pull ${pull}`;
}

/** Where a time stands: "pull 1, 12.0 s in". */
export function describeTime(phases: readonly Phase[], time: number): string {
  const phase = phaseAt(phases, time);
  return phase === undefined ? '' : `${nameOf(phase)}, ${joined(seconds(Math.max(0, time - phase.start)))} in`;
}

/** "5:12.0, pull 1, 12.0 s in": what a screen reader says of the scrubber. */
export const describeClock = (phases: readonly Phase[], time: number): string =>
  `${clockTime(time)}, ${describeTime(phases, time)}`;

/**
 * Where a step by whole pulls leads: pulls are looked at from their end, where the peak is. Before the first pull's
 * end lies the start of the run, behind the last its end.
 *
 * @param direction - 1 to the next pull, -1 to the one before
 */
export function stepByPull(phases: readonly Phase[], time: number, direction: 1 | -1): number {
  const ends = phases.filter(isPull).map(({ end }) => end);
  if (direction === 1) return ends.find((end) => end > time + SAME_TIME) ?? endOf(phases);
  return ends.reverse().find((end) => end < time - SAME_TIME) ?? 0;
}

/** Where the clock stands when a run is first looked at: at the end of the pull that decides. */
export function startTime(pulls: readonly PullSummary[]): number {
  const deciding = decidingPull(pulls);
  return deciding === undefined ? 0 : deciding.start + deciding.duration;
}
