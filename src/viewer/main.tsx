import './styles.css';
import { effect } from '@preact/signals';
import { render } from 'preact';
import { SimClient } from '../../workers/client.ts';
import { App } from './app.tsx';
import { LETTER_ADDRESS } from './bar/view-link.tsx';
import { browserStore, keepStored } from './files/autosave.ts';
import { Clock } from './state/clock.ts';
import { Display } from './state/display.ts';
import { Session } from './state/session.ts';
import { keepSolved } from './state/solving.ts';
import { startTime } from './time/phases.ts';

const root = document.getElementById('page');
if (root === null) throw new Error('no place for the page');

const session = new Session();
const clock = new Clock();
const display = new Display();

followSystem('(prefers-color-scheme: dark)', (isTrue) => {
  display.systemIsDark.value = isTrue;
});
followSystem('(prefers-reduced-motion: reduce)', (isTrue) => {
  display.hasReducedMotion.value = isTrue;
});
const viewOfAddress = () => {
  display.view.value = window.location.hash === LETTER_ADDRESS ? 'letter' : 'workbench';
};
viewOfAddress();
window.addEventListener('hashchange', viewOfAddress);
const storeNow = keepStored(session, display, browserStore());
window.addEventListener('pagehide', storeNow);
const solving = keepSolved(session, new SimClient());
standAtDecidingPull();

render(<App session={session} clock={clock} display={display} solving={solving} />, root);

function followSystem(query: string, tell: (isTrue: boolean) => void): void {
  const media = window.matchMedia(query);
  tell(media.matches);
  media.addEventListener('change', () => tell(media.matches));
}

/** Each time another car is opened the clock goes to the end of its deciding pull, where the answer is to be seen. */
function standAtDecidingPull(): void {
  let placedFor: string | undefined;
  effect(() => {
    const car = session.before.value;
    const run = session.beforeRun.value;
    if (car === undefined || run.of !== car || run.kind !== 'solved' || placedFor === car.config.name) return;
    placedFor = car.config.name;
    clock.pinned.value = startTime(run.pulls);
  });
}
