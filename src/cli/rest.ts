import { conduct, explainRest, FILE_WORDING, type RestStudy, studyRest } from '../sim/index.ts';
import { csvOf } from './csv.ts';
import { EXIT } from './exit-codes.ts';
import { configOf, readScenarioFile } from './read-scenario.ts';
import { pullsOf } from './wanted-pulls.ts';

export interface RestCommandOptions {
  readonly variant?: string;
  readonly pulls?: number;
  readonly json?: true;
  readonly csv?: true;
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
  if (options.json) console.log(JSON.stringify(study, undefined, 2));
  else if (options.csv) process.stdout.write(asCsv(study));
  else console.log(explainRest(study, FILE_WORDING).join('\n'));
  return EXIT.done;
}

function asCsv({ pulls, now, countNow, needed, longest, countAtLongest, recovery }: RestStudy): string {
  const head = ['rest [s]', 'pulls wanted [-]', 'pulls made [-]', 'what it is'];
  const rows = [
    [now, pulls, countNow, 'the cycle'],
    [needed, pulls, needed === undefined ? undefined : pulls, 'shortest that does'],
    [longest, pulls, countAtLongest, 'longest tried'],
    [recovery, undefined, undefined, 'recovery from the first pull'],
  ] as const;
  return csvOf(head, rows);
}
