import { exchangerPutIn } from '../document/exchanger-changes.ts';
import { halfwayAdded } from '../document/lists.ts';
import { partTakenOut } from '../document/loop-changes.ts';
import { PARTS } from '../document/parts.ts';
import { conductancePaths, isTested } from '../document/test-point-changes.ts';
import { FieldList, type FormProps, More, PartOfFile, specsOf } from '../fields/field-list.tsx';
import { ListItems } from '../fields/list-items.tsx';
import { rebuild } from '../fields/rebuild.ts';
import { DEMO_SCENARIOS } from '../files/demo-scenarios.ts';
import { TestPoint } from './test-point.tsx';

const EXCHANGER = PARTS.filter(({ part }) => part === 'exchanger')[0];

/** The front exchanger, or that the car has none; then what else takes heat out of the loop. */
export function ExchangerPart(props: FormProps) {
  const { car } = props;
  return (
    <>
      {car.config.exchanger === undefined ? <NoExchanger {...props} /> : <Exchanger {...props} />}
      <PartOfFile {...props} group="secondExchanger" />
      <HeatSink {...props} />
    </>
  );
}

function NoExchanger(props: FormProps) {
  return (
    <>
      <p>No front exchanger: the core's coolant goes straight to the tank, and its heat stays in the loop.</p>
      <p class="acts">
        <button
          type="button"
          class="link"
          onClick={() => rebuild(props, exchangerPutIn(props.car), 'put a front exchanger in')}
        >
          Put one in, with the values of the {DEMO_SCENARIOS[0].name}
        </button>
      </p>
    </>
  );
}

function Exchanger(props: FormProps) {
  const { car } = props;
  const followers = isTested(car.scenario, 'exchanger') ? conductancePaths('exchanger') : [];
  const main = EXCHANGER.main.filter((path) => !followers.includes(path));
  return (
    <>
      <FieldList {...props} fields={specsOf(props, main)} />
      <TestPoint {...props} part="exchanger" />
      <More {...props} part={EXCHANGER} shown={[...main, ...followers]} />
      {car.config.secondExchanger === undefined && (
        <p class="acts">
          <button
            type="button"
            class="link"
            onClick={() => rebuild(props, partTakenOut(car, 'exchanger'), 'take the front exchanger out')}
          >
            Take it out of the loop
          </button>
        </p>
      )}
    </>
  );
}

/** Points of the extra heat sink. */
function HeatSink(props: FormProps) {
  const { document, scenario } = props.car;
  const { heatSink } = scenario.values;
  if (heatSink === undefined) return null;
  return (
    <section>
      <h3>Extra heat sink</h3>
      <ListItems
        {...props}
        list="heatSink.curve"
        label="Points of the heat sink"
        what="point"
        least={2}
        added={(index) => halfwayAdded(document, 'heatSink.curve', heatSink.curve, index)}
      />
    </section>
  );
}
