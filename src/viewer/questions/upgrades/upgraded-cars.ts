import type { UpgradesAsked } from '../../../../workers/questions.ts';
import {
  applyUpgrades,
  type Config,
  fittedUpgrades,
  type Scenario,
  toConfig,
  type UpgradeStudy,
  upgradeSets,
} from '../../../sim/index.ts';

/** Upgrades as a file lists them, with what they change. */
export type UpgradeList = NonNullable<Scenario['values']['upgrades']>;

/** What is asked of the upgrades of a file. */
export interface UpgradesChoice {
  readonly list: UpgradeList;
  readonly withOrders: boolean;
}

/** The same with the cars that have them, for the worker; a car that the file refuses is left out. */
export function withUpgradedCars(car: Scenario, { list, withOrders }: UpgradesChoice): UpgradesAsked {
  const carWith = (chosen: readonly number[]): Config | undefined => {
    const { scenario } = applyUpgrades(car, list, chosen);
    return scenario && toConfig(scenario);
  };
  const places = [...list.keys()];
  const single = places.map((upgrade) => carWith([upgrade]));
  const fitted = fittedUpgrades(toConfig(car), single);
  const sets = upgradeSets(
    places.filter((upgrade) => !fitted.includes(upgrade)),
    withOrders,
  ).filter(({ length }) => length > 1);
  const cars = [
    ...single.map((config, upgrade) => [String(upgrade), config] as const),
    ...sets.map((chosen) => [chosen.join(), carWith(chosen)] as const),
  ].flatMap(([chosen, config]): UpgradesAsked['cars'] => (config === undefined ? [] : [[chosen, config]]));
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
    ...inOrder.flatMap((step, k) =>
      step.car === undefined ? [inOrder.slice(0, k + 1).map(({ upgrade }) => upgrade)] : [],
    ),
  ];
  const errors = refused.flatMap((chosen) =>
    applyUpgrades(car, list, chosen).issues.filter(({ severity }) => severity === 'error'),
  );
  return [...new Set(errors.map(({ message }) => message))];
}
