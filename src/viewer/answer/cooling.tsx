import type { PageProps } from '../page.tsx';
import { describeCooling } from './cooling-words.ts';

/** Below Before and After: what the other charge temperature does to gauge, air mass and drive power in pull 1. */
export function Cooling({ session, display }: PageProps) {
  const [before, after] = [session.before.value, session.after.value];
  const [from, to] = [session.beforeRun.value, session.afterRun.value];
  if (before === undefined || after === undefined) return null;
  const isWhole = to.kind === 'solved' && to.of === after && from.kind === 'solved' && !session.isDragging.value;
  const said = isWhole ? describeCooling(from, to, after, display.units.value) : '';
  if (said === '') return null;
  return (
    <p class="cooling small">
      <b>Pull 1. </b>
      {said}
    </p>
  );
}
