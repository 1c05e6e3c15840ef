import { useSignal } from '@preact/signals';
import { useEffect, useRef } from 'preact/hooks';
import type { AnswerOf, AskedOf, Question } from '../../../workers/questions.ts';
import type { PageProps } from '../page.tsx';
import type { Car } from '../state/cars.ts';

/** How far an answer is; `of` is 0 as long as nothing is known of its length. */
export type QuestionState =
  | { readonly kind: 'idle' | 'done' | 'cancelled' }
  | { readonly kind: 'working'; readonly done: number; readonly of: number }
  | { readonly kind: 'failed'; readonly message: string };

/** An answer, and what it was asked of. */
export interface FoundAnswer<Q extends Question, Asked = AskedOf<Q>> {
  readonly car: Car;
  readonly asked: Asked;
  readonly result: AnswerOf<Q>;
}

/** Asks one question about the car in hand, when told to; the last answer stays until the next is there. */
export function useQuestion<Q extends Question>(props: PageProps, question: Q, asked: AskedOf<Q>) {
  return useBuiltQuestion(props, question, asked, () => asked);
}

/**
 * The same where what is sent takes work and is made only when it is asked for.
 *
 * @param asked - small plain data that all of it follows from, beside the car
 * @param of - the car that it is asked of; left out: the car in hand
 */
export function useBuiltQuestion<Q extends Question, Asked>(
  { session, solving }: PageProps,
  question: Q,
  asked: Asked,
  build: (car: Car, asked: Asked) => AskedOf<Q>,
  of?: Car,
) {
  const found = useSignal<FoundAnswer<Q, Asked> | undefined>(undefined);
  const state = useSignal<QuestionState>({ kind: 'idle' });
  /** counts what was asked: an answer that comes late to a question that was cancelled is no answer to the next */
  const turn = useRef(0);
  const car = of ?? session.inHand.value;
  // A question that is closed is not worked on.
  useEffect(() => () => solving.cancelQuestion(), [solving]);
  const ask = () => {
    if (car === undefined || state.peek().kind === 'working') return;
    state.value = { kind: 'working', done: 0, of: 0 };
    const own = ++turn.current;
    void solving
      .ask(car, question, build(car, asked), (progress) => {
        if (state.peek().kind === 'working') state.value = { kind: 'working', ...progress };
      })
      .then((reply) => {
        // A worker that was ended for not listening answers as a failure: cancelled stays cancelled.
        if (state.peek().kind !== 'working' || turn.current !== own) return;
        if (reply.kind === 'studied') found.value = { car, asked, result: reply.result };
        state.value =
          reply.kind === 'failed'
            ? { kind: 'failed', message: reply.message }
            : { kind: reply.kind === 'studied' ? 'done' : 'cancelled' };
      });
  };
  return {
    found: found.value,
    state: state.value,
    ask,
    cancel: () => {
      state.value = { kind: 'cancelled' };
      solving.cancelQuestion();
    },
    /** whether the answer belongs to another car or was asked otherwise */
    isLate:
      found.value !== undefined &&
      (found.value.car !== car || JSON.stringify(found.value.asked) !== JSON.stringify(asked)),
  };
}
