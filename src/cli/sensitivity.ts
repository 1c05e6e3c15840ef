import {
  convert,
  explainRanking,
  explainSensitivity,
  FILE_WORDING,
  issuesOfRanges,
  type OwnRange,
  type RankedInput,
  rangeInWords,
  type Sensitivity,
  studySensitivity,
  toConfig,
  uncertainInputs,
  WHY_NO_ANSWER,
} from '../sim/index.ts';
import { aligned } from './aligned.ts';
import { celsius } from './celsius.ts';
import { csvOf } from './csv.ts';
import { EXIT } from './exit-codes.ts';
import { hasPull, noAnswer } from './no-answer.ts';
import { onAllCores } from './on-all-cores.ts';
import { type FormOptions, printAnswer } from './print-answer.ts';
import { printRefusal, readScenarioFile } from './read-scenario.ts';

export interface SensitivityCommandOptions extends FormOptions {
  readonly variant?: string;
  readonly runs: number;
  readonly seed: number;
  readonly range?: readonly OwnRange[];
}

/** How far the answer may be off when inputs are not known well, and what to measure next. */
export async function sensitivity(file: string, options: SensitivityCommandOptions): Promise<number> {
  const scenario = readScenarioFile(file, options.variant);
  if (typeof scenario === 'number') return scenario;
  const inputs = uncertainInputs(scenario, options.range ?? []);
  const issues = issuesOfRanges(scenario, inputs);
  if (issues.length > 0) {
    printRefusal(file, issues);
    return EXIT.badUsage;
  }
  if (options.runs <= inputs.length + 1) {
    console.error(`--runs ${options.runs}: expected more than ${inputs.length + 1}, for ${inputs.length} inputs.`);
    return EXIT.badUsage;
  }
  const study = await onAllCores(studySensitivity(scenario, inputs, options.runs, options.seed));
  if (study === undefined) {
    return noAnswer(WHY_NO_ANSWER.tooFewDecided, hasPull(toConfig(scenario)));
  }
  printAnswer(options, {
    json: () => study,
    csv: () => asCsv(study),
    text: () => asText(study),
  });
  return EXIT.done;
}

const COLUMNS: readonly (readonly [string, string, (row: RankedInput) => string])[] = [
  ['share', '%', ({ share }) => (100 * share).toFixed(1)],
  ['peak at low', 'degC', ({ peakAtLow }) => celsius(peakAtLow)],
  ['peak at high', 'degC', ({ peakAtHigh }) => celsius(peakAtHigh)],
];

function asText(study: Sensitivity): string[] {
  const { ranking } = study;
  const cells = [
    ['', ...COLUMNS.map(([heading]) => heading), 'range'],
    ['', ...COLUMNS.map(([, unit]) => unit), ''],
    ...ranking.map((row) => [row.input.name, ...COLUMNS.map(([, , show]) => show(row)), rangeInWords(row.input)]),
  ];
  return [
    ...explainSensitivity(study, FILE_WORDING),
    '',
    'What to measure next: share of the spread of that peak, and the peak with that input alone at the ends of its range:',
    ...aligned(cells, [0, COLUMNS.length + 1]),
    ...explainRanking(study),
  ];
}

/** A row for each run: its inputs, its pulls, its peak; empty where the run cannot be used. */
function asCsv({ inputs, runs }: Sensitivity): string {
  const heading = [
    'run',
    ...inputs.map(({ name, unit }) => (unit ? `${name} [${unit}]` : name)),
    'pulls',
    'peak [degC]',
  ];
  const rows = runs.map(({ values, result }, n) => [
    n + 1,
    ...values,
    result?.count,
    result && convert(result.peak, 'K', 'degC'),
  ]);
  return csvOf(heading, rows);
}
