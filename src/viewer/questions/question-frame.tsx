import type { ComponentChildren } from 'preact';
import { ESTIMATE_CAUTION } from '../../sim/index.ts';
import { onScreen } from '../format.ts';
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
  /** what is to be heeded, besides that an answer is an estimate */
  readonly cautions?: readonly string[];
  /** the answer, once there is one */
  readonly children?: ComponentChildren;
}

/** One question: what it is asked with, how far it is, and the answer below. */
export function QuestionFrame({ title, inputs, state, isLate, why, ask, cancel, cautions = [], children }: FrameProps) {
  const isWorking = state.kind === 'working';
  return (
    <section class="question" aria-label={title}>
      <h3>{title}</h3>
      <div class="question-ask">
        {inputs}
        {isWorking && <progress aria-label="Runs done" {...(state.of > 0 && { max: state.of, value: state.done })} />}
        {/* One button, so that it keeps the focus. */}
        <button
          type="button"
          class={isWorking ? undefined : 'primary'}
          disabled={!isWorking && why !== undefined}
          onClick={isWorking ? cancel : ask}
        >
          {isWorking ? 'Cancel' : 'Work it out'}
        </button>
        <p class="small" role="status">
          {onScreen(why ?? said(state, isLate && children !== undefined))}
        </p>
      </div>
      {children !== undefined && <div class={isLate ? 'question-answer late' : 'question-answer'}>{children}</div>}
      {children !== undefined && <Cautions of={[...cautions, ESTIMATE_CAUTION]} />}
    </section>
  );
}

const LATE = 'The answer below is of the car, or the question, as it was.';

function said(state: QuestionState, isLate: boolean): string {
  switch (state.kind) {
    case 'working':
      return state.of > 0 ? `${state.done} of ${state.of} runs so far.` : 'Working it out.';
    case 'failed':
      return `Not worked out: ${state.message}.`;
    case 'cancelled':
      return 'Cancelled.';
    case 'done':
      return isLate ? LATE : 'Done.';
    default:
      return isLate ? LATE : '';
  }
}

function Cautions({ of }: { readonly of: readonly string[] }) {
  return (
    <div class="question-cautions small">
      {of.map((caution) => (
        <p key={caution}>{caution}</p>
      ))}
    </div>
  );
}

/** Sentences of an answer, the first standing out. */
export function Sentences({ of }: { readonly of: readonly string[] }) {
  return (
    <div class="question-words">
      {of.map((sentence) => (
        <p key={sentence}>{onScreen(sentence)}</p>
      ))}
    </div>
  );
}
