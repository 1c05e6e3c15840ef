import type { WordRow } from '../../sim/index.ts';
import type { PageProps } from '../page.tsx';
import { type Car, valueAt } from '../state/cars.ts';
import { Name } from './about.tsx';
import { areRelated, readAt } from './fields.ts';
import { Warnings } from './messages.tsx';

interface WordFieldProps extends PageProps {
  readonly car: Car;
  readonly before: Car;
  readonly row: WordRow;
  readonly path: string;
  readonly label?: string | undefined;
}

/** One of a few words of the file. */
export function WordField({ session, car, before, row, path, label = row.label }: WordFieldProps) {
  const word = readAt(car.scenario, path) as string | undefined;
  const own = readAt(before.scenario, path) as string | undefined;
  const isChanged = session.changes.value.some((changed) => areRelated(changed, path));
  const warnings = car.warnings.filter((warning) => warning.path === path);
  const isTyped = valueAt(car.document, path) !== undefined;
  const id = `field-${path}`;
  return (
    <div class={isChanged ? 'field changed' : 'field'}>
      <Name id={id} label={label} path={path} row={row} />
      <select
        id={id}
        value={isTyped ? word : ''}
        aria-describedby={`${id}-about`}
        onChange={(event) => {
          const { value } = event.currentTarget;
          session.change({ [path]: value === '' ? undefined : value }, label);
        }}
      >
        {(row.absent !== undefined || row.default !== undefined) && (
          <option value="">{row.absent ?? `${row.default} (default)`}</option>
        )}
        {row.choices.map((choice) => (
          <option key={choice} value={choice}>
            {choice}
          </option>
        ))}
      </select>
      {isChanged && (
        <p class="small was">
          Before: {own ?? row.absent}{' '}
          <button type="button" class="link" onClick={() => session.putBack([path], label)}>
            Put back<span class="spoken"> {label}</span>
          </button>
        </p>
      )}
      <Warnings id={`${id}-doubt`} session={session} warnings={warnings} label={label} />
    </div>
  );
}
