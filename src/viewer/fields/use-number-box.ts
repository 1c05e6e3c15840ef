import { useSignal } from '@preact/signals';
import { useEffect, useRef } from 'preact/hooks';
import type { JsonValue, NumberRow } from '../../sim/index.ts';
import { numberAt } from '../document/field-groups.ts';
import type { PageProps } from '../page.tsx';
import { type Car, valueAt } from '../state/cars.ts';
import type { Changes } from '../state/session.ts';
import { boxText, measureOf, storedValue } from './measure.ts';

/** A text is tried this long after the last key [ms]; on leaving the box, at once. */
const TRIED_AFTER = 600;

interface NumberBoxOptions extends PageProps {
  readonly car: Car;
  readonly row: NumberRow;
  /** place in the file */
  readonly path: string;
  readonly label: string;
  /** what a new value changes in the file; without it, just `path` */
  readonly changesFor?: ((value: JsonValue | undefined) => Changes) | undefined;
}

/**
 * What a box for a number of the file does, wherever it stands: a text in any unit is tried while it is typed and
 * taken on leaving, as one undo step; what cannot be read stays in the box; Escape takes it back.
 */
export function useNumberBox({ session, display, car, row, path, label, ...options }: NumberBoxOptions) {
  const measure = measureOf(row.unit, display.units.value);
  /** what is being typed; undefined while nobody types here */
  const text = useSignal<string | undefined>(undefined);
  const timer = useRef<ReturnType<typeof setTimeout> | undefined>(undefined);
  const box = useRef<HTMLInputElement>(null);
  // What is half typed when the box goes away counts as typed.
  const onLeave = useRef(() => {});
  useEffect(() => () => onLeave.current(), []);

  const value = numberAt(car, path);
  const draft = session.drafts.value.find((each) => each.path === path);
  const shown = value === undefined ? '' : boxText(isConverted(car, path) ? fiveFigures(value) : value, measure);

  const changesFor = options.changesFor ?? ((stored: JsonValue | undefined): Changes => ({ [path]: stored }));
  const attempt = (typed: string): boolean => {
    const stored = storedValue(typed, measure);
    const issues = session.preview(changesFor(stored), nameOf(label, stored, typed, measure.caption), {
      path,
      text: typed,
    });
    return !issues.some(({ severity }) => severity === 'error');
  };
  const settle = () => {
    clearTimeout(timer.current);
    const typed = text.value;
    text.value = undefined;
    if (typed === undefined) return;
    const isSame = typed.trim() === shown || Object.is(storedValue(typed, measure), valueAt(car.document, path));
    if (isSame && !session.isDragging.value) session.dropDraft(path);
    else if (attempt(typed)) session.commit(label);
    else session.abandon();
  };
  onLeave.current = settle;
  const giveUp = () => {
    clearTimeout(timer.current);
    text.value = undefined;
    session.dropDraft(path);
    session.abandon();
    box.current?.focus();
  };
  return {
    measure,
    value,
    draft,
    attempt,
    giveUp,
    /** of the box itself */
    props: {
      ref: box,
      type: 'text',
      inputMode: 'decimal',
      autocomplete: 'off',
      spellcheck: false,
      value: text.value ?? draft?.text ?? shown,
      'aria-invalid': draft !== undefined,
      onInput: (event: { readonly currentTarget: { readonly value: string } }) => {
        const typed = event.currentTarget.value;
        text.value = typed;
        clearTimeout(timer.current);
        timer.current = setTimeout(() => attempt(typed), TRIED_AFTER);
      },
      onBlur: settle,
      onKeyDown: (event: KeyboardEvent) => {
        if (event.key === 'Enter') settle();
        if (event.key === 'Escape' && (text.value !== undefined || draft !== undefined)) {
          event.stopPropagation();
          giveUp();
        }
      },
    } as const,
  };
}

/** What was typed with a unit of its own has no last digit in the unit of the file. */
const isConverted = ({ document }: Car, path: string): boolean => typeof valueAt(document, path) === 'string';
const fiveFigures = (value: number): number => Number(value.toPrecision(5));

/** What After is called by: the key and what was typed, with the unit. */
function nameOf(label: string, stored: JsonValue | undefined, typed: string, caption: string): string {
  if (stored === undefined) return `${label}: default`;
  const hasOwnUnit = stored === typed.trim();
  return `${label} ${typed.trim()}${hasOwnUnit || caption === '' ? '' : ` ${caption}`}`;
}
