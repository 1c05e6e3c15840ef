import type { LinePlace, LoopItem, LoopPart } from './config/loop.ts';
import type { Values } from './shape.ts';

/** Every part of a loop once, in flow order, the ways beside each other one after the other. */
export function partsOf(loop: readonly LoopItem[]): LoopPart[] {
  return loop.flatMap((item) => (typeof item === 'string' ? [item] : item.flat()));
}

/** The order of the loop: as typed, or pump, core, front exchanger where there is one, and reservoir. */
export function loopOf({ loop, exchanger }: Pick<Values, 'loop' | 'exchanger'>): readonly LoopItem[] {
  return loop ?? ['pump', 'core', ...(exchanger ? (['exchanger'] as const) : []), 'reservoir'];
}

/** The same ring, written from the part behind the reservoir on. */
export function fromReservoir(loop: readonly LoopItem[]): LoopItem[] {
  const start = loop.indexOf('reservoir') + 1;
  return [...loop.slice(start), ...loop.slice(0, start)];
}

const WAYS = ['ways', 'secondWays'] as const;

/** Every place of a loop that a line can leave, in flow order. */
export function linePlacesOf(loop: readonly LoopItem[]): LinePlace[] {
  let pairs = 0;
  return loop.flatMap((item): LinePlace[] => {
    if (typeof item === 'string') return [item];
    const place = WAYS[pairs++];
    return [...item.flat(), ...(place ? [place] : [])];
  });
}
