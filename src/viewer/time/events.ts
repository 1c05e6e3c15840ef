import { clockTime } from '../format.ts';
import type { Phase } from './phases.ts';
import { describeTime } from './phases.ts';
import type { ShownRun } from './runs.ts';

/** Where a compressor cannot hold its target pressure any more, or can again. */
export interface TargetEvent {
  /** s */
  readonly time: number;
  readonly isLost: boolean;
}

/** The events of a run that stand on its line of time. */
export function targetEvents({ run, car }: ShownRun): TargetEvent[] {
  if (run.of !== car) return [];
  return (run.series?.events ?? []).flatMap(({ time, kind }) =>
    kind === 'target pressure lost' || kind === 'target pressure regained'
      ? [{ time, isLost: kind === 'target pressure lost' }]
      : [],
  );
}

/** How many are told one by one. */
const MOST_TOLD = 4;

/** "Target pressure lost at 5:08.3 (pull 1, 8.3 s in)."; '' where it is held all the time. */
export function describeTarget(events: readonly TargetEvent[], phases: readonly Phase[]): string {
  if (events.length === 0) return '';
  const told = events
    .slice(0, MOST_TOLD)
    .map(({ time, isLost }) => `${isLost ? 'lost' : 'regained'} at ${clockTime(time)} (${describeTime(phases, time)})`);
  const more = events.length - told.length;
  return `Target pressure ${told.join(', ')}${more > 0 ? `, and ${more} times more` : ''}.`;
}
