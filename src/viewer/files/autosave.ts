import { effect, untracked } from '@preact/signals';
import type { Display } from '../state/display.ts';
import type { Session } from '../state/session.ts';
import { DEMO_SCENARIOS } from './demo-scenarios.ts';
import { restoreFrom, toStoredText } from './stored.ts';

const KEY = 'soakbench';
/** Where a text goes that could not be read, for whoever wants to look into it. */
const SET_ASIDE_KEY = 'soakbench: set aside';
/** ms; long enough that a drag is stored once, short enough that a crash loses nothing worth naming */
const STORE_AFTER = 300;

/** What of the browser's storage is used. */
export type Store = Pick<Storage, 'getItem' | 'setItem' | 'removeItem'>;

/** The browser's storage, or `undefined` where it is forbidden. */
export function browserStore(): Store | undefined {
  try {
    return window.localStorage;
  } catch {
    return undefined;
  }
}

/**
 * Brings back what was on the page at the last visit, or opens the first demo car, and stores every change from then
 * on. What cannot be read is set aside and what cannot be stored is said in `display.notice`; never throws.
 *
 * @returns stores at once what has not been stored yet: for the moment the page is left
 */
export function keepStored(session: Session, display: Display, store: Store | undefined): () => void {
  const notify = (notice: string): void => {
    display.notice.value = notice;
  };
  if (!restore(session, display, store, notify) && session.before.value === undefined) {
    session.open(DEMO_SCENARIOS[0].text);
  }

  let pending: ReturnType<typeof setTimeout> | undefined;
  let stored = '';
  const write = (): void => {
    clearTimeout(pending);
    pending = undefined;
    const text = toStoredText(session, display);
    if (text === stored || store === undefined) return;
    try {
      store.setItem(KEY, text);
      stored = text;
    } catch (error) {
      const why = error instanceof Error && error.name === 'QuotaExceededError' ? 'is full' : 'refuses to be written';
      notify(`The browser's storage ${why}: what you do now is lost when the page closes. Use Save file.`);
    }
  };
  effect(() => {
    toStoredText(session, display);
    untracked(() => {
      pending ??= setTimeout(write, STORE_AFTER);
    });
  });
  return () => {
    if (pending !== undefined) write();
  };
}

/** Whether there was something to bring back, and it came. */
function restore(
  session: Session,
  display: Display,
  store: Store | undefined,
  notify: (notice: string) => void,
): boolean {
  if (store === undefined) {
    notify('This browser stores nothing for this page: what you do is lost when it closes. Use Save file.');
    return false;
  }
  let text: string | null = null;
  try {
    text = store.getItem(KEY);
    if (text === null || restoreFrom(text, session, display)) return text !== null;
    store.setItem(SET_ASIDE_KEY, text);
    store.removeItem(KEY);
    notify(
      `What was stored at the last visit could not be read in full. It is kept in the browser as "${SET_ASIDE_KEY}".`,
    );
  } catch {
    notify("The browser's storage cannot be used: what you do is lost when the page closes. Use Save file.");
  }
  return false;
}
