import { useSignal } from '@preact/signals';
import { explainRest, type RestStudy, WHY_NO_ANSWER } from '../../../sim/index.ts';
import { duration, wordingIn } from '../../format.ts';
import type { PageProps } from '../../page.tsx';
import { AnswerTable } from '../answer-table.tsx';
import { PullsWanted, pullsOf, whyNotPulls } from '../pulls-wanted.tsx';
import { QuestionFrame, Sentences } from '../question-frame.tsx';
import { useQuestion } from '../use-question.ts';
import { RestFigure } from './rest-figure.tsx';
import { restRows } from './rest-rows.ts';

/** How long to rest between pulls, and how soon the coolant has recovered from one. */
export function RestQuestion(props: PageProps) {
  const car = props.session.inHand.value;
  const pulls = useSignal(Math.max(1, pullsOf(car)));
  const { found, ...asking } = useQuestion(props, 'rest', { pulls: pulls.value });
  return (
    <QuestionFrame
      title="How long to rest between pulls?"
      inputs={<PullsWanted pulls={pulls} />}
      why={whyNotPulls(car, pulls.value)}
      {...asking}
    >
      {found &&
        (found.result === undefined ? (
          <Sentences of={[WHY_NO_ANSWER.noRest]} />
        ) : (
          <Answer {...props} study={found.result} />
        ))}
    </QuestionFrame>
  );
}

function Answer({ study, display }: PageProps & { readonly study: RestStudy }) {
  return (
    <>
      <Sentences of={explainRest(study, wordingIn(display.units.value))} />
      <RestFigure study={study} />
      <AnswerTable
        name="Pulls by rest"
        heads={['Rest', 'Pulls under the limit', 'What it is']}
        rows={restRows(study, duration)}
      />
    </>
  );
}
