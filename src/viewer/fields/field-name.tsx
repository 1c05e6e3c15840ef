import { type Signal, useSignal } from '@preact/signals';
import { figure, isNumberRow, isRequired, isWordRow, type Parameter } from '../../sim/index.ts';
import { absentWords } from '../document/input-words.ts';
import { capitalised } from '../format.ts';
import type { Measure } from './measure.ts';

interface NameProps {
  /** id of the box */
  readonly id: string;
  /** what the box is called */
  readonly label: string;
  readonly path: string;
  readonly row: Parameter;
  readonly measure?: Measure | undefined;
  /** the car cannot run without it, though another could */
  readonly isNeeded?: boolean | undefined;
}

/** The name of a box, and behind a question mark what the parameter table says about its key. */
export function FieldName({ id, label, path, row, measure, isNeeded = false }: NameProps) {
  const isOpen = useSignal(false);
  return (
    <>
      <span class="name">
        <label for={id}>
          {capitalised(label)}
          {isNeeded && <span class="needed"> needed</span>}
        </label>
        <AboutButton id={id} label={label} isOpen={isOpen} />
      </span>
      <p class="about small" id={`${id}-about`} hidden={!isOpen.value}>
        {describeRow(path, row, measure)} In the file: <code>{path}</code>
      </p>
    </>
  );
}

function AboutButton({ id, label, isOpen }: Pick<NameProps, 'id' | 'label'> & { readonly isOpen: Signal<boolean> }) {
  return (
    <button
      type="button"
      class="about"
      aria-expanded={isOpen.value}
      aria-controls={`${id}-about`}
      aria-label={`About ${label}`}
      onClick={() => {
        isOpen.value = !isOpen.value;
      }}
    >
      ?
    </button>
  );
}

/** The row of a key as sentences. */
function describeRow(path: string, row: Parameter, measure?: Measure): string {
  const sentences = [`${capitalised(row.meaning)}.`];
  if (isNumberRow(row) && measure !== undefined) {
    const span = ([low, high]: readonly [number, number]) =>
      `${figure(measure.fromFile(low))} to ${figure(measure.fromFile(high))}`;
    const unit = measure.caption === '' ? '' : ` ${measure.caption}`;
    const usual = row.usual ? `, usually ${span(row.usual)}` : '';
    sentences.push(`${row.whole ? 'Whole number, ' : ''}${span([row.min, row.max])}${unit}${usual}.`);
  }
  if (isWordRow(row) && row.choices.length === 1) sentences.push('The only kind that is computed.');
  if (row.absent !== undefined) sentences.push(`Left empty: ${absentWords(path, row)}.`);
  else if (!isRequired(row)) sentences.push(`Default ${row.default}: ${row.source}.`);
  return sentences.join(' ');
}
