import { useSignal, useSignalEffect } from '@preact/signals';
import { counted, countPulls } from '../../sim/index.ts';
import type { PageProps } from '../page.tsx';
import { describePulls, explainNoAnswer } from './wording.ts';

/** Speaks the answer to a screen reader once a run is whole; never during a drag. */
export function Announcement({ session, display }: PageProps) {
  const said = useSignal('');
  useSignalEffect(() => {
    const car = session.inHand.value;
    const run = session.inHandRun.value;
    if (session.isDragging.value || car === undefined || run.of !== car) return;
    if (run.kind === 'solved') {
      const words = describePulls(run.pulls, display.units.value).map(({ text }) => text);
      said.value = `${car.label}: ${countPulls(run.pulls)} of ${counted(run.pulls.length, 'pull')}. ${words.join('')}`;
    } else if (run.kind === 'stopped' || run.kind === 'failed') {
      said.value = `${car.label}: no answer. ${explainNoAnswer(run, display.units.value)}`;
    }
  });
  return (
    <p class="spoken" role="status">
      {said}
    </p>
  );
}
