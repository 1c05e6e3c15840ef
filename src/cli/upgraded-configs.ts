import { applyUpgrades, type Config, type Issue, type Scenario, toConfig } from '../sim/index.ts';
import { printIssues } from './read-scenario.ts';

/** The car with upgrades made, by their places; what a car is refused for is printed once. */
export function upgradedConfigs(
  file: string,
  car: Scenario,
  list: NonNullable<Scenario['values']['upgrades']>,
): (chosen: readonly number[]) => Config | undefined {
  const printed = new Set<string>();
  return (chosen) => {
    if (chosen.length === 0) return toConfig(car);
    const { scenario, issues } = applyUpgrades(car, list, chosen);
    if (scenario !== undefined) return toConfig(scenario);
    const fresh = issues.filter(({ severity, message }: Issue) => severity === 'error' && !printed.has(message));
    for (const { message } of fresh) printed.add(message);
    printIssues(file, fresh);
    return undefined;
  };
}
