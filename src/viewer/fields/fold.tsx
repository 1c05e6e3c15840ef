import { useSignal } from '@preact/signals';
import type { ComponentChildren } from 'preact';

interface FoldProps {
  readonly title: string;
  /** said behind the title: "changed" */
  readonly note?: string | undefined;
  readonly isOpenAtFirst?: boolean;
  /** what is inside; drawn only while it is open */
  readonly children: () => ComponentChildren;
}

/** What is seldom needed, behind its title. */
export function Fold({ title, note, isOpenAtFirst = false, children }: FoldProps) {
  const isOpen = useSignal(isOpenAtFirst);
  return (
    <details
      class="fold"
      open={isOpen.value}
      onToggle={(event) => {
        isOpen.value = event.currentTarget.open;
      }}
    >
      <summary class="fold-line">
        {title}
        {note && <span class="note">{note}</span>}
      </summary>
      {isOpen.value && children()}
    </details>
  );
}
