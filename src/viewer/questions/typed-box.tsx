import './boxes.css';
import { useSignal } from '@preact/signals';
import { useEffect } from 'preact/hooks';
import { type FileUnit, readQuantity } from '../../sim/index.ts';
import { boxText, measureOf, storedValue } from '../fields/measure.ts';
import type { UnitChoice } from '../state/display.ts';

/** What a box holds: a number in the file's unit, nothing, or a text that is no number within the range. */
export type Typed = number | 'empty' | 'unreadable';

/** The numbers that boxes hold, in order, without what is empty or unreadable. */
export const isNumber = (typed: Typed): typed is number => typeof typed === 'number';

/** Reads a text as the boxes of the inputs do: any unit of the quantity, a bare number in the unit shown. */
export function readTyped(text: string, fileUnit: FileUnit, units: UnitChoice, [low, high]: Range): Typed {
  const stored = storedValue(text, measureOf(fileUnit, units));
  if (stored === undefined) return 'empty';
  const reading = readQuantity(String(stored), fileUnit);
  if (reading.kind !== 'value') return 'unreadable';
  return reading.value >= low && reading.value <= high ? reading.value : 'unreadable';
}

/** Least and greatest, in the file's unit. */
export type Range = readonly [number, number];

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
  // Written anew where the text does not say the value; never while somebody types, since then it does.
  useEffect(() => {
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

/** What a box may hold, in its unit: said where something else stands in it. */
export function expected(
  label: string,
  fileUnit: FileUnit,
  units: UnitChoice,
  range: Range,
  caption = measureOf(fileUnit, units).caption,
): string {
  const [low, high] = range.map((end) => boxText(end, measureOf(fileUnit, units)));
  return `${label}: expected a number, ${low} to ${high}${caption === '' ? '' : ` ${caption}`}.`;
}
