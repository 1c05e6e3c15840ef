import { PARTS } from '../document/parts.ts';
import { FieldList, type FormProps, More, specsOf } from '../fields/field-list.tsx';
import { measureOf, valueText } from '../fields/measure.ts';
import { valueAt } from '../state/cars.ts';

const AIR = PARTS.filter(({ part }) => part === 'air')[0];
const UP_TO_PRESSURE = ['ambient.temperature', 'ambient.pressure', 'ambient.altitude'];

/** Outside air, the room and the engine: which of pressure and altitude holds is said where both may be typed. */
export function AirPart(props: FormProps) {
  const { car, display } = props;
  const { altitude } = car.scenario.values.ambient;
  const measure = measureOf('kPa abs', display.units.value);
  const pressure = valueText(Number((car.config.ambient.pressure / 1000).toPrecision(4)), measure);
  const isTyped = valueAt(car.document, 'ambient.pressure') !== undefined;
  return (
    <>
      <FieldList {...props} fields={specsOf(props, UP_TO_PRESSURE)} />
      <dl class="follow">
        <div>
          <dt>
            {isTyped
              ? 'The typed station pressure holds; altitude is not used'
              : `Standard atmosphere at ${valueText(altitude, measureOf('m', display.units.value))}`}
          </dt>
          <dd>{pressure}</dd>
        </div>
      </dl>
      <FieldList
        {...props}
        fields={specsOf(
          props,
          AIR.main.filter((path) => !UP_TO_PRESSURE.includes(path)),
        )}
      />
      <More {...props} part={AIR} shown={AIR.main} />
    </>
  );
}
