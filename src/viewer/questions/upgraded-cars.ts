import type { UpgradesAsked } from '../../../workers/questions.ts';
import { applyUpgrades, type Scenario, toConfig, type UpgradeStudy, upgradeSets } from '../../sim/index.ts';

/** Upgrades as a file lists them, with what they change. */
export type UpgradeList = NonNullable<Scenario['values']['upgrades']>;

/** What is asked of the upgrades of a file. */
export interface UpgradesChoice {
  readonly list: UpgradeList;
  readonly withOrders: boolean;
}

/** The same with the cars that have them, for the worker; a car that the file refuses is left out. */
export function withUpgradedCars(car: Scenario, { list, withOrders }: UpgradesChoice): UpgradesAsked {
  const sets = upgradeSets(list.length, withOrders).filter(({ length }) => length > 0);
  const cars = sets.flatMap((chosen): UpgradesAsked['cars'] => {
    const { scenario } = applyUpgrades(car, list, chosen);
    return scenario === undefined ? [] : [[chosen.join(), toConfig(scenario)]];
  });
  return { upgrades: list.map(({ name, price, hours }) => ({ name, price, hours })), cars, withOrders };
}

/** Why the file refuses cars that the answer has no numbers for, each reason once. */
export function refusals(
  { alone, inOrder }: Pick<UpgradeStudy, 'alone' | 'inOrder'>,
  car: Scenario,
  list: UpgradeList,
): string[] {
  const refused = [
    ...alone.filter((step) => step.car === undefined).map(({ upgrade }) => [upgrade]),
    ...inOrder.filter((step) => step.car === undefined).map(({ upgrade }) => [...Array(upgrade + 1).keys()]),
  ];
  const errors = refused.flatMap((chosen) =>
    applyUpgrades(car, list, chosen).issues.filter(({ severity }) => severity === 'error'),
  );
  return [...new Set(errors.map(({ message }) => message))];
}
