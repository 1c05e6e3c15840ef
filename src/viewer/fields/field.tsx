import './field.css';
import { isList, isNumberRow, isWordRow, type JsonValue, type NumberRow } from '../../sim/index.ts';
import type { FieldSpec } from '../document/field-groups.ts';
import { absentWords } from '../document/input-words.ts';
import { capitalised } from '../format.ts';
import type { PageProps } from '../page.tsx';
import { type Car, valueAt } from '../state/cars.ts';
import type { Changes } from '../state/session.ts';
import { NumberField } from './number-field.tsx';
import { TextField } from './text-field.tsx';
import { WordField } from './word-field.tsx';

interface FieldProps extends PageProps {
  readonly car: Car;
  readonly before: Car;
  readonly spec: FieldSpec;
  readonly label?: string | undefined;
  readonly hasSlider?: boolean | undefined;
  /** the car cannot run without it, though another could */
  readonly isNeeded?: boolean | undefined;
  /** of a word: paths that go back to Before's with it */
  readonly backWith?: readonly string[] | undefined;
}

/** The box for a row of the parameter table, whatever its kind. */
export function Field({ spec, ...props }: FieldProps) {
  const { path, row } = spec;
  const { session, car, label = row.label } = props;
  if (isNumberRow(row) && row.ramp) return <PairField {...props} row={row} path={path} />;
  if (isNumberRow(row)) return <NumberField {...props} row={row} path={path} />;
  if (isWordRow(row)) return <WordField {...props} row={row} path={path} />;
  return (
    <TextField
      id={`field-${path}`}
      label={capitalised(label)}
      value={String(valueAt(car.document, path) ?? '')}
      placeholder={absentWords(path, row)}
      onChange={(text) => session.change({ [path]: text === '' ? undefined : text }, label)}
    />
  );
}

interface PairFieldProps extends Omit<FieldProps, 'spec'> {
  readonly row: NumberRow;
  readonly path: string;
}

/** A value that may run from one number to another through its phase. */
function PairField({ row, path, label = row.label, ...props }: PairFieldProps) {
  const { session, car } = props;
  const typed = valueAt(car.document, path);
  if (!isList(typed)) {
    return (
      <div class="pair">
        <NumberField {...props} row={row} path={path} label={label} />
        {typed !== undefined && (
          <button type="button" class="link" onClick={() => session.change({ [path]: [typed, typed] }, label)}>
            Let it rise or fall<span class="spoken">: {label}</span>
          </button>
        )}
      </div>
    );
  }
  const end =
    (index: 0 | 1) =>
    (value: JsonValue | undefined): Changes => ({ [path]: typed.with(index, value ?? '') });
  return (
    <div class="pair">
      <NumberField {...props} row={row} path={`${path}.0`} label={`${label}, start`} changesFor={end(0)} />
      <NumberField {...props} row={row} path={`${path}.1`} label={`${label}, end`} changesFor={end(1)} />
      <button type="button" class="link" onClick={() => session.change({ [path]: typed[1] }, label)}>
        Keep it steady<span class="spoken">: {label}</span>
      </button>
    </div>
  );
}
