import type { PageProps } from '../page.tsx';
import type { Changes } from '../state/session.ts';

/**
 * A change that no one box stands for. Where the reader refuses it there is nothing to keep as a draft: the page says why.
 */
export function rebuild({ session, display }: PageProps, changes: Changes, label: string): void {
  const errors = session.change(changes, label).filter(({ severity }) => severity === 'error');
  if (errors.length === 0) return;
  session.dropDraft(Object.keys(changes)[0]);
  display.notice.value = `Not done: ${errors.map(({ message }) => message).join(' ')}`;
}
