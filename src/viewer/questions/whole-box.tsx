import './boxes.css';
import type { Signal } from '@preact/signals';

interface WholeBoxProps {
  readonly label: string;
  readonly value: Signal<number>;
  readonly least: number;
  readonly most: number;
}

/** A whole number; an odd text is seen and not asked with. */
export function WholeBox({ label, value, least, most }: WholeBoxProps) {
  return (
    <label class="whole-box">
      {label}
      <input
        type="number"
        min={least}
        max={most}
        step={1}
        value={value.value}
        onInput={({ currentTarget: { valueAsNumber } }) => {
          if (Number.isInteger(valueAsNumber) && valueAsNumber >= least && valueAsNumber <= most)
            value.value = valueAsNumber;
        }}
      />
    </label>
  );
}
