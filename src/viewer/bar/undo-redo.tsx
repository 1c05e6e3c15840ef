import type { RefObject } from 'preact';
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
      <StepButton
        name="Undo"
        label={undo?.label}
        isShort={isShort}
        button={undoButton}
        pressed={pressed}
        onStep={() => session.undo()}
      />
      <StepButton
        name="Redo"
        label={redo?.label}
        isShort={isShort}
        button={redoButton}
        pressed={pressed}
        onStep={() => session.redo()}
      />
    </>
  );
}

interface StepButtonProps {
  readonly name: string;
  /** what the step did; undefined where there is none */
  readonly label: string | undefined;
  readonly isShort: boolean;
  readonly button: RefObject<HTMLButtonElement | null>;
  /** the one pressed last, until its step is done */
  readonly pressed: RefObject<HTMLButtonElement | null>;
  onStep(): void;
}

function StepButton({ name, label, isShort, button, pressed, onStep }: StepButtonProps) {
  return (
    <button
      type="button"
      ref={button}
      class="step"
      disabled={label === undefined}
      title={label}
      onClick={({ currentTarget }) => {
        pressed.current = currentTarget;
        onStep();
      }}
    >
      {name}
      {label !== undefined && <span class={isShort ? 'spoken' : ''}>: {label}</span>}
    </button>
  );
}

/** Boxes for text have an undo of their own. */
function isTextBox(target: EventTarget | null): boolean {
  if (target instanceof HTMLTextAreaElement) return true;
  return target instanceof HTMLInputElement && !['range', 'radio', 'checkbox', 'button'].includes(target.type);
}
