import { type Signal, useSignal, useSignalEffect } from '@preact/signals';
import type { RouteStudy } from '../../sim/index.ts';
import type { PageProps } from '../page.tsx';
import type { Car, CarRun } from '../state/cars.ts';

/** What was worked out, and the car it belongs to. */
export interface Found {
  readonly of: Car;
  readonly study: RouteStudy;
}

type RoutesState =
  | { readonly kind: 'working' | 'cancelled' | 'done' }
  | { readonly kind: 'waiting'; readonly why: string }
  | { readonly kind: 'failed'; readonly message: string };

interface InUse {
  /** the newest result, of this car or of the one before it */
  readonly found: Found | undefined;
  /** whether the result belongs to a car that is no longer in hand */
  readonly isLate: boolean;
  readonly state: RoutesState;
  readonly cancel: () => void;
  /** starts again after a cancel */
  readonly ask: () => void;
}

/** Why what takes many runs has to wait; undefined where it need not. */
export function whyWait(car: Car | undefined, run: CarRun, isDragging: boolean): string | undefined {
  if (car === undefined) return 'Open a car first.';
  if (isDragging) return 'Worked out when you let go.';
  if (run.kind === 'cancelled') return 'The run was cancelled: finish it first.';
  // The causes come first: they are asked of the same worker.
  const isSettled = run.of === car && (run.kind === 'stopped' || (run.kind === 'solved' && run.study !== undefined));
  return isSettled || run.kind === 'failed' ? undefined : 'Worked out after the run and its causes.';
}

/** Keeps the routes up with the car in hand for as long as they are on screen. */
export function useRoutes({ session, solving }: PageProps): InUse {
  const found: Signal<Found | undefined> = useSignal(undefined);
  const state: Signal<RoutesState> = useSignal({ kind: 'waiting', why: '' });
  /** counted up to ask once more for a car that was cancelled */
  const asked = useSignal(0);
  useSignalEffect(() => {
    const car = session.inHand.value;
    const why = whyWait(car, session.inHandRun.value, session.isDragging.value);
    void asked.value;
    if (car === undefined || why !== undefined) {
      state.value = { kind: 'waiting', why: why ?? '' };
      return undefined;
    }
    if (found.peek()?.of === car) {
      state.value = { kind: 'done' };
      return undefined;
    }
    state.value = { kind: 'working' };
    let isOver = false;
    void solving.studyRoutes(car).then((reply) => {
      // A worker that was ended for not listening answers as a failure: cancelled stays cancelled.
      if (isOver || state.peek().kind !== 'working') return;
      isOver = true;
      if (reply.kind === 'studied') found.value = { of: car, study: reply.result };
      state.value =
        reply.kind === 'failed'
          ? { kind: 'failed', message: reply.message }
          : { kind: reply.kind === 'studied' ? 'done' : 'cancelled' };
    });
    return () => {
      if (isOver) return;
      isOver = true;
      solving.cancelRoutes();
    };
  });
  return {
    found: found.value,
    isLate: found.value !== undefined && found.value.of !== session.inHand.value,
    state: state.value,
    cancel: () => {
      state.value = { kind: 'cancelled' };
      solving.cancelRoutes();
    },
    ask: () => {
      asked.value++;
    },
  };
}
