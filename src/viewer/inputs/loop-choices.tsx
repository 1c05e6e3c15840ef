import { toSi } from '../../sim/index.ts';
import {
  canStandBeside,
  type DoubledPart,
  EXAMPLE_SINK,
  SECOND_PLACES,
  secondChanges,
  secondPlaceOf,
  sinkChanges,
  TANK_PLACES,
  tankChanges,
  tankPlaceOf,
} from '../document/loop-changes.ts';
import { rebuild } from '../fields/rebuild.ts';
import { capitalised, wordingIn } from '../format.ts';
import type { PageProps } from '../page.tsx';
import type { Car } from '../state/cars.ts';
import type { UnitChoice } from '../state/display.ts';
import type { Changes } from '../state/session.ts';

interface LoopChoicesProps extends PageProps {
  readonly car: Car;
}

/** How the loop is plumbed, from the parts that the car has. */
export function LoopChoices({ car, ...props }: LoopChoicesProps) {
  const { config } = car;
  const tank = tankPlaceOf(config);
  const seconds: readonly DoubledPart[] = config.exchanger === undefined ? ['pump'] : ['exchanger', 'pump'];
  return (
    <>
      {tank !== undefined && (
        <Choice
          {...props}
          name="tank"
          value={tank}
          choices={TANK_PLACES}
          changesFor={(place) => tankChanges(car, place)}
          notice={() => 'Each line stays with the part that it leaves: check the lengths beside the tank.'}
        />
      )}
      {seconds.map((part) => (
        <Choice
          key={part}
          {...props}
          name={`second ${part}`}
          value={secondPlaceOf(config, part)}
          choices={SECOND_PLACES.filter((place) => place !== 'side by side' || canStandBeside(car, part))}
          changesFor={(place) => secondChanges(car, part, place)}
          notice={(place, before) =>
            place === 'none' || before !== 'none'
              ? undefined
              : `The second ${part} starts as a copy of the first, its line too: type its own values.`
          }
        />
      ))}
      <Choice
        {...props}
        name="extra heat sink"
        value={config.heatSink === undefined ? 'none' : 'there'}
        choices={['none', 'there']}
        words={{ there: 'after the core' }}
        changesFor={(place) => sinkChanges(car, place === 'there')}
        notice={(place) =>
          place === 'there'
            ? `The curve of the heat sink is an example, ${exampleSink(props.display.units.value)}: type your own.`
            : undefined
        }
      />
    </>
  );
}

/** "0 W at 5.0 °C to 2.0 kW at 40.0 °C" */
function exampleSink(units: UnitChoice): string {
  const { power, temperature } = wordingIn(units);
  return EXAMPLE_SINK.curve
    .map(({ coolant, heat }) => `${power(heat)} at ${temperature(toSi(coolant, 'degC'))}`)
    .join(' to ');
}

interface ChoiceProps<Value extends string> extends PageProps {
  readonly name: string;
  readonly value: Value;
  readonly choices: readonly Value[];
  /** where a choice is not called by its own word */
  readonly words?: Partial<Record<Value, string>>;
  readonly changesFor: (value: Value) => Changes;
  /** what has to be said of a change that was made */
  readonly notice: (value: Value, before: Value) => string | undefined;
}

function Choice<Value extends string>(props: ChoiceProps<Value>) {
  const { name, value, choices, words = {} as Partial<Record<Value, string>>, changesFor, notice, display } = props;
  const id = `loop-${name.replaceAll(' ', '-')}`;
  const choose = (chosen: Value) => {
    display.notice.value = notice(chosen, value);
    rebuild(props, changesFor(chosen), `${name} ${words[chosen] ?? chosen}`);
  };
  return (
    <div class="field">
      <span class="name">
        <label for={id}>{capitalised(name)}</label>
      </span>
      <select id={id} value={value} onChange={(event) => choose(event.currentTarget.value as Value)}>
        {choices.map((choice) => (
          <option key={choice} value={choice}>
            {words[choice] ?? choice}
          </option>
        ))}
      </select>
    </div>
  );
}
