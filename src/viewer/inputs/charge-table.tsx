import { isList } from '../../sim/index.ts';
import { rowAdded, tableStarted } from '../document/charge-table-changes.ts';
import { Caution } from '../fields/caution.tsx';
import { type FormProps, stateOf } from '../fields/field-list.tsx';
import { Fold } from '../fields/fold.tsx';
import { ListItems } from '../fields/list-items.tsx';
import { rebuild } from '../fields/rebuild.ts';

const LIST = 'chargeTable';

/** The shop's own table of spark and torque by charge temperature, row by row. */
export function ChargeTable(props: FormProps) {
  const { document, scenario } = props.car;
  const { length } = scenario.values.chargeTable ?? [];
  const { isChanged, hasDraft, warnings } = stateOf(props, [LIST]);
  const title = length === 0 ? 'none' : length === 1 ? '1 row' : `${length} rows`;
  return (
    <Fold
      title={`Your table of spark and torque (${title})`}
      note={isChanged ? 'changed' : undefined}
      isOpenAtFirst={hasDraft || warnings > 0}
    >
      {() => (
        <>
          {isList(document[LIST]) ? <Rows {...props} /> : <NoTable {...props} />}
          <Caution>
            What comes of the table is an estimate, read off at a pull’s peak. It changes no spark and no fuel: keep the
            engine’s own knock and temperature protections active.
          </Caution>
        </>
      )}
    </Fold>
  );
}

function Rows(props: FormProps) {
  const { document, scenario } = props.car;
  const { chargeTable = [] } = scenario.values;
  return (
    <>
      <ListItems
        {...props}
        list={LIST}
        label="Rows of the table of spark and torque"
        what="row"
        added={(index) => rowAdded(document, chargeTable, index)}
      />
      <button type="button" class="link" onClick={() => rebuild(props, { [LIST]: undefined }, 'remove the table')}>
        Remove the table
      </button>
    </>
  );
}

function NoTable(props: FormProps) {
  const { limit } = props.car.scenario.values;
  return (
    <>
      <p class="small">No engine’s table holds for another: without your own nothing is said of spark and torque.</p>
      <button
        type="button"
        class="link"
        onClick={() => rebuild(props, tableStarted(limit.chargeTemperature), 'table of spark and torque')}
      >
        Start a table, with no change at and above the limit
      </button>
    </>
  );
}
