import type { Clock } from './state/clock.ts';
import type { Display } from './state/display.ts';
import type { Session } from './state/session.ts';
import type { Solving } from './state/solving.ts';

/** What every part of the page is handed. */
export interface PageProps {
  readonly session: Session;
  readonly clock: Clock;
  readonly display: Display;
  readonly solving: Solving;
}
