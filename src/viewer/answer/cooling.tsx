import { explainIce } from '../../sim/index.ts';
import type { PageProps } from '../page.tsx';
import { describeCooling, describeWater } from './cooling-words.ts';

/** Below Before and After: what the other charge temperature does to gauge, air mass and drive power in pull 1. */
export function Cooling({ session, display }: PageProps) {
  const [before, after] = [session.before.value, session.after.value];
  const [from, to] = [session.beforeRun.value, session.afterRun.value];
  if (before === undefined || after === undefined) return null;
  const isWhole = to.kind === 'solved' && to.of === after && from.kind === 'solved' && !session.isDragging.value;
  const said = isWhole ? describeCooling(from, to, after, display.units.value) : '';
  const water = isWhole
    ? (
        [
          ['Before', from, before],
          ['After', to, after],
        ] as const
      ).flatMap(([name, { pulls }, { config }]) => {
        const words = describeWater(pulls);
        const ice = explainIce(pulls, config.reservoir.iceMass);
        return [...(words === '' ? [] : [` ${name} ${words}.`]), ...(ice === '' ? [] : [` ${name}: ${ice}`])];
      })
    : [];
  if (said === '' && water.length === 0) return null;
  return (
    <p class="cooling small">
      {said !== '' && <b>Pull 1. </b>}
      {said}
      {water.join('')}
    </p>
  );
}
