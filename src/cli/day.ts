import { type Day, type DayStudy, explainDay, FILE_WORDING, onDay, studyDay, toConfig } from '../sim/index.ts';
import { aligned } from './aligned.ts';
import { celsius } from './celsius.ts';
import { csvOf } from './csv.ts';
import { EXIT } from './exit-codes.ts';
import { onAllCores } from './on-all-cores.ts';
import { type FormOptions, printAnswer } from './print-answer.ts';
import { printRefusal, readScenarioFile } from './read-scenario.ts';
import { wantedPulls } from './wanted-pulls.ts';

export interface DayCommandOptions extends FormOptions {
  readonly variant?: string;
  readonly ambient?: number;
  readonly altitude?: number;
  readonly humidity?: number;
  readonly pulls?: number;
}

/** What the car makes on another day, and the hottest day on which it makes so many pulls. */
export async function day(file: string, options: DayCommandOptions): Promise<number> {
  const scenario = readScenarioFile(file, options.variant);
  if (typeof scenario === 'number') return scenario;
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
  const wanted = wantedPulls(toConfig(there.scenario), options.pulls);
  if (wanted === undefined) return EXIT.nothingToAnswer;
  const study = await onAllCores(studyDay(scenario, there.scenario, wanted.pulls));
  printAnswer(options, {
    json: () => study,
    csv: () => asCsv(study),
    text: () => [...explainDay(study, FILE_WORDING), '', ...curveOf(study)],
  });
  return study.day.stopped === undefined ? EXIT.done : EXIT.stopped;
}

const curveOf = ({ curve, pulls }: DayStudy): string[] =>
  aligned(
    [
      ['outside, degC', 'pulls'],
      ...curve.map(({ temperature, count }) => [celsius(temperature), `${count} of ${pulls}`]),
    ],
    [],
  );

function asCsv({ typed, day: there, pulls, hottest, curve }: DayStudy): string {
  const head = [
    'day',
    'outside [K]',
    'pressure [Pa]',
    'humidity [-]',
    'pulls [-]',
    'with 5 % less core [-]',
    'with 5 % more [-]',
    'deciding peak [K]',
  ];
  const rowOf = (name: string, day: DayStudy['day']) => [
    name,
    day.temperature,
    day.pressure,
    day.relativeHumidity,
    day.count,
    day.lower.count,
    day.higher.count,
    day.deciding?.peak,
  ];
  const countOf = (name: string, temperature: number, count: number) => [
    name,
    temperature,
    there.pressure,
    there.relativeHumidity,
    count,
    undefined,
    undefined,
    undefined,
  ];
  return csvOf(head, [
    rowOf('as typed', typed),
    rowOf('asked about', there),
    ...(hottest.kind === 'found' ? [countOf('hottest that makes them', hottest.temperature, pulls)] : []),
    ...curve.map(({ temperature, count }) => countOf('on the way', temperature, count)),
  ]);
}
