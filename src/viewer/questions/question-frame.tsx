import type { ComponentChildren } from 'preact';
import type { QuestionState } from './use-question.ts';

interface FrameProps {
  /** what is asked, a whole sentence */
  readonly title: string;
  /** what it is asked with */
  readonly inputs?: ComponentChildren;
  readonly state: QuestionState;
  readonly isLate: boolean;
  /** why it cannot be asked now */
  readonly why?: string | undefined;
  readonly ask: () => void;
  readonly cancel: () => void;
  /** the answer, once there is one */
  readonly children?: ComponentChildren;
}

/** One question: what it is asked with, how far it is, and the answer below. */
export function QuestionFrame({ title, inputs, state, isLate, why, ask, cancel, children }: FrameProps) {
  const isWorking = state.kind === 'working';
  return (
    <section class="question" aria-label={title}>
      <h3>{title}</h3>
      <div class="question-ask">
        {inputs}
        {isWorking ? (
          <>
            <progress aria-label="Runs done" {...(state.of > 0 && { max: state.of, value: state.done })} />
            <button type="button" onClick={cancel}>
              Cancel
            </button>
          </>
        ) : (
          <button type="button" class="primary" disabled={why !== undefined} onClick={ask}>
            Work it out
          </button>
        )}
        <p class="small" role="status">
          {why ?? said(state, isLate && children !== undefined)}
        </p>
      </div>
      {children !== undefined && <div class={isLate ? 'question-answer late' : 'question-answer'}>{children}</div>}
    </section>
  );
}

function said(state: QuestionState, isLate: boolean): string {
  switch (state.kind) {
    case 'working':
      return state.of > 0 ? `${state.done} of ${state.of} runs so far.` : 'Working it out.';
    case 'failed':
      return `Not worked out: ${state.message}.`;
    case 'cancelled':
      return 'Cancelled.';
    default:
      return isLate ? 'The answer below is of the car, or the question, as it was.' : '';
  }
}

/** Sentences of an answer, the first standing out. */
export function Sentences({ of }: { readonly of: readonly string[] }) {
  return (
    <div class="question-words">
      {of.map((sentence) => (
        <p key={sentence}>{sentence}</p>
      ))}
    </div>
  );
}
