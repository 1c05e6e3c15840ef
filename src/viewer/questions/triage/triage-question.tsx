import { useSignal } from '@preact/signals';
import {
  explainTriage,
  LOOP_CAUTIONS,
  TRIAGE_DOUBTS,
  TRIAGE_RANGE,
  type Triage,
  WHY_NO_ANSWER,
} from '../../../sim/index.ts';
import { difference, fixed, kelvins, NO_BREAK_SPACE, named, scaleOf, wordingIn } from '../../format.ts';
import type { PageProps } from '../../page.tsx';
import type { UnitChoice } from '../../state/display.ts';
import { AnswerTable } from '../answer-table.tsx';
import { QuestionFrame, Sentences } from '../question-frame.tsx';
import { expected, isNumber, type Typed } from '../typed.ts';
import { TypedBox } from '../typed-box.tsx';
import { useQuestion } from '../use-question.ts';
import { TriageFigure } from './triage-figure.tsx';
import { rowMarks } from './triage-marks.tsx';

const NAMES = {
  rise: 'Coolant rise through the core, part load',
  approach: 'Charge less coolant, end of the pull',
} as const;
type Name = keyof typeof NAMES;
const BOXES = Object.keys(NAMES) as Name[];

/** What is wrong? Two temperature differences against the car healthy and with one fault at a time. */
export function TriageQuestion(props: PageProps) {
  const units = props.display.units.value;
  const typed = useSignal<Readonly<Record<Name, Typed>>>({ rise: 'empty', approach: 'empty' });
  const { rise, approach } = typed.value;
  const { found, ...asking } = useQuestion(props, 'triage', {
    rise: isNumber(rise) ? rise : 0,
    approach: isNumber(approach) ? approach : 0,
    ...TRIAGE_DOUBTS,
  });
  return (
    <QuestionFrame
      title="What is wrong with the car?"
      inputs={
        <>
          <p class="question-intro small">
            Two differences: coolant out of the core less coolant into it, at the end of the part-load phase before the
            first pull; and the charge on the gauge less the coolant into the core, at the end of that pull.
          </p>
          {BOXES.map((name) => (
            <TypedBox
              key={name}
              label={NAMES[name]}
              fileUnit="K"
              units={units}
              range={TRIAGE_RANGE}
              value={typed.value[name]}
              onChange={(value) => {
                typed.value = { ...typed.value, [name]: value };
              }}
            />
          ))}
        </>
      }
      why={whyNot(typed.value, units)}
      cautions={LOOP_CAUTIONS}
      {...asking}
    >
      {found && <Answer triage={found.result} units={units} />}
    </QuestionFrame>
  );
}

function whyNot(typed: Readonly<Record<Name, Typed>>, units: UnitChoice): string | undefined {
  const wrong = BOXES.find((name) => typed[name] === 'unreadable');
  if (wrong !== undefined) return expected(NAMES[wrong], 'K', units, TRIAGE_RANGE);
  return BOXES.every((name) => isNumber(typed[name])) ? undefined : 'Type both differences.';
}

/** Shares of a sentence never broken over two lines. */
const heldTogether = (sentence: string): string => sentence.replaceAll(' %', `${NO_BREAK_SPACE}%`);

function Answer({ triage, units }: { readonly triage: Triage | undefined; readonly units: UnitChoice }) {
  if (triage === undefined) return <p>{WHY_NO_ANSWER.noPartLoadBeforePull}</p>;
  const { reading, phase, pull, candidates } = triage;
  const { unit } = scaleOf('K', units);
  const doubts = [reading.riseDoubt, reading.approachDoubt].map((doubt) => kelvins(doubt, units)).join(' and ');
  return (
    <>
      <Sentences of={explainTriage(triage, wordingIn(units)).map(heldTogether)} />
      <TriageFigure triage={triage} units={units} />
      <AnswerTable
        name={`Rise at the end of ${phase}, charge less coolant at the end of pull ${pull}; a distance of 1 is what they may be off by, ${doubts}`}
        heads={['Cause, nearest first', 'Distance', named('Rise', unit), named('Charge less coolant', unit)]}
        rowMarks={rowMarks(triage)}
        rows={[
          ['measured', '', difference(reading.rise, units).value, difference(reading.approach, units).value],
          ...candidates.map(({ words, rise, approach, distance }) => [
            heldTogether(words),
            fixed(distance, 1),
            difference(rise, units).value,
            difference(approach, units).value,
          ]),
        ]}
      />
    </>
  );
}
