import type { Clock } from '../state/clock.ts';

/** A gap between two frames counts as at most this [s]: a page that slept does not leap. */
const LONGEST_FRAME = 0.1;
/** With reduced motion the clock steps this often [ms] instead of with every frame. */
const STEP_EVERY = 500;

/**
 * Moves the pinned time on until it reaches `end`, where it stays; begins again at 0 when it already stands there.
 *
 * @param end - last known time [s]
 * @param steps - true where motion is to be reduced: two steps a second
 * @returns stops it
 */
export function play(clock: Clock, end: number, steps: boolean): () => void {
  if (clock.pinned.peek() >= end) clock.pinned.value = 0;
  const advance = (elapsed: number): boolean => {
    const time = Math.min(end, clock.pinned.peek() + elapsed * clock.speed.peek());
    clock.pinned.value = time;
    if (time >= end) clock.isPlaying.value = false;
    return time < end;
  };
  if (steps) {
    const timer = setInterval(() => advance(STEP_EVERY / 1000), STEP_EVERY);
    return () => clearInterval(timer);
  }
  let last = performance.now();
  let frame = requestAnimationFrame(function next(now) {
    const elapsed = Math.min(LONGEST_FRAME, Math.max(0, (now - last) / 1000));
    last = now;
    if (advance(elapsed)) frame = requestAnimationFrame(next);
  });
  return () => cancelAnimationFrame(frame);
}

/** Whether a key pressed here belongs to the page: not to a control that has its own use for it. */
export function isFree(target: EventTarget | null): boolean {
  return !(target instanceof Element) || target.closest('a, button, input, select, summary, textarea') === null;
}
