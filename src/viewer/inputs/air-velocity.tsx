import { FieldList, type FormProps, stateOf } from './field-list.tsx';
import { fieldGroups } from './fields.ts';
import { Fold } from './fold.tsx';
import { ListActions, rebuild } from './list-actions.tsx';
import { EVEN_AIR, velocityAdded } from './lists.ts';

const LIST = 'core.airVelocity';

/** Air velocity along the coolant, point by point, where it is not even. */
export function AirVelocity(props: FormProps) {
  const { document, scenario } = props.car;
  const rows = fieldGroups(document).filter(({ path }) => path.startsWith(`${LIST}.`));
  const points = scenario.values.core.airVelocity ?? [];
  const { isChanged, hasDraft, warnings } = stateOf(props, [LIST]);
  const title = points.length === 0 ? 'even' : `${points.length} points`;
  return (
    <Fold
      title={`Air velocity along the coolant (${title})`}
      note={isChanged ? 'changed' : undefined}
      isOpenAtFirst={hasDraft || warnings > 0}
    >
      {() =>
        rows.length === 0 ? (
          <button type="button" class="link" onClick={() => rebuild(props, { [LIST]: EVEN_AIR }, 'uneven air')}>
            Say how fast the air is at points of the face
          </button>
        ) : (
          <>
            <ol class="items" aria-label="Points of the air velocity">
              {rows.map(({ path, fields }, index) => (
                <li key={path}>
                  <h3>Point {index + 1}</h3>
                  <FieldList {...props} fields={fields} areMany />
                  <ListActions
                    {...props}
                    list={LIST}
                    index={index}
                    what="point"
                    least={2}
                    added={velocityAdded(document, points, index)}
                  />
                </li>
              ))}
            </ol>
            <button type="button" class="link" onClick={() => rebuild(props, { [LIST]: undefined }, 'even air')}>
              Even air again
            </button>
          </>
        )
      }
    </Fold>
  );
}
