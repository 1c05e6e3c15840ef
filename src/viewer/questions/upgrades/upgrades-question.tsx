import './upgrades-question.css';
import { useSignal } from '@preact/signals';
import { explainUpgrades, type UpgradeStudy, upgradeClashes } from '../../../sim/index.ts';
import { Fold } from '../../fields/fold.tsx';
import { onScreen, scaleOf, wordingIn } from '../../format.ts';
import type { PageProps } from '../../page.tsx';
import { AnswerTable } from '../answer-table.tsx';
import { whyNoPulls } from '../pulls-wanted.tsx';
import { QuestionFrame, Sentences } from '../question-frame.tsx';
import { type FoundAnswer, useBuiltQuestion } from '../use-question.ts';
import { upgradeMarks } from './upgrade-marks.ts';
import { upgradeTable, WAY_HEADS, wayRows } from './upgrade-rows.ts';
import { refusals, type UpgradesChoice, withUpgradedCars } from './upgraded-cars.ts';
import { UpgradesFigure } from './upgrades-figure.tsx';
import { WaysFigure } from './ways-figure.tsx';

/** What each upgrade of the opened file buys, alone and in order, in which order, and the cheapest way. */
export function UpgradesQuestion(props: PageProps) {
  const { session } = props;
  const car = session.inHand.value;
  // A changed car has no list of its own: it is that of the file that was opened.
  const list = session.before.value?.scenario.values.upgrades ?? [];
  const isOrdered = useSignal(true);
  const { found, ...asking } = useBuiltQuestion(
    props,
    'upgrades',
    { list, withOrders: isOrdered.value },
    ({ scenario }, asked) => withUpgradedCars(scenario, asked),
  );
  return (
    <QuestionFrame
      title="What does each upgrade buy?"
      inputs={
        list.length > 0 && (
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
  const shown = best?.order ?? inOrder;
  const orderName = best?.order ? 'the best order' : 'the order of the file';
  const isOne = alone.length === 1;
  const refused = refusals(study, found.car.scenario, list);
  const more: readonly MoreFigures[] = [
    { name: 'Each alone, on the car as it is', steps: alone, facts: [...words.alone, ...refused] },
    ...(isOne ? [] : [{ name: 'In the order of the file', steps: inOrder, facts: words.inOrder }]),
    ...(best?.order && !isOne ? [{ name: 'In the best order', steps: best.order, facts: [] }] : []),
  ];
  return (
    <>
      <div class="upgrades-part">
        <Sentences of={[...words.lead, ...words.base]} />
      </div>
      {alone.length > 0 && (
        <>
          <UpgradesFigure
            marks={upgradeMarks(study, shown, list, units)}
            unit={scaleOf('degC', units).unit}
            orderName={orderName}
          />
          <div class="upgrades-table">
            <AnswerTable
              name={isOne ? 'On the car as it is' : `One on top of the other, in ${orderName}`}
              {...upgradeTable(base, shown, list, units, 'short')}
            />
            {/* The order itself stands above. */}
            <Facts of={best?.order ? words.best.slice(1) : words.best} />
          </div>
          {best?.ways && <WaysFigure ways={best.ways} />}
          {words.ways.length > 0 && (
            <div class="upgrades-table">
              {best?.ways && <AnswerTable name="The cheapest way" heads={WAY_HEADS} rows={wayRows(best.ways, list)} />}
              {/* The ways themselves are in the table. */}
              <Facts of={words.ways.slice(best?.ways?.length ?? 0)} />
            </div>
          )}
          <div class="upgrades-part folded-tables">
            {more.map(({ name, steps, facts }) => (
              <Fold key={name} title={`${name}: every figure`}>
                {() => (
                  <>
                    <AnswerTable
                      name={name}
                      {...upgradeTable(base, steps, list, units, steps === alone ? 'alone' : 'on top')}
                    />
                    <Facts of={facts} />
                  </>
                )}
              </Fold>
            ))}
            <p class="small">
              Coolant, core pressure drop, drive power and air are those at the end of the first pull. Prices and hours
              are the file's own; a pull counts as long as it and all before it stay at or under the limit.
            </p>
          </div>
        </>
      )}
    </>
  );
}

/** One way to go through the upgrades with every figure, and what each step does in words. */
interface MoreFigures {
  readonly name: string;
  readonly steps: UpgradeStudy['alone'];
  readonly facts: readonly string[];
}

function Facts({ of }: { readonly of: readonly string[] }) {
  if (of.length === 0) return null;
  return (
    <ul class="upgrades-facts">
      {of.map((fact) => (
        <li key={fact}>{onScreen(fact)}</li>
      ))}
    </ul>
  );
}
