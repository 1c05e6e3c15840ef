import './study-state.css';
import type { KeptStudy } from './state/use-kept-study.ts';

interface StudyStateProps {
  readonly study: Pick<KeptStudy<unknown, unknown>, 'found' | 'state' | 'cancel' | 'ask'>;
  /** what is worked out: "the routes" */
  readonly what: string;
  /** how much work it is, or how far it is; absent as long as nobody knows */
  readonly extent: string | undefined;
}

/** How far a kept study is, why it waits or ended without a result, and what ends it or starts it again. */
export function StudyState({ study: { found, state, cancel, ask }, what, extent }: StudyStateProps) {
  return (
    <>
      <div class="study-state" role="status">
        {state.kind === 'working' && (
          <p class="small">
            {found === undefined ? 'Working it out' : 'Catching up with the car'}
            {extent && `: ${extent}`}.
          </p>
        )}
        {state.kind === 'waiting' && <p class="small">{state.why}</p>}
        {state.kind === 'failed' && <p class="small">Not worked out: {state.message}.</p>}
        {state.kind === 'cancelled' && <p class="small">Cancelled.</p>}
      </div>
      {state.kind === 'working' && (
        <p class="study-work">
          <progress aria-label={`Working out ${what}`} {...(state.of > 0 && { value: state.done, max: state.of })} />
          <button type="button" onClick={cancel}>
            Cancel
          </button>
        </p>
      )}
      {(state.kind === 'cancelled' || state.kind === 'failed') && (
        <button type="button" onClick={ask}>
          Work it out
        </button>
      )}
    </>
  );
}
