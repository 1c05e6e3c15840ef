import './toggle.css';
import type { Signal } from '@preact/signals';

/** A button that stays pressed. */
export function Toggle({ isOn, label }: { isOn: Signal<boolean>; label: string }) {
  return (
    <button
      type="button"
      class="toggle"
      aria-pressed={isOn.value}
      onClick={() => {
        isOn.value = !isOn.value;
      }}
    >
      {label}
    </button>
  );
}
