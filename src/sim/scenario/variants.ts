import { alternatives, type Issue, isObject, type JsonObject, type JsonValue, quoted } from './issue.ts';
import { nearestWord } from './nearest.ts';
import { withValue } from './place.ts';
import { readScenario, resultOf, type Scenario, type ScenarioResult } from './scenario.ts';
import { GROUPS, type Values, type VariantValues } from './shape.ts';

/** Names of the variants in a scenario, in the order of its file. */
export function variants({ values }: Scenario): string[] {
  return (values.variants ?? []).map(({ name }) => name);
}

/**
 * A variant as a scenario of its own: the file with its changes made, those of the variants it is based on first.
 *
 * @param scenario - the scenario whose file holds the variant
 * @param name - one of `variants(scenario)`
 * @returns the changed scenario, without variants, unless an issue is an error; and the issues
 * @example
 * applyVariant(scenario, 'bigger core').scenario?.values.core.airConductance // 585
 */
export function applyVariant(scenario: Scenario, name: string): ScenarioResult {
  const list = scenario.values.variants ?? [];
  const index = list.findIndex((variant) => variant.name === name);
  if (index < 0) return { issues: [noVariant(name, variants(scenario), 'variants')] };
  const { document, values, issues } = changed(scenario.document, list, index, readScenario(scenario.document).issues);
  return document && values ? resultOf(document, values, issues) : { issues };
}

/**
 * A scenario with some values of its file changed: a variant that no file holds.
 *
 * @param scenario - what is changed
 * @param name - what the change is called, in issues and in the name of the result
 * @param changes - paths of the file with their new values, at least one
 * @returns the changed scenario, without variants, unless an issue is an error; and the issues
 * @example
 * applyChanges(scenario, 'hot day', { 'ambient.temperature': 35 }).scenario?.values.ambient.temperature // 35
 */
export function applyChanges(scenario: Scenario, name: string, changes: JsonObject): ScenarioResult {
  const own = readScenario(scenario.document).issues;
  const { document, values, issues } = changed(scenario.document, [{ name, basedOn: undefined, changes }], 0, own);
  return document && values ? resultOf(document, values, issues) : { issues };
}

/** What is wrong with the variants of a file beyond what is wrong with the file itself. */
export function issuesOfVariants(
  document: JsonObject,
  own: { readonly values: Values; readonly issues: readonly Issue[] },
): Issue[] {
  const list = own.values.variants ?? [];
  const found = new Map<string, Issue>();
  const keyOf = ({ path, message }: Issue): string => `${path}: ${message}`;
  const known = new Set(own.issues.map(keyOf));
  list.forEach(({ name }, index) => {
    const isTwice = list.findIndex((other) => other.name === name) < index;
    const issues = isTwice ? [givenTwice(name, index)] : changed(document, list, index, own.issues).issues;
    for (const issue of issues) if (!known.has(keyOf(issue))) found.set(keyOf(issue), issue);
  });
  return [...found.values()];
}

/** What a variant may change beside the groups. */
const OTHERS_OF_THE_CAR = ['loop', 'cycle'];

/** One change with the variant that makes it. */
interface Change {
  readonly path: string;
  readonly value: JsonValue;
  readonly variant: number;
}

interface Changed {
  readonly document?: JsonObject;
  readonly values?: Values;
  readonly issues: readonly Issue[];
}

function changed(
  original: JsonObject,
  list: readonly VariantValues[],
  index: number,
  issuesBefore: readonly Issue[],
): Changed {
  const chain = chainOf(list, index);
  if ('message' in chain) return { issues: [chain] };
  const changes = chain.flatMap((variant) =>
    Object.entries(list[variant].changes).map(([path, value]): Change => ({ path, value, variant })),
  );

  const { variants: _, ...rest } = original;
  let document: JsonValue = { ...rest, name: `${String(original.name)}: ${list[index].name}` };
  const issues: Issue[] = [];
  for (const change of changes) {
    const steps = change.path.split('.');
    const isOfTheCar = OTHERS_OF_THE_CAR.includes(steps[0]) || Object.hasOwn(GROUPS, steps[0]);
    const next: JsonValue | undefined = isOfTheCar ? withValue(document, steps, change.value) : undefined;
    if (next === undefined) issues.push(noSuchPlace(change, steps[0], isOfTheCar, list));
    else document = next;
  }
  if (!isObject(document) || issues.length > 0) return { issues };

  const result = readScenario(document);
  const owned = result.issues.map((issue) => ofVariant(issue, changes, index, list, issuesBefore));
  return { document, values: result.values, issues: owned };
}

