import { conduct, explainRest, FILE_WORDING, studyRest } from '../sim/index.ts';
import { EXIT } from './exit-codes.ts';
import { configOf, readScenarioFile } from './read-scenario.ts';
import { pullsOf } from './wanted-pulls.ts';

export interface RestCommandOptions {
  readonly variant?: string;
  readonly pulls?: number;
  readonly json?: true;
}

/** Prints how long to rest between pulls, and how soon the coolant recovers. */
export function rest(file: string, options: RestCommandOptions): number {
  const scenario = readScenarioFile(file);
  if (typeof scenario === 'number') return scenario;
  const config = configOf(file, scenario, options.variant);
  if (config === undefined) return EXIT.badUsage;
  const wanted = pullsOf(config, options.pulls);
  if (wanted === undefined) return EXIT.stopped;
  const study = conduct(studyRest(config, wanted.pulls));
  if (study === undefined) {
    console.error('The cycle does not repeat a pull and a rest: there is no rest between pulls to change.');
    return EXIT.stopped;
  }
  console.log(options.json ? JSON.stringify(study, undefined, 2) : explainRest(study, FILE_WORDING).join('\n'));
  return EXIT.done;
}
