import { exchangerPutIn, exchangerTakenOut } from './exchanger-changes.ts';
import { FieldList, type FormProps, More, specsOf } from './field-list.tsx';
import { rebuild } from './list-actions.tsx';
import { PARTS } from './parts.ts';
import { TestPoint } from './test-point.tsx';
import { conductancePaths, isTested } from './test-point-changes.ts';

const EXCHANGER = PARTS.filter(({ part }) => part === 'exchanger')[0];

/** The front exchanger, or that the car has none. */
export function ExchangerPart(props: FormProps) {
  const { document } = props.car;
  if (props.car.config.exchanger === undefined) {
    return (
      <>
        <p>No front exchanger: the core's coolant goes straight to the tank, and its heat stays in the loop.</p>
        <p class="acts">
          <button
            type="button"
            class="link"
            onClick={() => rebuild(props, exchangerPutIn(document), 'put an exchanger in')}
          >
            Put one in, with the values of the demo car
          </button>
        </p>
      </>
    );
  }
  const followers = isTested(props.car.scenario, 'exchanger') ? conductancePaths('exchanger') : [];
  const main = EXCHANGER.main.filter((path) => !followers.includes(path));
  return (
    <>
      <FieldList {...props} fields={specsOf(props, main)} />
      <TestPoint {...props} part="exchanger" />
      <More {...props} part={EXCHANGER} shown={[...main, ...followers]} />
      <p class="acts">
        <button
          type="button"
          class="link"
          onClick={() => rebuild(props, exchangerTakenOut(document), 'take the exchanger out')}
        >
          Take it out of the loop
        </button>
      </p>
    </>
  );
}
