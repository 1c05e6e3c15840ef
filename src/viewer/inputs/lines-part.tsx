import { type LineKey, lineAfter, linePlacesOf, PART_WORDS } from '../../sim/index.ts';
import { fieldGroups } from '../document/field-groups.ts';
import { PARTS } from '../document/parts.ts';
import { FieldList, type FormProps, More, specsOf, stateOf } from '../fields/field-list.tsx';
import { Fold } from '../fields/fold.tsx';
import { ListActions } from '../fields/list-actions.tsx';
import { rebuild } from '../fields/rebuild.ts';
import { joined } from '../format.ts';
import { LoopChoices } from './loop-choices.tsx';

const LINES = PARTS.filter(({ part }) => part === 'lines')[0];

/** A line to begin with where a part was bolted on [m]. */
const FIRST_SEGMENT = { length: 1 };

/** How the loop is plumbed, one bore for all its lines, then each line with its segments. */
export function LinesPart(props: FormProps) {
  return (
    <>
      <LoopChoices {...props} />
      <FieldList {...props} fields={specsOf(props, LINES.main)} />
      {linePlacesOf(props.car.config.loop).map((place) => (
        <Line key={place} {...props} line={lineAfter(place)} name={`After the ${PART_WORDS[place]}`} />
      ))}
      <More {...props} part={LINES} shown={LINES.main} />
    </>
  );
}

function Line({ line, name, ...props }: FormProps & { readonly line: LineKey; readonly name: string }) {
  const { values } = props.car.scenario;
  const list = `lines.${line}`;
  const segments = fieldGroups(props.car.document).filter(({ path }) => path === list || path.startsWith(`${list}.`));
  const lengths = (values.lines[line] ?? []).map(({ length }) => length);
  const total = lengths.reduce((sum, length) => sum + length, 0);
  const { isChanged, hasDraft, warnings } = stateOf(props, [list]);
  return (
    <Fold
      title={`${name}, ${segments.length === 0 ? 'no line' : joined({ value: String(Number(total.toPrecision(4))), unit: 'm' })}`}
      note={isChanged ? 'changed' : undefined}
      isOpenAtFirst={hasDraft || warnings > 0}
    >
      {() => (
        <>
          {segments.map(({ path, fields }, index) => (
            <section key={path}>
              {segments.length > 1 && <h3>Segment {index + 1}</h3>}
              <FieldList {...props} fields={fields} areMany />
              <ListActions {...props} list={list} index={index} what="segment" least={0} />
            </section>
          ))}
          {segments.length === 0 && (
            <p class="acts">
              <button
                type="button"
                class="link"
                onClick={() => rebuild(props, { [list]: [FIRST_SEGMENT] }, 'add a segment')}
              >
                Add a first segment, {FIRST_SEGMENT.length} m
              </button>
            </p>
          )}
        </>
      )}
    </Fold>
  );
}
