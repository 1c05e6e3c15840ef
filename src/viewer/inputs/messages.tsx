import type { Fix, Issue } from '../../sim/index.ts';
import { onScreen } from '../format.ts';
import type { Draft, Session } from '../state/session.ts';

interface MessageProps {
  readonly session: Session;
  /** what undo calls a fix */
  readonly label: string;
}

interface DraftMessageProps extends MessageProps {
  readonly id: string;
  readonly draft: Draft;
  /** the value that the run still uses, with its unit */
  readonly kept: string | undefined;
  readonly onKeep: () => void;
}

/** Why a text is no value, in the words of the command line, with what removes it. */
export function DraftMessage({ id, session, draft, label, kept, onKeep }: DraftMessageProps) {
  const errors = draft.issues.filter(({ severity }) => severity === 'error');
  const fixes = errors.flatMap(({ fix }) => (fix === undefined ? [] : [fix]));
  const use = (fix: Fix) => session.change({ ...draft.changes, [fix.path]: fix.value }, label, draft);
  return (
    <div class="message" id={id} role="status">
      {errors.map(({ path, message }) => (
        <p key={path + message}>{onScreen(message)}</p>
      ))}
      {kept !== undefined && <p>The run still uses {kept}.</p>}
      <p class="acts">
        {fixes.map((fix) => (
          <button type="button" key={fix.label} onClick={() => use(fix)}>
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

interface WarningsProps extends MessageProps {
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
