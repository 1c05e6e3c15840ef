import { EVEN_AIR } from '../document/core-changes.ts';
import { halfwayAdded } from '../document/lists.ts';
import { type FormProps, stateOf } from '../fields/field-list.tsx';
import { Fold } from '../fields/fold.tsx';
import { ListItems } from '../fields/list-items.tsx';
import { rebuild } from '../fields/rebuild.ts';

const LIST = 'core.airVelocity';

/** Air velocity along the coolant, point by point, where it is not even. */
export function AirVelocity(props: FormProps) {
  const { document, scenario } = props.car;
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
        points.length === 0 ? (
          <button type="button" class="link" onClick={() => rebuild(props, { [LIST]: EVEN_AIR }, 'uneven air')}>
            Say how fast the air is at points of the face
          </button>
        ) : (
          <>
            <ListItems
              {...props}
              list={LIST}
              label="Points of the air velocity"
              what="point"
              least={2}
              added={(index) => halfwayAdded(document, LIST, points, index)}
            />
            <button type="button" class="link" onClick={() => rebuild(props, { [LIST]: undefined }, 'even air')}>
              Even air again
            </button>
          </>
        )
      }
    </Fold>
  );
}
