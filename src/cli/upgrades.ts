import { explainUpgrades, FILE_WORDING, studyUpgrades, toConfig, upgradeClashes, WHY_NO_ANSWER } from '../sim/index.ts';
import { EXIT } from './exit-codes.ts';
import { hasPull, noAnswer } from './no-answer.ts';
import { onAllCores } from './on-all-cores.ts';
import { type FormOptions, printAnswer } from './print-answer.ts';
import { readScenarioFile, scenarioOf } from './read-scenario.ts';
import { upgradedConfigs } from './upgraded-configs.ts';
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
  if (!hasPull(toConfig(car))) return noAnswer(WHY_NO_ANSWER.noPull, false);
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
