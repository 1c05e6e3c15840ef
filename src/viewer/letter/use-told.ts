import { useComputed } from '@preact/signals';
import { useRef } from 'preact/hooks';
import type { Session } from '../state/session.ts';
import { type ShownRun, shownRuns } from '../time/runs.ts';
import { type Asked, askedChange } from './asked.ts';

/** The runs that a letter tells of, and what it asked them. */
export interface Told {
  readonly runs: readonly ShownRun[];
  readonly asked: Asked;
  /** the cars on the page are others by now: this is what was told before the change */
  readonly isOld: boolean;
}

/** Whole runs of the cars on the page; while there are none, those of before the change of the same file. */
export function useTold(session: Session): Told | undefined {
  const kept = useRef<Told | undefined>(undefined);
  const told = useComputed(() => {
    const runs = shownRuns(session);
    const before = session.before.value;
    if (before === undefined) return undefined;
    const areWhole = runs.every(({ run, car }) => run.kind === 'solved' && run.of === car);
    if (areWhole) {
      kept.current = { runs, asked: askedChange(before, session.after.value), isOld: false };
      return kept.current;
    }
    const old = kept.current;
    return old?.runs[0].car.config.name === before.config.name ? { ...old, isOld: true } : undefined;
  });
  return told.value;
}
