import { useSignal } from '@preact/signals';
import type { ComponentChildren } from 'preact';
import { useEffect, useRef } from 'preact/hooks';

interface PopoverProps {
  readonly title: ComponentChildren;
  /** what it is called where the title alone does not say it */
  readonly label?: string | undefined;
  /** what is inside; drawn only while it is open */
  readonly children: (close: () => void) => ComponentChildren;
}

/** A button with a small sheet below it. Escape, a click elsewhere and leaving it by Tab close it. */
export function Popover({ title, label, children }: PopoverProps) {
  const isOpen = useSignal(false);
  const root = useRef<HTMLDivElement>(null);
  const button = useRef<HTMLButtonElement>(null);
  const close = () => {
    isOpen.value = false;
  };
  useEffect(() => {
    if (!isOpen.value) return;
    const leave = ({ target }: Event) => {
      if (target instanceof Node && !root.current?.contains(target)) isOpen.value = false;
    };
    const onKey = (event: KeyboardEvent) => {
      // A dialog in front of it takes the key for itself.
      if (event.key !== 'Escape' || document.querySelector('dialog:modal') !== null) return;
      isOpen.value = false;
      button.current?.focus();
    };
    document.addEventListener('keydown', onKey);
    document.addEventListener('pointerdown', leave);
    document.addEventListener('focusin', leave);
    return () => {
      document.removeEventListener('keydown', onKey);
      document.removeEventListener('pointerdown', leave);
      document.removeEventListener('focusin', leave);
    };
  }, [isOpen.value, isOpen]);
  return (
    <div class="popover" ref={root}>
      <button
        type="button"
        ref={button}
        aria-expanded={isOpen.value}
        aria-label={label}
        onClick={() => {
          isOpen.value = !isOpen.value;
        }}
      >
        {title}
      </button>
      {isOpen.value && <div class="sheet">{children(close)}</div>}
    </div>
  );
}
