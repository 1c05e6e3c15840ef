import './upgrades-question.css';
import { useSignal } from '@preact/signals';
import { explainUpgrades, MOST_UPGRADES_ORDERED, type UpgradeStudy, upgradeClashes } from '../../sim/index.ts';
import { onScreen, scaleOf, wordingIn } from '../format.ts';
import type { PageProps } from '../page.tsx';
import { AnswerTable } from './answer-table.tsx';
import { whyNoPulls } from './pulls-wanted.tsx';
import { QuestionFrame, Sentences } from './question-frame.tsx';
import { upgradeMarks } from './upgrade-marks.ts';
import { upgradeTable, WAY_HEADS, wayRows } from './upgrade-rows.ts';
import { refusals, type UpgradesChoice, withUpgradedCars } from './upgraded-cars.ts';
import { UpgradesFigure } from './upgrades-figure.tsx';
import { type FoundAnswer, useBuiltQuestion } from './use-question.ts';
import { WaysFigure } from './ways-figure.tsx';

/** What each upgrade of the opened file buys, alone and in order, in which order, and the cheapest way. */
export function UpgradesQuestion(props: PageProps) {
  const { session } = props;
  const car = session.inHand.value;
  // A changed car has no list of its own: it is that of the file that was opened.
  const list = session.before.value?.scenario.values.upgrades ?? [];
  const isOrdered = useSignal(true);
  const canOrder = list.length > 0 && list.length <= MOST_UPGRADES_ORDERED;
  const { found, ...asking } = useBuiltQuestion(
    props,
    'upgrades',
    { list, withOrders: isOrdered.value && canOrder },
    ({ scenario }, asked) => withUpgradedCars(scenario, asked),
  );
  return (
    <QuestionFrame
      title="What does each upgrade buy?"
      inputs={
        canOrder && (
          <label class="upgrades-ordered">
            <input
              type="checkbox"
              checked={isOrdered}
              onChange={({ currentTarget }) => {
                isOrdered.value = currentTarget.checked;
              }}
            />
            Best order and cheapest way
          </label>
        )
      }
      why={list.length === 0 ? 'The file lists no upgrades: nothing to weigh.' : whyNoPulls(car)}
      {...asking}
    >
      {list.length === 0 ? (
        <HowToList />
      ) : (
        found?.result && (
          <>
            {found.car.scenario.values.upgrades === undefined && (
              <p class="small upgrades-part">The upgrades of the opened file, made on the changed car.</p>
            )}
            <Answer {...props} found={found} study={found.result} />
          </>
        )
      )}
    </QuestionFrame>
  );
}

const EXAMPLE = `"upgrades": [
  {
    "name": "bigger core",
    "price": 1680,
    "hours": 11,
    "changes": {
      "core.airConductance": 585,
      "core.airDrop": 6
    }
  }
]`;

function HowToList() {
  return (
    <div class="upgrades-part">
      <p>
        Add them to the scenario file beside "variants", one item a step of the build: its name, the keys that it
        changes with their new values, and where you like its price and hours.
      </p>
      <pre>{EXAMPLE}</pre>
      <p class="small">Save the page's file, add the list with any text editor, and open it again.</p>
    </div>
  );
}

interface AnswerProps extends PageProps {
  readonly found: FoundAnswer<'upgrades', UpgradesChoice>;
  readonly study: UpgradeStudy;
}

function Answer({ display, found, study }: AnswerProps) {
  const units = display.units.value;
  const { list } = found.asked;
  const words = explainUpgrades(study, list, upgradeClashes(list), wordingIn(units));
  const { base, alone, inOrder, best } = study;
  const tableOf = (name: string, steps: typeof alone) => (
    <AnswerTable name={name} {...upgradeTable(base, steps, list, units, steps === alone)} />
  );
  return (
    <>
      <Sentences of={words.base} />
      <UpgradesFigure marks={upgradeMarks(study, list, units)} unit={scaleOf('degC', units).unit} />
      <div class="upgrades-part">
        {tableOf('Each alone, on the car as it is', alone)}
        <Facts of={[...words.alone, ...refusals(study, found.car.scenario, list).map(onScreen)]} />
      </div>
      <div class="upgrades-part">
        {tableOf('One on top of the other, in the order of the file', inOrder)}
        <Facts of={words.inOrder} />
      </div>
      {words.best.length > 0 && (
        <div class="upgrades-part">
          {best?.order && tableOf('In the best order', best.order)}
          <Facts of={words.best} />
        </div>
      )}
      {best?.ways && (
        <>
          <WaysFigure ways={best.ways} />
          <AnswerTable name="The cheapest way" heads={WAY_HEADS} rows={wayRows(best.ways, list)} />
        </>
      )}
      {words.ways.length > 0 && (
        <div class="upgrades-part">
          <Facts of={words.ways} />
        </div>
      )}
      <p class="small upgrades-part">
        Coolant, core drop, drive power and air are those at the end of the first pull. Prices and hours are the file's
        own; a pull counts as long as it and all before it stay at or under the limit.
      </p>
    </>
  );
}

function Facts({ of }: { readonly of: readonly string[] }) {
  return (
    <ul class="upgrades-facts">
      {of.map((fact) => (
        <li key={fact}>{fact}</li>
      ))}
    </ul>
  );
}
