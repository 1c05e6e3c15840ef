import type { WordRow } from '../../sim/index.ts';
import { choiceChanges } from '../document/choices.ts';
import { readAt } from '../document/field-groups.ts';
import { absentWords } from '../document/input-words.ts';
import type { PageProps } from '../page.tsx';
import { areRelated, type Car, valueAt } from '../state/cars.ts';
import { FieldName } from './field-name.tsx';
import { DraftMessage, Warnings } from './messages.tsx';

export interface WordFieldProps extends PageProps {
  readonly car: Car;
  readonly before: Car;
  readonly row: WordRow;
  readonly path: string;
  readonly label?: string | undefined;
  /** paths that go back to Before's with this one: what the word has taken out or made necessary */
  readonly backWith?: readonly string[] | undefined;
}

/**
 * One of a few words of the file. What the reader refuses beside the word goes in the same step; what the word makes
 * necessary is asked for before it is taken.
 */
export function WordField({ car, before, row, path, label = row.label, backWith = [], ...props }: WordFieldProps) {
  const { session } = props;
  const word = readAt(car.scenario, path) as string | undefined;
  const own = readAt(before.scenario, path) as string | undefined;
  const draft = session.drafts.value.find((each) => each.path === path);
  const isChanged = session.changes.value.some((changed) => areRelated(changed, path));
  const warnings = car.warnings.filter((warning) => warning.path === path);
  const isTyped = valueAt(car.document, path) !== undefined;
  const id = `field-${path}`;
  const choose = (text: string) => {
    const value = text === '' ? undefined : text;
    session.change(choiceChanges(car.document, path, value), `${label}: ${value ?? 'default'}`, { path, text });
  };
  return (
    <div class={isChanged ? 'field changed' : 'field'}>
      <FieldName id={id} label={label} path={path} row={row} />
      <select
        id={id}
        class={draft === undefined ? undefined : 'unread'}
        value={draft?.text ?? (isTyped ? word : '')}
        aria-invalid={draft !== undefined}
        aria-describedby={draft === undefined ? `${id}-about` : `${id}-draft ${id}-about`}
        onChange={(event) => choose(event.currentTarget.value)}
      >
        {(row.absent !== undefined || row.default !== undefined) && (
          <option value="">{absentWords(path, row) ?? `${row.default} (default)`}</option>
        )}
        {row.choices.map((choice) => (
          <option key={choice} value={choice}>
            {choice}
          </option>
        ))}
      </select>
      {draft && (
        <DraftMessage
          {...props}
          id={`${id}-draft`}
          draft={draft}
          label={`${label}: ${draft.text === '' ? 'default' : draft.text}`}
          kept={word}
          onKeep={() => session.dropDraft(path)}
        />
      )}
      {isChanged && draft === undefined && (
        <p class="small was">
          Before: {own ?? absentWords(path, row)}{' '}
          <button
            type="button"
            class="link"
            onClick={() =>
              session.putBack(
                [path, ...session.changes.value.filter((each) => backWith.some((other) => areRelated(each, other)))],
                label,
              )
            }
          >
            Put back<span class="spoken"> {label}</span>
          </button>
        </p>
      )}
      <Warnings id={`${id}-doubt`} session={session} warnings={warnings} label={label} />
    </div>
  );
}
