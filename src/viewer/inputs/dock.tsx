import './dock.css';
import type { ComponentChildren } from 'preact';
import { useEffect, useRef } from 'preact/hooks';
import type { PageProps } from '../page.tsx';

/** On a narrow screen, what is always at hand at its foot: what is put in (Play), and the way to the inputs. */
export function Dock({ display, children }: PageProps & { readonly children?: ComponentChildren }) {
  const isOpen = display.isSheetOpen.value;
  const wasOpen = useRef(isOpen);
  const button = useRef<HTMLButtonElement>(null);
  useEffect(() => {
    // The focus comes back to where the sheet was opened from.
    if (wasOpen.current && !isOpen) button.current?.focus();
    wasOpen.current = isOpen;
  }, [isOpen]);
  return (
    <nav class="dock" aria-label="At hand" hidden={isOpen}>
      {children}
      <button
        type="button"
        class="primary"
        ref={button}
        onClick={() => {
          display.isSheetOpen.value = true;
        }}
      >
        Change a part
      </button>
    </nav>
  );
}
