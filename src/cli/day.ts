import {
  conduct,
  type Day,
  ESTIMATE_CAUTION,
  explainDay,
  FILE_WORDING,
  onDay,
  studyDay,
  toConfig,
} from '../sim/index.ts';
import { EXIT } from './exit-codes.ts';
import { printRefusal, readScenarioFile, scenarioOf } from './read-scenario.ts';
import { pullsOf } from './wanted-pulls.ts';

export interface DayCommandOptions {
  readonly variant?: string;
  readonly ambient?: number;
  readonly altitude?: number;
  readonly humidity?: number;
  readonly pulls?: number;
  readonly json?: true;
}

/** What the car makes on another day, and the hottest day on which it makes so many pulls. */
export function day(file: string, options: DayCommandOptions): number {
  const read = readScenarioFile(file);
  if (typeof read === 'number') return read;
  const scenario = scenarioOf(file, read, options.variant);
  if (scenario === undefined) return EXIT.badUsage;
  const { ambient, altitude, humidity } = options;
  const asked: Day = {
    ...(ambient !== undefined && { temperature: ambient }),
    ...(altitude !== undefined && { altitude }),
    ...(humidity !== undefined && { relativeHumidity: humidity }),
  };
  const there = onDay(scenario, asked);
  if (there.scenario === undefined) {
    printRefusal(file, there.issues);
    return EXIT.badUsage;
  }
  const wanted = pullsOf(toConfig(there.scenario), options.pulls);
  if (wanted === undefined) return EXIT.stopped;
  const study = conduct(studyDay(scenario, there.scenario, wanted.pulls));
  if (options.json) console.log(JSON.stringify(study, undefined, 2));
  else console.log([...explainDay(study, FILE_WORDING), '', ESTIMATE_CAUTION].join('\n'));
  return study.day.stopped === undefined ? EXIT.done : EXIT.stopped;
}
