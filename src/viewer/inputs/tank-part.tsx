import { createCoolant, freezeCaution, loopVolume } from '../../sim/index.ts';
import { PARTS } from '../document/parts.ts';
import { Caution } from '../fields/caution.tsx';
import { FieldList, type FormProps, More, specsOf } from '../fields/field-list.tsx';
import { degrees, fixed, joined, scaleOf, wordingIn } from '../format.ts';
import type { UnitChoice } from '../state/display.ts';

const TANK = PARTS.filter(({ part }) => part === 'tank')[0];

/** The tank and what is in it: how much goes round, and between which temperatures it stays liquid. */
export function TankPart(props: FormProps) {
  const { display, car } = props;
  const units = display.units.value;
  const { reservoir, coolant, ambient } = car.config;
  const mix = createCoolant(coolant.glycolByVolume, coolant.glycol);
  return (
    <>
      <FieldList {...props} fields={specsOf(props, TANK.main)} />
      <dl class="follow">
        <div>
          <dt>Whole loop</dt>
          <dd>{joined({ value: fixed(1000 * loopVolume(car.config), 1), unit: 'L' })}</dd>
        </div>
        <div>
          <dt>First ice at</dt>
          <dd>{degrees(mix.freezingPoint, units)}</dd>
        </div>
        <div>
          <dt>Boils under the cap at</dt>
          <dd>{degrees(mix.boilingPoint(ambient.pressure + coolant.capPressure), units)}</dd>
        </div>
      </dl>
      <More {...props} part={TANK} shown={TANK.main} />
      <Caution>{freezeCaution(car.config, wordingIn(units))}</Caution>
      <Caution>
        Many circuits and strips ban glycol: check the rules. Never open the cap hot, and match it to the weakest part
        of the loop: engine caps open at {engineCaps(units)}, loops like this one often at less. A litre more is a
        kilogram more: a tank needs a mount that holds it.
      </Caution>
      {reservoir.iceMass > 0 && (
        <Caution>
          Ice: the tank needs a vent and room for the melt, and its outlet a screen that pieces cannot close. Keep ice
          water off the pump's wiring and from under driven wheels, and drain the melt before the car moves. Fresh water
          left in on a freezing night splits the core. Check the rules of the place.
        </Caution>
      )}
    </>
  );
}

/** Pressures at which the caps of engines open. */
function engineCaps(units: UnitChoice): string {
  const { fromSi, unit } = scaleOf('kPa', units);
  const [least, most] = [93e3, 124e3].map((pascal) => fixed(fromSi(pascal), 0));
  return `${least} to ${joined({ value: most, unit })}`;
}
