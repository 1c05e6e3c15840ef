import './boxes.css';
import { useSignal } from '@preact/signals';
import { useLayoutEffect } from 'preact/hooks';
import type { FileUnit } from '../../sim/index.ts';
import { boxText, measureOf } from '../fields/measure.ts';
import type { UnitChoice } from '../state/display.ts';
import { isNumber, type Range, readTyped, type Typed } from './typed.ts';

interface TypedBoxProps {
  readonly label: string;
  readonly fileUnit: FileUnit;
  readonly units: UnitChoice;
  readonly range: Range;
  readonly value: Typed;
  readonly placeholder?: string;
  readonly onChange: (typed: Typed) => void;
}

/** A number with its unit; what stands in it follows the units that are chosen, and what another hand puts there. */
export function TypedBox({ label, fileUnit, units, range, value, placeholder, onChange }: TypedBoxProps) {
  const measure = measureOf(fileUnit, units);
  const text = useSignal('');
  // Written anew where the text does not say the value; never while somebody types, since then it does: as long as it
  // is looked at before the next key, which an effect after the next frame would not be.
  useLayoutEffect(() => {
    if (value === 'unreadable' || readTyped(text.value, fileUnit, units, range) === value) return;
    text.value = isNumber(value) ? boxText(value, measure) : '';
  }, [measure.symbol, value]);
  return (
    <label class="typed-box">
      <span>{label}</span>
      <span class="typed-box-value">
        <input
          {...numberInput(text.value, value === 'unreadable', (typed) => {
            text.value = typed;
            onChange(readTyped(typed, fileUnit, units, range));
          })}
          placeholder={placeholder}
        />
        {measure.caption}
      </span>
    </label>
  );
}

/** What makes an input a box of this kind: any text, a number where all is well. */
export const numberInput = (text: string, isWrong: boolean, onText: (text: string) => void) =>
  ({
    type: 'text',
    inputMode: 'decimal',
    autocomplete: 'off',
    spellcheck: false,
    value: text,
    'aria-invalid': isWrong,
    onInput: ({ currentTarget }: { readonly currentTarget: { readonly value: string } }) => onText(currentTarget.value),
  }) as const;
