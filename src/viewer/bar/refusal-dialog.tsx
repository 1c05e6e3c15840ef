import { useEffect, useRef } from 'preact/hooks';
import type { Refusal } from '../files/open-file.ts';
import { onScreen } from '../format.ts';

interface RefusalDialogProps {
  readonly refusal: Refusal;
  readonly onOpen: (text: string) => void;
  readonly onClose: () => void;
}

/** Why a file was not opened, place by place. What was on the page is still there. */
export function RefusalDialog({ refusal, onOpen, onClose }: RefusalDialogProps) {
  const dialog = useRef<HTMLDialogElement>(null);
  useEffect(() => {
    dialog.current?.showModal();
  }, []);
  const errors = refusal.issues.filter(({ severity }) => severity === 'error');
  const { fixedText } = refusal;
  return (
    <dialog class="refusal" ref={dialog} aria-labelledby="refusal-title" onClose={onClose}>
      <h2 id="refusal-title">{refusal.file} was not opened</h2>
      <p>
        {errors.length === 1 ? 'One thing has' : `${errors.length} things have`} to be put right. The cars on the page
        are as they were.
      </p>
      <ol>
        {errors.map(({ path, message, fix }) => (
          <li key={path + message}>
            <code>{path}</code>
            <p>{onScreen(message)}</p>
            {fix && <p class="small">Proposed: {onScreen(fix.label)}</p>}
          </li>
        ))}
      </ol>
      <p class="acts">
        {fixedText !== undefined && (
          <button type="button" onClick={() => onOpen(fixedText)}>
            Open it with {errors.length === 1 ? 'the proposal' : 'all proposals'} made
          </button>
        )}
        <button type="button" class="primary" onClick={() => dialog.current?.close()}>
          Close
        </button>
      </p>
    </dialog>
  );
}
