import { isList, isObject } from '../../sim/index.ts';
import { type FieldSpec, groupAt } from '../document/field-groups.ts';
import { Caution } from '../fields/caution.tsx';
import { Field } from '../fields/field.tsx';
import { FieldList, type FormProps, stateOf } from '../fields/field-list.tsx';
import { Fold } from '../fields/fold.tsx';
import { ListActions } from '../fields/list-actions.tsx';
import { valueAt } from '../state/cars.ts';
import { ChargeTable } from './charge-table.tsx';

/** What is driven: single phases, and the block of phases that is repeated. */
export function PullsPart(props: FormProps) {
  const items = props.car.document.cycle;
  return (
    <>
      {isList(items) &&
        items.map((item, index) =>
          isObject(item) && 'repeat' in item ? (
            <Repetition key={index} {...props} path={`cycle.${index}`} />
          ) : (
            <Phase key={index} {...props} list="cycle" index={index} />
          ),
        )}
      <ChargeTable {...props} />
      <Caution>
        On rollers: check the restraints, keep people out of the cell, protect ears and eyes, extract the exhaust and
        have a CO alarm; the manual of the rollers and the local rules for the workplace come first. Anywhere else:
        closed course only.
      </Caution>
    </>
  );
}

function Repetition({ path, ...props }: FormProps & { readonly path: string }) {
  const { document } = props.car;
  const phases = valueAt(document, `${path}.phases`);
  return (
    <fieldset class="repetition">
      <legend>Repeated</legend>
      <FieldList {...props} fields={groupAt(document, path)?.fields ?? []} />
      {isList(phases) &&
        phases.map((_, index) => <Phase key={index} {...props} list={`${path}.phases`} index={index} />)}
    </fieldset>
  );
}

interface PhaseProps extends FormProps {
  readonly list: string;
  readonly index: number;
}

/** Keys of a phase that stand in for the air outside of the whole run. */
const WEATHER = ['outsideTemperature', 'stationPressure', 'relativeHumidity', 'exchangerPickUp'];

/** One phase: its length at once, the rest behind it. */
function Phase({ list, index, ...props }: PhaseProps) {
  const { document } = props.car;
  const path = `${list}.${index}`;
  const kind = String(valueAt(document, `${path}.kind`) ?? '');
  const name = String(valueAt(document, `${path}.name`) ?? kind);
  const fields = groupAt(document, path)?.fields ?? [];
  const duration = fields.find((field) => field.path === `${path}.duration`);
  const others = fields.filter((field) => field !== duration);
  const isWeather = (spec: FieldSpec) => WEATHER.some((key) => spec.path === `${path}.${key}`);
  const state = stateOf(
    props,
    others.map((field) => field.path),
  );
  return (
    <section class="phase">
      <h3>
        {name}
        {kind !== name && <span class="small"> {kind}</span>}
      </h3>
      {duration && <Field {...props} spec={duration} label={`duration of ${name}`} />}
      <Fold
        title={`More of ${name} (${others.length})`}
        note={state.isChanged ? 'changed' : undefined}
        isOpenAtFirst={state.hasDraft || state.warnings > 0}
      >
        {() => (
          <>
            {others
              .filter((spec) => !isWeather(spec))
              .map((spec) => (
                <Field key={spec.path} {...props} spec={spec} label={`${spec.row.label}, ${name}`} />
              ))}
            <section>
              <h3>Air in this phase, where it is another</h3>
              {others.filter(isWeather).map((spec) => (
                <Field key={spec.path} {...props} spec={spec} label={`${spec.row.label}, ${name}`} />
              ))}
            </section>
            <ListActions {...props} list={list} index={index} what="phase" />
          </>
        )}
      </Fold>
    </section>
  );
}
