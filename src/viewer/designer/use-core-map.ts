import { useSignal } from '@preact/signals';
import { useRef } from 'preact/hooks';
import { type CoreMap, type CoreMapLists, carAlone, coreMapLists } from '../../sim/index.ts';
import type { PageProps } from '../page.tsx';
import type { Car } from '../state/cars.ts';
import { useKeptStudy, useWhyWait, type WantedStudy } from '../state/use-kept-study.ts';

/** Whether something is typed over the measures, so that it depends on them how much it scales. */
export function isCalibrated({ config }: Car): boolean {
  const { geometry } = config.core;
  return geometry !== undefined && Object.values(geometry.factors).some((factor) => factor !== 1);
}

/** What a map hangs on: the car, the loop that a flow was measured on, and the lists, without fins and depth. */
function keyOf(car: Car, lists: CoreMapLists): string {
  const { name: _, notes: _notes, ...document } = carAlone(car.document);
  const { finPitch, depth, ...rest } = document.coreGeometry as Record<string, unknown>;
  const own = isCalibrated(car) ? { finPitch, depth } : {};
  return JSON.stringify([{ ...document, coreGeometry: { ...rest, ...own } }, car.config.measuredFlow, lists]);
}

/** Keeps the map up with the car in hand for as long as it is on screen; the depths stay where they are. */
export function useCoreMap({ session, solving }: PageProps) {
  const lists = useSignal<CoreMapLists | undefined>(undefined);
  const file = useRef('');
  const car = session.inHand.value;
  const geometry = car?.config.core.geometry;
  const wait = useWhyWait(session);
  const kept = useKeptStudy((foundKey: string | undefined): WantedStudy<string, CoreMap | undefined> => {
    const inHand = session.inHand.value;
    const own = inHand?.config.core.geometry;
    const why = wait.value;
    if (inHand === undefined || own === undefined) return undefined;
    // Another file has another core: what was drawn round the last one is of no use. Written before it is read: a
    // signal that is read first would have this asked for twice.
    const known = file.current === inHand.config.name ? lists.peek() : undefined;
    lists.value = known ?? coreMapLists(session.before.peek()?.config.core.geometry ?? own);
    file.current = inHand.config.name;
    const wanted = lists.value;
    const key = keyOf(inHand, wanted);
    // A map that holds still holds while the car is solved or dragged.
    if (why !== undefined && key !== foundKey) return { why };
    return { key, start: (onProgress) => solving.studyCoreMap(inHand, wanted, onProgress) };
  }, solving.cancelCoreMap);
  const isCentred = geometry === undefined || lists.value?.depths.some((depth) => isNear(depth, geometry.shape.depth));
  return {
    ...kept,
    isLate: car !== undefined && lists.value !== undefined && kept.found?.key !== keyOf(car, lists.value),
    /** draws the map round the core in hand; absent where it is */
    recentre:
      isCentred || geometry === undefined
        ? undefined
        : () => {
            lists.value = coreMapLists(geometry);
          },
  };
}

const isNear = (a: number, b: number): boolean => Math.abs(a / b - 1) < 1e-6;
