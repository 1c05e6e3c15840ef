import { exchangerPutIn, exchangerTakenOut } from './exchanger-changes.ts';
import { FieldList, type FormProps, More, specsOf } from './field-list.tsx';
import { rebuild } from './list-actions.tsx';
import { PARTS } from './parts.ts';

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
  return (
    <>
      <FieldList {...props} fields={specsOf(props, EXCHANGER.main)} />
      <More {...props} part={EXCHANGER} shown={EXCHANGER.main} />
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
