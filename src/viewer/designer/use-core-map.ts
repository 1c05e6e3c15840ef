import { useSignal, useSignalEffect } from '@preact/signals';
import { useRef } from 'preact/hooks';
import { type CoreMap, type CoreMapLists, coreMapLists } from '../../sim/index.ts';
import type { PageProps } from '../page.tsx';
import { whyWait } from '../routes/use-routes.ts';
import type { Car } from '../state/cars.ts';

/** A map and what it holds for: every car that is like this one but for fins and depth. */
interface FoundMap {
  readonly key: string;
  readonly map: CoreMap | undefined;
}

type MapState =
  | { readonly kind: 'done' | 'cancelled' }
  | { readonly kind: 'working'; readonly done: number; readonly of: number }
  | { readonly kind: 'waiting'; readonly why: string }
  | { readonly kind: 'failed'; readonly message: string };

interface InUse {
  readonly found: FoundMap | undefined;
  readonly isLate: boolean;
  readonly state: MapState;
  readonly cancel: () => void;
  /** starts again after a cancel */
  readonly ask: () => void;
  /** draws the map round the core in hand; absent where it is */
  readonly recentre: (() => void) | undefined;
}

/** Whether something is typed over the measures, so that it depends on them how much it scales. */
export function isCalibrated({ config }: Car): boolean {
  const { geometry } = config.core;
  return geometry !== undefined && Object.values(geometry.factors).some((factor) => factor !== 1);
}

/** What a map hangs on: the car and the lists, without fins and depth. */
function keyOf(car: Car, lists: CoreMapLists): string {
  const { name: _, notes: _notes, variants: _variants, ...document } = car.document;
  const { finPitch, depth, ...rest } = document.coreGeometry as Record<string, unknown>;
  const own = isCalibrated(car) ? { finPitch, depth } : {};
  return JSON.stringify([{ ...document, coreGeometry: { ...rest, ...own } }, lists]);
}

/** Keeps the map up with the car in hand for as long as it is on screen; the depths stay where they are. */
export function useCoreMap({ session, solving }: PageProps): InUse {
  const found = useSignal<FoundMap | undefined>(undefined);
  const state = useSignal<MapState>({ kind: 'waiting', why: '' });
  const lists = useSignal<CoreMapLists | undefined>(undefined);
  const file = useRef('');
  /** counted up to ask once more for a car that was cancelled */
  const asked = useSignal(0);
  const car = session.inHand.value;
  const geometry = car?.config.core.geometry;
  useSignalEffect(() => {
    const inHand = session.inHand.value;
    const own = inHand?.config.core.geometry;
    const why = whyWait(inHand, session.inHandRun.value, session.isDragging.value);
    void asked.value;
    if (inHand === undefined || own === undefined) return undefined;
    // Another file has another core: what was drawn round the last one is of no use.
    if (lists.value === undefined || file.current !== inHand.config.name)
      lists.value = coreMapLists(session.before.peek()?.config.core.geometry ?? own);
    file.current = inHand.config.name;
    const wanted = lists.value;
    const key = keyOf(inHand, wanted);
    if (found.peek()?.key === key) {
      state.value = { kind: 'done' };
      return undefined;
    }
    if (why !== undefined) {
      state.value = { kind: 'waiting', why };
      return undefined;
    }
    state.value = { kind: 'working', done: 0, of: 0 };
    let isOver = false;
    void solving
      .studyCoreMap(inHand, wanted, (progress) => {
        if (!isOver && state.peek().kind === 'working') state.value = { kind: 'working', ...progress };
      })
      .then((reply) => {
        // A worker that was ended for not listening answers as a failure: cancelled stays cancelled.
        if (isOver || state.peek().kind !== 'working') return;
        isOver = true;
        if (reply.kind === 'studied') found.value = { key, map: reply.result };
        state.value =
          reply.kind === 'failed'
            ? { kind: 'failed', message: reply.message }
            : { kind: reply.kind === 'studied' ? 'done' : 'cancelled' };
      });
    return () => {
      if (isOver) return;
      isOver = true;
      solving.cancelCoreMap();
    };
  });
  const isCentred = geometry === undefined || lists.value?.depths.some((depth) => isNear(depth, geometry.shape.depth));
  return {
    found: found.value,
    isLate: car !== undefined && lists.value !== undefined && found.value?.key !== keyOf(car, lists.value),
    state: state.value,
    cancel: () => {
      state.value = { kind: 'cancelled' };
      solving.cancelCoreMap();
    },
    ask: () => {
      asked.value++;
    },
    recentre:
      isCentred || geometry === undefined
        ? undefined
        : () => {
            lists.value = coreMapLists(geometry);
          },
  };
}

const isNear = (a: number, b: number): boolean => Math.abs(a / b - 1) < 1e-6;
