import './dock.css';
import type { ComponentChildren } from 'preact';
import type { PageProps } from '../page.tsx';

/** On a narrow screen, what is always at hand at its foot: what is put in (Play), and the way to the inputs. */
export function Dock({ display, children }: PageProps & { readonly children?: ComponentChildren }) {
  return (
    <nav class="dock" aria-label="At hand" hidden={display.isSheetOpen.value}>
      {children}
      <button
        type="button"
        class="primary"
        id="change-a-part"
        onClick={() => {
          display.isSheetOpen.value = true;
        }}
      >
        Change a part
      </button>
    </nav>
  );
}
