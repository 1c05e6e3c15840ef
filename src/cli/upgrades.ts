import {
  applyUpgrades,
  type Config,
  explainUpgrades,
  FILE_WORDING,
  type Issue,
  type Scenario,
  studyUpgrades,
  toConfig,
  upgradeClashes,
} from '../sim/index.ts';
import { EXIT } from './exit-codes.ts';
import { noAnswer } from './no-answer.ts';
import { onAllCores } from './on-all-cores.ts';
import { type FormOptions, printAnswer } from './print-answer.ts';
import { printIssues, readScenarioFile, scenarioOf } from './read-scenario.ts';
import { upgradesAsCsv, upgradesAsText } from './upgrades-text.ts';

export interface UpgradesCommandOptions extends FormOptions {
  readonly variant?: string;
  readonly bestOrder?: true;
}

/** What each upgrade of a file buys alone and in order; with --best-order in which order, and the cheapest way. */
export async function upgrades(file: string, options: UpgradesCommandOptions): Promise<number> {
  const scenario = readScenarioFile(file);
  if (typeof scenario === 'number') return scenario;
  const list = scenario.values.upgrades ?? [];
  if (list.length === 0) {
    return noAnswer(
      'Nothing to weigh: the file has no upgrades. List them in upgrades (soakbench keys upgrade lists the keys).',
      false,
    );
  }
  const car = scenarioOf(file, scenario, options.variant);
  if (car === undefined) return EXIT.badUsage;
  const study = await onAllCores(
    studyUpgrades(list, upgradedConfigs(file, car, list), { withOrders: options.bestOrder === true }),
  );
  if (study === undefined) return EXIT.badUsage;
  printAnswer(options, {
    json: () => ({ upgrades: list, ...study }),
    csv: () => upgradesAsCsv(study, list),
    text: () => {
      const words = explainUpgrades(study, list, upgradeClashes(list), FILE_WORDING);
      return upgradesAsText(car.values.name, study, list, words);
    },
  });
  return study.base.stoppedBecause === undefined ? EXIT.done : EXIT.stopped;
}

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
