import { type ChangeSet, givenTwice, issuesBeyond, scenarioWith, withChanges } from './changes.ts';
import { alternatives, type Issue, type JsonObject, quoted } from './issue.ts';
import { nearestWord } from './nearest.ts';
import type { Scenario, ScenarioResult } from './scenario.ts';
import type { Values, VariantValues } from './shape.ts';

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
  const sets = setsOf(list, index);
  return 'message' in sets ? { issues: [sets] } : scenarioWith(scenario, name, sets);
}

/**
 * A scenario with some values of its file changed: a variant that no file holds.
 *
 * @param scenario - what is changed
 * @param name - what the change is called, in the name of the result
 * @param changes - paths of the file with their new values, at least one
 * @returns the changed scenario, without variants, unless an issue is an error; and the issues
 * @example
 * applyChanges(scenario, 'hot day', { 'ambient.temperature': 35 }).scenario?.values.ambient.temperature // 35
 */
export function applyChanges(scenario: Scenario, name: string, changes: JsonObject): ScenarioResult {
  return scenarioWith(scenario, name, [{ changes }]);
}

/** What is wrong with the variants of a file beyond what is wrong with the file itself. */
export function issuesOfVariants(
  document: JsonObject,
  own: { readonly values: Values; readonly issues: readonly Issue[] },
): Issue[] {
  const list = own.values.variants ?? [];
  const found = list.flatMap(({ name }, index) => {
    const isTwice = list.findIndex((other) => other.name === name) < index;
    if (isTwice) return [givenTwice({ list: 'variants', name, index })];
    const sets = setsOf(list, index);
    return 'message' in sets ? [sets] : withChanges(document, name, sets, own.issues).issues;
  });
  return issuesBeyond(own.issues, found);
}

/** What a variant changes, those first that it is based on; or why there is no such row of variants. */
function setsOf(list: readonly VariantValues[], index: number): ChangeSet[] | Issue {
  const chain = chainOf(list, index);
  return 'message' in chain
    ? chain
    : chain.map((variant): ChangeSet => {
        const { name, changes } = list[variant];
        return { item: { list: 'variants', index: variant, name }, changes };
      });
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

function noVariant(name: string, names: readonly string[], path: string): Issue {
  const near = nearestWord(name, names);
  const known = names.length === 0 ? 'none' : alternatives(names.map((each) => quoted(each)));
  const hint = near ? `Did you mean ${quoted(near)}?` : `The file has ${known}.`;
  const message = `There is no variant ${quoted(name)}. ${hint}`;
  return { severity: 'error', path, message, found: quoted(name), expected: near ? quoted(near) : known };
}
