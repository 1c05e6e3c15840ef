import { type ChangeSet, givenTwice, issuesBeyond, isWithin, scenarioWith, withChanges } from './changes.ts';
import { type Issue, isError, type JsonObject } from './issue.ts';
import type { Scenario, ScenarioResult } from './scenario.ts';
import type { UpgradeValues, Values } from './shape.ts';

/**
 * A car with some upgrades of a list made, in the order of the list: where two change the same key, the later counts.
 *
 * @param scenario - the car: a file, or one of its variants
 * @param upgrades - the list that `values.upgrades` of the file gives
 * @param chosen - places in that list, at least one, in any order
 * @returns the changed scenario, without variants and upgrades, unless an issue is an error; and the issues
 * @example
 * applyUpgrades(scenario, scenario.values.upgrades ?? [], [0, 2]).scenario?.values.name // 'Roadster: core + pump'
 */
export function applyUpgrades(
  scenario: Scenario,
  upgrades: readonly UpgradeValues[],
  chosen: readonly number[],
): ScenarioResult {
  return scenarioWith(scenario, ...titledSets(upgrades, chosen));
}

/** What the chosen upgrades are called together, and their changes in the order of the list. */
function titledSets(upgrades: readonly UpgradeValues[], chosen: readonly number[]): [title: string, ChangeSet[]] {
  const inOrder = chosen.toSorted((a, b) => a - b);
  const sets = inOrder.map((index): ChangeSet => {
    const { name, changes } = upgrades[index];
    return { item: { list: 'upgrades', index, name }, changes };
  });
  return [inOrder.map((index) => upgrades[index].name).join(' + '), sets];
}

/**
 * What is wrong with the upgrades of a file, each alone and all together, beyond what is wrong with the file itself.
 */
export function issuesOfUpgrades(
  document: JsonObject,
  own: { readonly values: Values; readonly issues: readonly Issue[] },
): Issue[] {
  const list = own.values.upgrades ?? [];
  const issuesWith = (chosen: readonly number[]): readonly Issue[] =>
    withChanges(document, ...titledSets(list, chosen), own.issues).issues;
  const alone = list.flatMap(({ name }, index) => {
    const isTwice = list.findIndex((other) => other.name === name) < index;
    return isTwice ? [givenTwice({ list: 'upgrades', name, index })] : issuesWith([index]);
  });
  const found = issuesBeyond(own.issues, alone);
  if (list.length < 2 || found.some(isError)) return found;
  const together = issuesWith([...list.keys()]).filter(isError);
  const onlyTogether = issuesBeyond(own.issues, together);
  return [
    ...found,
    ...onlyTogether.map((issue) => ({ ...issue, message: `With all upgrades made: ${issue.message}` })),
  ];
}

/** Two upgrades that change the same key to different values. */
export interface UpgradeClash {
  /** places in the list; the later counts where both are made */
  readonly earlier: number;
  readonly later: number;
  /** path of the file */
  readonly path: string;
}

/** Every two upgrades of a list that change the same key differently, with the first such key. */
export function upgradeClashes(upgrades: readonly UpgradeValues[]): UpgradeClash[] {
  return upgrades.flatMap(({ changes }, earlier) =>
    upgrades.flatMap((other, later): UpgradeClash[] => {
      if (later <= earlier) return [];
      const path = Object.keys(other.changes).find((changedPath) =>
        Object.entries(changes).some(([before, value]) =>
          before === changedPath
            ? JSON.stringify(value) !== JSON.stringify(other.changes[changedPath])
            : isWithin(before, changedPath) || isWithin(changedPath, before),
        ),
      );
      return path === undefined ? [] : [{ earlier, later, path }];
    }),
  );
}
