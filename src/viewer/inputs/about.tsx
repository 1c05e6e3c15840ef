import { useSignal } from '@preact/signals';
import { figure, isNumberRow, isRequired, isWordRow, type Parameter } from '../../sim/index.ts';
import type { Measure } from './measure.ts';
import { capitalised } from './words.ts';

interface AboutProps {
  readonly id: string;
  readonly path: string;
  readonly row: Parameter;
  readonly measure?: Measure | undefined;
}

/** What the parameter table says about a key: meaning, range, default and where that comes from. */
export function About({ id, path, row, measure }: AboutProps) {
  const isOpen = useSignal(false);
  return (
    <>
      <button
        type="button"
        class="about"
        aria-expanded={isOpen.value}
        aria-controls={id}
        aria-label={`About ${row.label}`}
        onClick={() => {
          isOpen.value = !isOpen.value;
        }}
      >
        ?
      </button>
      <p class="about small" id={id} hidden={!isOpen.value}>
        {describeRow(row, measure)} In the file: <code>{path}</code>
      </p>
    </>
  );
}

/** The row of a key as sentences. */
export function describeRow(row: Parameter, measure?: Measure): string {
  const sentences = [`${capitalised(row.meaning)}.`];
  if (isNumberRow(row) && measure !== undefined) {
    const span = ([low, high]: readonly [number, number]) =>
      `${figure(measure.fromFile(low))} to ${figure(measure.fromFile(high))}`;
    const unit = measure.caption === '' ? '' : ` ${measure.caption}`;
    const usual = row.usual ? `, usually ${span(row.usual)}` : '';
    sentences.push(`${row.whole ? 'Whole number, ' : ''}${span([row.min, row.max])}${unit}${usual}.`);
  }
  if (isWordRow(row) && row.choices.length === 1) sentences.push('The only kind that is computed.');
  if (row.absent !== undefined) sentences.push(`Left empty: ${row.absent}.`);
  else if (!isRequired(row)) sentences.push(`Default ${row.default}: ${row.source}.`);
  return sentences.join(' ');
}
