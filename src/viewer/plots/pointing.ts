import type { Stretch } from './view.ts';

/** What pointing at a plot does; times in s. */
interface PointingHandlers {
  /** the stretch that is shown, and the sides of the plot on the screen [px] */
  readonly stretch: () => Stretch;
  readonly sides: () => { readonly left: number; readonly right: number };
  /** pointed at a time, or no longer */
  readonly onHover: (time: number | undefined) => void;
  readonly onPin: (time: number) => void;
  /** a stretch is being marked, or no longer */
  readonly onMark: (stretch: Stretch | undefined) => void;
  readonly onZoom: (stretch: Stretch) => void;
  readonly onReset: () => void;
}

/** A pointer that moved less than this has clicked and not dragged [px]. */
const STILL = 4;

/**
 * Hover previews a time, a click pins it, a drag marks a stretch to zoom to, a double click shows all again. A finger
 * moves the time along and pins where it lets go; two fingers stretch. Up and down stays with the page's scrolling.
 *
 * @returns stops listening
 */
export function followPointer(element: HTMLElement, handlers: PointingHandlers): () => void {
  const fingers = new Map<number, number>();
  let start: { x: number; time: number } | undefined;
  let pinch: { times: readonly number[] } | undefined;

  const timeAt = (x: number): number => {
    const { left, right } = handlers.sides();
    const { from, to } = handlers.stretch();
    const share = Math.min(1, Math.max(0, (x - left) / Math.max(1, right - left)));
    return from + share * (to - from);
  };
  const marked = (x: number): Stretch | undefined => {
    if (start === undefined || Math.abs(x - start.x) < STILL) return undefined;
    const time = timeAt(x);
    return { from: Math.min(start.time, time), to: Math.max(start.time, time) };
  };
  const stretchFingers = () => {
    const [one, two] = [...fingers.values()];
    if (pinch === undefined || Math.abs(two - one) < STILL) return;
    const { left, right } = handlers.sides();
    const [first, second] = pinch.times;
    const perPixel = (second - first) / (two - one);
    const from = first - perPixel * (one - left);
    if (perPixel > 0) handlers.onZoom({ from, to: from + perPixel * (right - left) });
  };

  const on = (type: string, listen: (event: PointerEvent) => void): (() => void) => {
    const listener = (event: Event) => listen(event as PointerEvent);
    element.addEventListener(type, listener);
    return () => element.removeEventListener(type, listener);
  };
  const release = [
    on('pointerdown', ({ pointerType, pointerId, clientX, button }) => {
      if (pointerType === 'mouse') {
        if (button !== 0) return;
        element.setPointerCapture(pointerId);
        start = { x: clientX, time: timeAt(clientX) };
        return;
      }
      fingers.set(pointerId, clientX);
      pinch = fingers.size === 2 ? { times: [...fingers.values()].map(timeAt) } : undefined;
      handlers.onHover(fingers.size === 1 ? timeAt(clientX) : undefined);
    }),
    on('pointermove', ({ pointerType, pointerId, clientX }) => {
      if (pointerType === 'mouse') {
        handlers.onHover(timeAt(clientX));
        handlers.onMark(marked(clientX));
      } else if (fingers.has(pointerId)) {
        fingers.set(pointerId, clientX);
        if (pinch !== undefined && fingers.size === 2) stretchFingers();
        else if (fingers.size === 1) handlers.onHover(timeAt(clientX));
      }
    }),
    on('pointerup', ({ pointerType, pointerId, clientX }) => {
      if (pointerType === 'mouse') {
        const stretch = marked(clientX);
        if (stretch !== undefined) handlers.onZoom(stretch);
        else if (start !== undefined) handlers.onPin(timeAt(clientX));
        start = undefined;
        handlers.onMark(undefined);
      } else if (fingers.delete(pointerId)) {
        if (pinch === undefined) handlers.onPin(timeAt(clientX));
        if (fingers.size === 0) pinch = undefined;
        handlers.onHover(undefined);
      }
    }),
    on('pointercancel', ({ pointerId }) => {
      fingers.delete(pointerId);
      if (fingers.size === 0) pinch = undefined;
      start = undefined;
      handlers.onMark(undefined);
      handlers.onHover(undefined);
    }),
    on('pointerleave', ({ pointerType }) => {
      if (pointerType === 'mouse') handlers.onHover(undefined);
    }),
    on('dblclick', handlers.onReset),
  ];
  return () => {
    for (const each of release) each();
    handlers.onHover(undefined);
  };
}
