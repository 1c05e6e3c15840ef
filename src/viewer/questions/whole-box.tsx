import './boxes.css';
import type { Signal } from '@preact/signals';
import { whyNotWhole } from './typed.ts';

interface WholeBoxProps {
  readonly label: string;
  readonly value: Signal<number>;
  readonly least: number;
  readonly most: number;
}

/** A whole number; what stands in it is kept, NaN where that is no number: `whyNotWhole` tells whether it will do. */
export function WholeBox({ label, value, least, most }: WholeBoxProps) {
  return (
    <label class="whole-box">
      {label}
      <input
        type="number"
        min={least}
        max={most}
        step={1}
        // What is no number is left as it was typed.
        value={Number.isNaN(value.value) ? undefined : value.value}
        aria-invalid={whyNotWhole(label, value.value, least, most) !== undefined}
        onInput={({ currentTarget: { valueAsNumber } }) => {
          value.value = valueAsNumber;
        }}
      />
    </label>
  );
}
