import { type Fix, type Issue, isNumberRow } from '../../sim/index.ts';
import { fieldGroups } from '../document/field-groups.ts';
import { proposals } from '../document/proposals.ts';
import { onScreen } from '../format.ts';
import type { PageProps } from '../page.tsx';
import type { Draft, Session } from '../state/session.ts';
import { measureOf, valueText } from './measure.ts';

interface MessageProps {
  /** what undo calls a fix */
  readonly label: string;
}

interface DraftMessageProps extends MessageProps, PageProps {
  readonly id: string;
  readonly draft: Draft;
  /** the value that the run still uses, with its unit */
  readonly kept: string | undefined;
  readonly onKeep: () => void;
}

/** Why a text is no value, in the words of the command line, with what removes it. */
export function DraftMessage({ id, draft, label, kept, onKeep, ...props }: DraftMessageProps) {
  const { session } = props;
  const errors = draft.issues.filter(({ severity }) => severity === 'error');
  const fixes = fixesFor(props, draft, errors);
  const use = (chosen: readonly Fix[]) =>
    session.change(
      { ...draft.changes, ...Object.fromEntries(chosen.map(({ path, value }) => [path, value])) },
      label,
      draft,
    );
  return (
    <div class="message" id={id} role="status">
      {errors.map(({ path, message }) => (
        <p key={path + message}>{onScreen(message)}</p>
      ))}
      {kept !== undefined && <p>The run still uses {kept}.</p>}
      <p class="acts">
        {fixes.length > 1 && (
          <button type="button" onClick={() => use(fixes)}>
            Use all of these
          </button>
        )}
        {fixes.map((fix) => (
          <button type="button" key={fix.label} onClick={() => use([fix])}>
            {fix.label}
          </button>
        ))}
        <button type="button" onClick={onKeep}>
          {kept === undefined ? 'Keep as it was' : `Keep ${kept}`}
        </button>
      </p>
    </div>
  );
}

/** What removes errors: the reader's own fixes, and for a key that is missing a first value near what the car has. */
function fixesFor({ session, display }: PageProps, { changes }: Draft, errors: readonly Issue[]): Fix[] {
  const car = session.inHand.value;
  if (car === undefined) return [];
  const { pulls, series } = session.inHandRun.value;
  const recirculation = series && Math.max(0, ...series.columns.recirculation);
  const known = proposals(car, changes, { pull: pulls[0], recirculation });
  const rows = fieldGroups(car.document).flatMap(({ fields }) => fields);
  return errors.flatMap(({ path, fix, found }): Fix[] => {
    if (fix !== undefined) return [fix];
    const row = rows.find((each) => each.path === path)?.row;
    if (found !== 'nothing' || known[path] === undefined || row === undefined || !isNumberRow(row)) return [];
    const text = valueText(known[path], measureOf(row.unit, display.units.value));
    return [{ path, value: known[path], label: `${text}: ${row.label}` }];
  });
}

interface WarningsProps extends MessageProps {
  readonly session: Session;
  readonly id: string;
  readonly warnings: readonly Issue[];
}

/** What is doubtful about a value that the run uses all the same. */
export function Warnings({ id, session, warnings, label }: WarningsProps) {
  if (warnings.length === 0) return null;
  return (
    <div class="message doubt" id={id}>
      {warnings.map(({ path, message, fix }) => (
        <p key={path + message}>
          {onScreen(message)}
          {fix && (
            <button type="button" onClick={() => session.change({ [fix.path]: fix.value }, label)}>
              {fix.label}
            </button>
          )}
        </p>
      ))}
    </div>
  );
}

/** Why a choice could not be taken; nothing was changed. */
export function RefusalMessage({ of }: { readonly of: readonly Issue[] }) {
  if (of.length === 0) return null;
  return (
    <div class="message" role="status">
      {of.map(({ path, message }) => (
        <p key={path + message}>{onScreen(message)}</p>
      ))}
    </div>
  );
}
