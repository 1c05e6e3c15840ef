import { createCoolant, loopVolume } from '../../sim/index.ts';
import { fixed, joined, NO_BREAK_SPACE, temperature } from '../format.ts';
import { Caution } from './caution.tsx';
import { FieldList, type FormProps, More, specsOf } from './field-list.tsx';
import { PARTS } from './parts.ts';

const TANK = PARTS.filter(({ part }) => part === 'tank')[0];

/** The reservoir and what is in it: how much goes round, and between which temperatures it stays liquid. */
export function TankPart(props: FormProps) {
  const { display, car } = props;
  const units = display.units.value;
  const { reservoir, coolant, ambient } = car.config;
  const mix = createCoolant(coolant.glycolByVolume, coolant.glycol);
  const freezes = joined(temperature(mix.freezingPoint, units));
  return (
    <>
      <FieldList {...props} fields={specsOf(props, TANK.main)} />
      <dl class="follow">
        <div>
          <dt>Whole loop</dt>
          <dd>{`${fixed(1000 * loopVolume(car.config), 1)}${NO_BREAK_SPACE}L`}</dd>
        </div>
        <div>
          <dt>First ice at</dt>
          <dd>{freezes}</dd>
        </div>
        <div>
          <dt>Boils under the cap at</dt>
          <dd>{joined(temperature(mix.boilingPoint(ambient.pressure + coolant.capPressure), units))}</dd>
        </div>
      </dl>
      <More {...props} part={TANK} shown={TANK.main} />
      <Caution>
        This mix begins to freeze at {freezes}: check that against the coldest night in storage, since frozen coolant
        splits pump and core. Many circuits and strips ban glycol; check the rules. Never open the cap hot, and match it
        to the weakest part of the loop. A litre more is a kilogram more: a tank needs a mount that holds it.
        {reservoir.iceMass > 0 &&
          ' Ice needs a tank that vents and room above for its melt; drops on a track or under a wheel are a hazard, so check the rules. Iced water wets the charge: watch the drops that go on into the engine.'}
      </Caution>
    </>
  );
}
