import { type CoreDropStudy, explainCoreDrop, WHY_NO_ANSWER } from '../../../sim/index.ts';
import { wordingIn } from '../../format.ts';
import type { PageProps } from '../../page.tsx';
import type { Car } from '../../state/cars.ts';
import { AnswerTable } from '../answer-table.tsx';
import { whyNoPulls } from '../pulls-wanted.tsx';
import { QuestionFrame, Sentences } from '../question-frame.tsx';
import { useQuestion } from '../use-question.ts';
import { DropFigure } from './drop-figure.tsx';
import { DROP_CARS, dropPanels, dropRows } from './drop-rows.ts';

const NOTHING = {};

/** What the core pressure drop takes, and what is left of what its cooling gives. */
export function DropQuestion(props: PageProps) {
  const { found, ...asking } = useQuestion(props, 'drop', NOTHING);
  return (
    <QuestionFrame
      title="What does the core pressure drop take?"
      why={whyNoPulls(props.session.inHand.value)}
      {...asking}
    >
      {found &&
        (found.result === undefined ? (
          <Sentences of={[WHY_NO_ANSWER.noWholePull]} />
        ) : (
          <Answer {...props} car={found.car} study={found.result} />
        ))}
    </QuestionFrame>
  );
}

function Answer({ car, study, display }: PageProps & { readonly car: Car; readonly study: CoreDropStudy }) {
  const units = display.units.value;
  return (
    <>
      <Sentences of={explainCoreDrop(study, car.config.compressor, wordingIn(units))} />
      <DropFigure panels={dropPanels(study, car.config.ambient.temperature, units)} />
      <AnswerTable
        name="At the end of pull 1"
        heads={['Figure', ...DROP_CARS.map(([, name]) => name)]}
        rows={dropRows(study, units)}
      />
    </>
  );
}
