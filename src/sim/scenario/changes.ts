import { alternatives, type Issue, isObject, type JsonObject, type JsonValue, quoted } from './issue.ts';
import { measuresAnew } from './measured-flow.ts';
import { nearestWord } from './nearest.ts';
import { withValue } from './place.ts';
import { readScenario, resultOf, type Scenario, type ScenarioResult } from './scenario.ts';
import { GROUPS, type Values } from './shape.ts';

/** The lists of a file whose items change the rest of it, and what one item is called. */
const ITEMS = { variants: 'variant', upgrades: 'upgrade' } as const;
type ChangeList = keyof typeof ITEMS;

/** An item of one of these lists. */
interface ListItem {
  readonly list: ChangeList;
  /** from 0 */
  readonly index: number;
  readonly name: string;
}

/** A set of changes. */
export interface ChangeSet {
  /** where it stands in the file; absent where no file holds it */
  readonly item?: ListItem;
  readonly changes: JsonObject;
}

interface Changed {
  readonly document?: JsonObject;
  readonly values?: Values;
  readonly issues: readonly Issue[];
}

/** One change with the set that makes it. */
interface Change {
  readonly path: string;
  readonly value: JsonValue;
  readonly set: ChangeSet;
}

/** What may be changed beside the groups. */
const OTHERS_OF_THE_CAR = ['loop', 'cycle'];

/** The file without the lists of what may be changed in it. */
export function carAlone({ variants: _, upgrades: __, ...car }: JsonObject): JsonObject {
  return car;
}

/** `withChanges` as a scenario; a flow that was measured stays that of the car on which it was. */
export function scenarioWith(scenario: Scenario, title: string, sets: readonly ChangeSet[]): ScenarioResult {
  const own = readScenario(scenario.document, scenario.measuredOn === undefined).issues;
  const { document, values, issues } = withChanges(scenario.document, title, sets, own);
  if (document === undefined || values === undefined) return { issues };
  return resultOf(document, values, issues, carOfMeter(scenario, title, sets));
}

/** The car on which the flow of a changed one was measured; undefined where that is the changed car itself. */
function carOfMeter(scenario: Scenario, title: string, sets: readonly ChangeSet[]): Scenario | undefined {
  const last = lastMeasured(scenario.document, sets);
  if (last < 0) return scenario.measuredOn ?? scenario;
  return last === sets.length - 1 ? undefined : scenarioWith(scenario, title, sets.slice(0, last + 1)).scenario;
}

const lastMeasured = (original: JsonObject, sets: readonly ChangeSet[]): number =>
  sets.findLastIndex(({ changes }) => measuresAnew(changes, original));

/**
 * The car of a file with sets of changes made, one after the other: where two change the same key, the later counts.
 *
 * @param title - what the changed car is called, after the name of the file
 * @param sets - at least one; the last is blamed for what no single change brings about
 * @param issuesBefore - of the file as it is
 */
export function withChanges(
  original: JsonObject,
  title: string,
  sets: readonly ChangeSet[],
  issuesBefore: readonly Issue[],
): Changed {
  const changes = sets.flatMap((set) =>
    Object.entries(set.changes).map(([path, value]): Change => ({ path, value, set })),
  );
  let document: JsonValue = { ...carAlone(original), name: `${String(original.name)}: ${title}` };
  const issues: Issue[] = [];
  for (const change of changes) {
    const steps = change.path.split('.');
    const isOfTheCar = OTHERS_OF_THE_CAR.includes(steps[0]) || Object.hasOwn(GROUPS, steps[0]);
    const next: JsonValue | undefined = isOfTheCar ? withValue(document, steps, change.value) : undefined;
    if (next === undefined) issues.push(noSuchPlace(change, steps[0], isOfTheCar));
    else document = next;
  }
  if (!isObject(document) || issues.length > 0) return { issues };

  const result = readScenario(document, lastMeasured(original, sets) === sets.length - 1);
  const owned = result.issues.map((issue) => ofChange(issue, changes, sets[sets.length - 1], issuesBefore));
  return { document, values: result.values, issues: owned };
}

/** Whether one path is the other, or leads through it. */
export function isWithin(inner: string, outer: string): boolean {
  return inner === outer || inner.startsWith(`${outer}.`);
}

/** An issue of the changed file, put where the change stands that brought it about. */
function ofChange(issue: Issue, changes: readonly Change[], last: ChangeSet, issuesBefore: readonly Issue[]): Issue {
  const cause = changes.findLast(({ path }) => isWithin(issue.path, path) || isWithin(path, issue.path));
  if (!cause && issuesBefore.some(({ path, message }) => path === issue.path && message === issue.message))
    return issue;
  const { item } = cause?.set ?? last;
  if (item === undefined) return issue;
  const place = placeOf(item);
  const { fix } = issue;
  return {
    ...issue,
    path: cause ? `${place}.${issue.path}` : place,
    message: `${inWords(item)}${issue.message}`,
    ...(fix && { fix: { ...fix, path: `${place}.${fix.path}` } }),
  };
}

const placeOf = ({ list, index }: ListItem): string => `${list}.${index}.changes`;
const inWords = ({ list, name }: ListItem): string => `In ${ITEMS[list]} ${quoted(name)}: `;

function noSuchPlace({ path, set: { item } }: Change, first: string, isOfTheCar: boolean): Issue {
  const groups = [...Object.keys(GROUPS), ...OTHERS_OF_THE_CAR];
  const near = nearestWord(first, groups);
  const hint = isOfTheCar
    ? 'The file has nothing at that place; items of a list are counted from 0.'
    : near
      ? `Did you mean ${quoted(near)}?`
      : `What can be changed is in ${alternatives(groups)}.`;
  return {
    severity: 'error',
    path: item ? `${placeOf(item)}.${path}` : path,
    message: `${item ? inWords(item) : ''}${quoted(path)} is no place that can be changed. ${hint}`,
    found: quoted(path),
    expected: 'the path of a key, such as "core.airConductance" or "cycle.1.phases.1.duration"',
  };
}

/** The issue of a name that an earlier item of the list has. */
export function givenTwice({ list, name, index }: ListItem): Issue {
  const message = `There are two ${list} ${quoted(name)}. Give each its own name.`;
  return { severity: 'error', path: `${list}.${index}.name`, message, found: quoted(name), expected: 'another name' };
}

/** Issues each once, those left out that the file has by itself. */
export function issuesBeyond(own: readonly Issue[], found: readonly Issue[]): Issue[] {
  const keyOf = ({ path, message }: Issue): string => `${path}: ${message}`;
  const known = new Set(own.map(keyOf));
  const once = new Map(found.map((issue) => [keyOf(issue), issue]));
  return [...once].flatMap(([key, issue]) => (known.has(key) ? [] : [issue]));
}
