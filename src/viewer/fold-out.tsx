import './fold-out.css';
import type { Signal } from '@preact/signals';
import type { ComponentChildren } from 'preact';
import { useEffect, useRef } from 'preact/hooks';
import type { Session } from './state/session.ts';

/** Panels that buttons below the causes open. */
export const ROUTES_ID = 'routes';
export const LOOP_ID = 'loop';
export const QUESTIONS_ID = 'questions';

interface FoldOutProps {
  /** of the panel, and its class */
  readonly id: string;
  readonly isOpen: Signal<boolean>;
}

/** Opens and closes a panel across the page. */
export function FoldOutButton({ id, isOpen, children }: FoldOutProps & { readonly children: string }) {
  return (
    <button
      type="button"
      class={`fold-out-open ${id}-open`}
      aria-expanded={isOpen.value}
      aria-controls={isOpen.value ? id : undefined}
      onClick={() => {
        isOpen.value = !isOpen.peek();
      }}
      onKeyDown={({ key }) => {
        if (key === 'Escape') isOpen.value = false;
      }}
    >
      <i aria-hidden="true">{isOpen.value ? '▾' : '▸'}</i> {children}
    </button>
  );
}

interface PanelProps extends FoldOutProps {
  readonly session: Session;
  /** what it is about, of the car in hand */
  readonly title: string;
  /** beside the name: how far the work is */
  readonly head?: ComponentChildren;
  readonly children: ComponentChildren;
}

/** The panel while it is open. */
export function FoldOut({ id, isOpen, session, title, head, children }: PanelProps) {
  const panel = useRef<HTMLElement>(null);
  useEffect(() => {
    // Pressed with others open, or far down a phone: what opened would be out of sight.
    const isPressed = document.activeElement?.classList.contains(`${id}-open`);
    if (isPressed && isOutOfSight(panel.current)) panel.current?.scrollIntoView();
  }, [id]);
  const close = () => {
    isOpen.value = false;
    // The focus goes back to the button that opened it; of two, one is on screen.
    const buttons = [...document.querySelectorAll<HTMLElement>(`.${id}-open`)];
    buttons.find((button) => button.offsetParent !== null)?.focus();
  };
  return (
    <section
      class={`fold-out ${id}`}
      id={id}
      ref={panel}
      aria-labelledby={`${id}-name`}
      onKeyDown={({ key }) => {
        if (key === 'Escape') close();
      }}
    >
      <div class="fold-out-head">
        <h2 id={`${id}-name`}>{titleOf(title, session)}</h2>
        {head}
        <button type="button" class="fold-out-close" onClick={close}>
          Close
        </button>
      </div>
      {children}
    </section>
  );
}

/** Whether a panel begins where little or nothing of it is seen. */
function isOutOfSight(panel: HTMLElement | null): boolean {
  const top = panel?.getBoundingClientRect().top ?? 0;
  return top < 0 || top > window.innerHeight / 2;
}

/** A title with the car in hand: "Coolant loop: After, bigger pump". */
function titleOf(title: string, session: Session): string {
  const car = session.inHand.value;
  return car === undefined ? title : `${title}: ${session.after.value === undefined ? '' : 'After, '}${car.label}`;
}
