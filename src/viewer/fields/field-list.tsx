import type { ComponentChildren } from 'preact';
import { isNumberRow, isRequired } from '../../sim/index.ts';
import { type FieldGroup, type FieldSpec, fieldGroups, groupAt } from '../document/field-groups.ts';
import type { PartSpec } from '../document/parts.ts';
import { capitalised } from '../format.ts';
import type { PageProps } from '../page.tsx';
import { areRelated, type Car, valueAt } from '../state/cars.ts';
import { Field } from './field.tsx';
import { Fold } from './fold.tsx';

/** What every piece of the form is handed: the car in hand and the one it is compared with. */
export interface FormProps extends PageProps {
  readonly car: Car;
  readonly before: Car;
}

/** Fields of some paths of a document, in the order asked for. */
export function specsOf({ car }: FormProps, paths: readonly string[]): FieldSpec[] {
  const all = fieldGroups(car.document).flatMap(({ fields }) => fields);
  return paths.flatMap((path) => all.filter((field) => field.path === path));
}

interface FieldListProps extends FormProps {
  readonly fields: readonly FieldSpec[];
  /** only those with a usual range get a slider */
  readonly areMany?: boolean;
  /** paths that the car cannot do without, though another could */
  readonly needed?: ReadonlySet<string>;
}

export function FieldList({ fields, areMany = false, needed, ...props }: FieldListProps) {
  return (
    <>
      {fields.map((spec) => (
        <Field
          key={spec.path}
          {...props}
          spec={spec}
          isNeeded={needed?.has(spec.path) === true && !isRequired(spec.row)}
          hasSlider={!areMany || (isNumberRow(spec.row) && spec.row.usual !== undefined)}
        />
      ))}
    </>
  );
}

/** "changed" where one of the fields is, and whether there is something in them to look at. */
export function stateOf({ session, car }: FormProps, paths: readonly string[]) {
  const isOneOf = (path: string) => paths.some((each) => areRelated(each, path));
  return {
    isChanged: session.changes.value.some(isOneOf),
    hasDraft: session.drafts.value.some((draft) => isOneOf(draft.path)),
    warnings: car.warnings.filter(({ path }) => isOneOf(path)).length,
  };
}

interface MoreProps extends FormProps {
  readonly part: PartSpec;
  readonly title?: string;
  /** fields that already stand above */
  readonly shown: readonly string[];
  readonly needed?: ReadonlySet<string>;
}

/** Groups that a file has whole or not at all: without one there is nothing to fill in, and some have a section of their own. */
const ONLY_WHOLE: ReadonlySet<string> = new Set([
  'core.test',
  'coreGeometry',
  'exchanger.test',
  'secondExchanger',
  'secondExchanger.test',
  'secondPump',
  'heatSink',
]);

/** Every key of the part's groups that is not shown already. */
export function More({ part, title = 'All other values', shown, ...props }: MoreProps) {
  const { document } = props.car;
  const groups = fieldGroups(document)
    .filter(({ path }) => part.groups.includes(path))
    .filter(({ path }) => !ONLY_WHOLE.has(path))
    .map((group) => ({ ...group, fields: group.fields.filter(({ path }) => !shown.includes(path)) }))
    .filter(({ fields }) => fields.length > 0);
  const paths = groups.flatMap(({ fields }) => fields.map(({ path }) => path));
  const { isChanged, hasDraft, warnings } = stateOf(props, paths);
  if (paths.length === 0) return null;
  return (
    <Fold
      title={`${title} (${paths.length})`}
      note={isChanged ? 'changed' : undefined}
      isOpenAtFirst={hasDraft || warnings > 0}
    >
      {() => groups.map((group) => <Group key={group.path} {...props} group={group} hasTitle={groups.length > 1} />)}
    </Fold>
  );
}

interface GroupProps extends FormProps {
  readonly group: FieldGroup;
  readonly hasTitle: boolean;
  readonly needed?: ReadonlySet<string>;
}

function Group({ group, hasTitle, ...props }: GroupProps) {
  return (
    <section>
      {hasTitle && <h3>{capitalised(group.title)}</h3>}
      <FieldList {...props} fields={group.fields} areMany />
    </section>
  );
}

interface PartOfFileProps extends FormProps {
  /** its path */
  readonly group: string;
  /** paths that do not stand beside what is typed */
  readonly hidden?: readonly string[];
  /** what is not one box, above the boxes */
  readonly children?: ComponentChildren;
}

/** The keys of a group that a file has whole or not at all, where it is there. */
export function PartOfFile({ group: path, hidden = [], children, ...props }: PartOfFileProps) {
  const { document } = props.car;
  const group = groupAt(document, path);
  if (group === undefined || valueAt(document, path) === undefined) return null;
  return (
    <section>
      <h3>{capitalised(group.title)}</h3>
      {children}
      <FieldList {...props} fields={group.fields.filter((field) => !hidden.includes(field.path))} areMany />
    </section>
  );
}
