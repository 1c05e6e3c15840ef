import { useEffect, useRef } from 'preact/hooks';
import type { PageProps } from '../page.tsx';

/** Back and forth over what was done, by button and by key. */
export function UndoRedo({ session, isShort }: PageProps & { readonly isShort: boolean }) {
  useEffect(() => {
    const onKey = (event: KeyboardEvent) => {
      if (!(event.ctrlKey || event.metaKey) || event.altKey || isTextBox(event.target)) return;
      const key = event.key.toLowerCase();
      const isRedo = (key === 'z' && event.shiftKey) || (key === 'y' && !event.shiftKey);
      if (!isRedo && key !== 'z') return;
      event.preventDefault();
      if (isRedo) session.redo();
      else session.undo();
    };
    document.addEventListener('keydown', onKey);
    return () => document.removeEventListener('keydown', onKey);
  }, [session]);

  const [undo, redo] = [session.undoSteps.value.at(-1), session.redoSteps.value.at(-1)];
  const [undoButton, redoButton] = [useRef<HTMLButtonElement>(null), useRef<HTMLButtonElement>(null)];
  const pressed = useRef<HTMLButtonElement | null>(null);
  useEffect(() => {
    // The last step takes the focus from what was pressed for it: the way back gets it.
    const other = pressed.current === undoButton.current ? redoButton : undoButton;
    if (pressed.current?.disabled) other.current?.focus();
    pressed.current = null;
  }, [undo, redo]);
  return (
    <>
      <button
        type="button"
        ref={undoButton}
        class="step"
        disabled={undo === undefined}
        title={undo?.label}
        onClick={({ currentTarget }) => {
          pressed.current = currentTarget;
          session.undo();
        }}
      >
        Undo{undo && <span class={isShort ? 'spoken' : ''}>: {undo.label}</span>}
      </button>
      <button
        type="button"
        ref={redoButton}
        class="step"
        disabled={redo === undefined}
        title={redo?.label}
        onClick={({ currentTarget }) => {
          pressed.current = currentTarget;
          session.redo();
        }}
      >
        Redo{redo && <span class={isShort ? 'spoken' : ''}>: {redo.label}</span>}
      </button>
    </>
  );
}

/** Boxes for text have an undo of their own. */
function isTextBox(target: EventTarget | null): boolean {
  if (target instanceof HTMLTextAreaElement) return true;
  return target instanceof HTMLInputElement && !['range', 'radio', 'checkbox', 'button'].includes(target.type);
}
