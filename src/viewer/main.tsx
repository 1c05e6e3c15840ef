import './styles.css';
import { render } from 'preact';
import { SimClient } from '../../workers/client.ts';
import { App } from './app.tsx';
import { Clock } from './state/clock.ts';
import { Display } from './state/display.ts';
import { Session } from './state/session.ts';
import { keepSolved } from './state/solving.ts';

const root = document.getElementById('page');
if (root === null) throw new Error('no place for the page');

const session = new Session();
const clock = new Clock();
const display = new Display();
const solving = keepSolved(session, new SimClient());

render(<App session={session} clock={clock} display={display} solving={solving} />, root);
