import './questions.css';
import './answer-figures.css';
import type { ComponentChild } from 'preact';
import { FoldOut, QUESTIONS_ID } from '../fold-out.tsx';
import type { PageProps } from '../page.tsx';
import { CompareQuestion } from './compare/compare-question.tsx';
import { DayQuestion } from './day/day-question.tsx';
import { DropQuestion } from './drop/drop-question.tsx';
import { GaugeQuestion } from './gauge/gauge-question.tsx';
import { RestQuestion } from './rest/rest-question.tsx';
import { SensitivityQuestion } from './sensitivity/sensitivity-question.tsx';
import { StoreQuestion } from './store/store-question.tsx';
import { SweepQuestion } from './sweep/sweep-question.tsx';
import { TriageQuestion } from './triage/triage-question.tsx';
import { UpgradesQuestion } from './upgrades/upgrades-question.tsx';

/** Everything that may be asked here, in the order of a shop's week. */
const ASKED: readonly { readonly name: string; readonly show: (props: PageProps) => ComponentChild }[] = [
  { name: 'Tank', show: (props) => <StoreQuestion {...props} store="tank" /> },
  { name: 'Ice', show: (props) => <StoreQuestion {...props} store="ice" /> },
  { name: 'Rest', show: (props) => <RestQuestion {...props} /> },
  { name: 'Core pressure drop', show: (props) => <DropQuestion {...props} /> },
  { name: 'Upgrades', show: (props) => <UpgradesQuestion {...props} /> },
  { name: 'Gauge', show: (props) => <GaugeQuestion {...props} /> },
  { name: 'Triage', show: (props) => <TriageQuestion {...props} /> },
  { name: 'Compare', show: (props) => <CompareQuestion {...props} /> },
  { name: 'Another day', show: (props) => <DayQuestion {...props} /> },
  { name: 'Change a number', show: (props) => <SweepQuestion {...props} /> },
  { name: 'What to measure', show: (props) => <SensitivityQuestion {...props} /> },
];

/** Answers that take many runs, each worked out when it is asked for. */
export function Questions(props: PageProps) {
  const { display, session } = props;
  const chosen = ASKED.find(({ name }) => name === display.question.value) ?? ASKED[0];
  const car = session.inHand.value;
  return (
    <FoldOut id={QUESTIONS_ID} isOpen={display.isQuestionsOpen} session={session} title="More answers">
      <fieldset class="question-choice">
        <legend class="spoken">Question</legend>
        {ASKED.map(({ name }) => (
          <label key={name}>
            <input
              type="radio"
              name="question"
              value={name}
              checked={name === chosen.name}
              onChange={() => {
                display.question.value = name;
              }}
            />
            {name}
          </label>
        ))}
      </fieldset>
      <div key={chosen.name}>{car === undefined ? <p class="small">Open a car first.</p> : chosen.show(props)}</div>
    </FoldOut>
  );
}