/** Indices of a variant and those it is based on, the first of them first; or why there is no such row of variants. */
function chainOf(list: readonly VariantValues[], index: number): number[] | Issue {
  const chain = [index];
  for (;;) {
    const { basedOn } = list[chain[0]];
    if (basedOn === undefined) return chain;
    const path = `variants.${chain[0]}.basedOn`;
    const base = list.findIndex(({ name }) => name === basedOn);
    if (base < 0) {
      const names = list.map(({ name }) => name);
      return noVariant(basedOn, names, path);
    }
    if (chain.includes(base)) {
      const message = `${quoted(list[base].name)} is based on itself, by way of ${quoted(list[chain[0]].name)}.`;
      return {
        severity: 'error',
        path,
        message,
        found: quoted(basedOn),
        expected: 'a variant that does not lead back',
      };
    }
    chain.unshift(base);
  }
}

/** An issue of the changed file, put where the change stands that brought it about. */
function ofVariant(
  issue: Issue,
  changes: readonly Change[],
  index: number,
  list: readonly VariantValues[],
  issuesBefore: readonly Issue[],
): Issue {
  const isWithin = (inner: string, outer: string): boolean => inner === outer || inner.startsWith(`${outer}.`);
  const cause = changes.findLast(({ path }) => isWithin(issue.path, path) || isWithin(path, issue.path));
  if (!cause && issuesBefore.some(({ path, message }) => path === issue.path && message === issue.message))
    return issue;
  const variant = cause?.variant ?? index;
  const place = `variants.${variant}.changes`;
  const { fix } = issue;
  return {
    ...issue,
    path: cause ? `${place}.${issue.path}` : place,
    message: `In variant ${quoted(list[variant].name)}: ${issue.message}`,
    ...(fix && { fix: { ...fix, path: `${place}.${fix.path}` } }),
  };
}

function noSuchPlace(
  { path, variant }: Change,
  first: string,
  isOfTheCar: boolean,
  list: readonly VariantValues[],
): Issue {
  const groups = [...Object.keys(GROUPS), ...OTHERS_OF_THE_CAR];
  const near = nearestWord(first, groups);
  const hint = isOfTheCar
    ? 'The file has nothing at that place; items of a list are counted from 0.'
    : near
      ? `Did you mean ${quoted(near)}?`
      : `A variant can change ${alternatives(groups)}.`;
  return {
    severity: 'error',
    path: `variants.${variant}.changes.${path}`,
    message: `In variant ${quoted(list[variant].name)}: ${quoted(path)} is no place that can be changed. ${hint}`,
    found: quoted(path),
    expected: 'the path of a key, such as "core.airConductance" or "cycle.1.phases.1.duration"',
  };
}

function noVariant(name: string, names: readonly string[], path: string): Issue {
  const near = nearestWord(name, names);
  const known = names.length === 0 ? 'none' : alternatives(names.map((each) => quoted(each)));
  const hint = near ? `Did you mean ${quoted(near)}?` : `The file has ${known}.`;
  const message = `There is no variant ${quoted(name)}. ${hint}`;
  return { severity: 'error', path, message, found: quoted(name), expected: near ? quoted(near) : known };
}

function givenTwice(name: string, index: number): Issue {
  const message = `There are two variants ${quoted(name)}. Give each its own name.`;
  return { severity: 'error', path: `variants.${index}.name`, message, found: quoted(name), expected: 'another name' };
}
