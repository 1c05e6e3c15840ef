import { isList } from '../../sim/index.ts';
import { Caution } from './caution.tsx';
import { FieldList, type FormProps, stateOf } from './field-list.tsx';
import { fieldGroups } from './fields.ts';
import { Fold } from './fold.tsx';
import { ListActions, rebuild } from './list-actions.tsx';
import { rowAdded, tableStarted } from './lists.ts';

const LIST = 'chargeTable';

/** The shop's own table of spark and torque by charge temperature, row by row. */
export function ChargeTable(props: FormProps) {
  const { document } = props.car;
  const rows = fieldGroups(document).filter(({ path }) => path.startsWith(`${LIST}.`));
  const { isChanged, hasDraft, warnings } = stateOf(props, [LIST]);
  const title = rows.length === 0 ? 'none' : rows.length === 1 ? '1 row' : `${rows.length} rows`;
  return (
    <Fold
      title={`Your table of spark and torque (${title})`}
      note={isChanged ? 'changed' : undefined}
      isOpenAtFirst={hasDraft || warnings > 0}
    >
      {() => (
        <>
          {isList(document[LIST]) ? <Rows {...props} rows={rows} /> : <NoTable {...props} />}
          <Caution>
            What comes of the table is an estimate, read off at a pull’s peak. It changes no spark and no fuel: keep the
            engine’s own knock and temperature protections active.
          </Caution>
        </>
      )}
    </Fold>
  );
}

function Rows({ rows, ...props }: FormProps & { readonly rows: ReturnType<typeof fieldGroups> }) {
  const { document, scenario } = props.car;
  const { chargeTable = [] } = scenario.values;
  return (
    <>
      <ol class="items" aria-label="Rows of the table of spark and torque">
        {rows.map(({ path, fields }, index) => (
          <li key={path}>
            <h3>Row {index + 1}</h3>
            <FieldList {...props} fields={fields} areMany />
            <ListActions
              {...props}
              list={LIST}
              index={index}
              what="row"
              added={rowAdded(document, chargeTable, index)}
            />
          </li>
        ))}
      </ol>
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
