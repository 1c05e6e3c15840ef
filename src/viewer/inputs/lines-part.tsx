import type { Config } from '../../sim/index.ts';
import { FieldList, type FormProps, More, specsOf, stateOf } from './field-list.tsx';
import { fieldGroups } from './fields.ts';
import { Fold } from './fold.tsx';
import { ListActions } from './list-actions.tsx';
import { PARTS } from './parts.ts';

const LINES = PARTS.filter(({ part }) => part === 'lines')[0];
const NAMES = {
  pumpToCore: 'Pump to core',
  coreToExchanger: 'Core to exchanger',
  exchangerToReservoir: 'Exchanger to reservoir',
  reservoirToPump: 'Reservoir to pump',
} as const;

/** Each line of the loop by its key in the file, with its name on the page. */
function namesOf({ exchanger }: Config): [string, string][] {
  const names = Object.entries(NAMES);
  if (exchanger !== undefined) return names;
  return names
    .filter(([line]) => line !== 'exchangerToReservoir')
    .map(([line, name]) => [line, line === 'coreToExchanger' ? 'Core to reservoir' : name]);
}

/** The lines of the loop: one bore for all, then each line with its segments. */
export function LinesPart(props: FormProps) {
  return (
    <>
      <FieldList {...props} fields={specsOf(props, LINES.main)} />
      {namesOf(props.car.config).map(([line, name]) => (
        <Line key={line} {...props} line={`lines.${line}`} name={name} />
      ))}
      <More {...props} part={LINES} shown={LINES.main} />
    </>
  );
}

function Line({ line, name, ...props }: FormProps & { readonly line: string; readonly name: string }) {
  const { values } = props.car.scenario;
  const segments = fieldGroups(props.car.document).filter(({ path }) => path === line || path.startsWith(`${line}.`));
  const lengths = (values.lines[line.slice('lines.'.length) as keyof typeof NAMES] ?? []).map(({ length }) => length);
  const total = lengths.reduce((sum, length) => sum + length, 0);
  const { isChanged, hasDraft, warnings } = stateOf(props, [line]);
  return (
    <Fold
      title={`${name}, ${Number(total.toPrecision(4))} m`}
      note={isChanged ? 'changed' : undefined}
      isOpenAtFirst={hasDraft || warnings > 0}
    >
      {() =>
        segments.map(({ path, fields }, index) => (
          <section key={path}>
            {segments.length > 1 && <h3>Segment {index + 1}</h3>}
            <FieldList {...props} fields={fields} areMany />
            <ListActions {...props} list={line} index={index} what="segment" />
          </section>
        ))
      }
    </Fold>
  );
}
