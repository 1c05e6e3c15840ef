import { type ReadonlySignal, useComputed, useSignal, useSignalEffect } from '@preact/signals';
import type { StudyProgress, StudyReply } from '../../../workers/sim-api.ts';
import type { Car, CarRun } from './cars.ts';
import type { Session } from './session.ts';

/** How far a study is; `of` is 0 as long as nothing is known of its length. */
type StudyState =
  | { readonly kind: 'done' | 'cancelled' }
  | { readonly kind: 'working'; readonly done: number; readonly of: number }
  | { readonly kind: 'waiting'; readonly why: string }
  | { readonly kind: 'failed'; readonly message: string };

/** A result and what it holds for. */
export interface FoundStudy<Key, Result> {
  readonly key: Key;
  readonly result: Result;
}

/** What is to be worked out now, or why it has to wait; undefined where there is nothing to ask. */
export type WantedStudy<Key, Result> =
  | {
      readonly key: Key;
      readonly start: (onProgress: (progress: StudyProgress) => void) => Promise<StudyReply<Result>>;
    }
  | { readonly why: string }
  | undefined;

export interface KeptStudy<Key, Result> {
  /** the newest result, of what is wanted now or before */
  readonly found: FoundStudy<Key, Result> | undefined;
  readonly state: StudyState;
  readonly cancel: () => void;
  /** starts again after a cancel */
  readonly ask: () => void;
}

/** Why what takes many runs has to wait; undefined where it need not. */
function whyWait(car: Car | undefined, run: CarRun, isDragging: boolean): string | undefined {
  if (car === undefined) return 'Open a car first.';
  if (isDragging) return 'Worked out when you let go.';
  if (run.kind === 'cancelled') return 'The run was cancelled: finish it first.';
  // The causes come first: they are asked of the same worker.
  const isSettled = run.of === car && (run.kind === 'stopped' || (run.kind === 'solved' && run.study !== undefined));
  return isSettled || run.kind === 'failed' ? undefined : 'Worked out after the run and its causes.';
}

/** The same of the car in hand, as one signal: what else changes in its run does not ask a study anew. */
export const useWhyWait = (session: Session): ReadonlySignal<string | undefined> =>
  useComputed(() => whyWait(session.inHand.value, session.inHandRun.value, session.isDragging.value));

/**
 * Keeps a study up with what it hangs on for as long as it is on screen.
 *
 * @param want - told the key of what was found last; asked again whenever a signal that it reads changes
 * @param end - ends the study that is under way
 */
export function useKeptStudy<Key, Result>(
  want: (foundKey: Key | undefined) => WantedStudy<Key, Result>,
  end: () => void,
): KeptStudy<Key, Result> {
  const found = useSignal<FoundStudy<Key, Result> | undefined>(undefined);
  const state = useSignal<StudyState>({ kind: 'waiting', why: '' });
  /** counted up to ask once more for what was cancelled */
  const asked = useSignal(0);
  useSignalEffect(() => {
    void asked.value;
    const wanted = want(found.peek()?.key);
    if (wanted === undefined) return undefined;
    if ('why' in wanted) {
      state.value = { kind: 'waiting', why: wanted.why };
      return undefined;
    }
    const { key, start } = wanted;
    if (found.peek()?.key === key) {
      state.value = { kind: 'done' };
      return undefined;
    }
    state.value = { kind: 'working', done: 0, of: 0 };
    let isOver = false;
    const tell = (progress: StudyProgress) => {
      if (!isOver && state.peek().kind === 'working') state.value = { kind: 'working', ...progress };
    };
    void start(tell).then((reply) => {
      // A worker that was ended for not listening answers as a failure: cancelled stays cancelled.
      if (isOver || state.peek().kind !== 'working') return;
      isOver = true;
      if (reply.kind === 'studied') found.value = { key, result: reply.result };
      state.value =
        reply.kind === 'failed'
          ? { kind: 'failed', message: reply.message }
          : { kind: reply.kind === 'studied' ? 'done' : 'cancelled' };
    });
    return () => {
      if (isOver) return;
      isOver = true;
      end();
    };
  });
  return {
    found: found.value,
    state: state.value,
    cancel: () => {
      state.value = { kind: 'cancelled' };
      end();
    },
    ask: () => {
      asked.value++;
    },
  };
}
