import {
  conduct,
  convert,
  ESTIMATE_CAUTION,
  explainRanking,
  explainSensitivity,
  FILE_WORDING,
  issuesOfRanges,
  type OwnRange,
  type RankedInput,
  rangeInWords,
  type Sensitivity,
  studySensitivity,
  uncertainInputs,
} from '../sim/index.ts';
import { csvOf } from './csv.ts';
import { EXIT } from './exit-codes.ts';
import { printRefusal, readScenarioFile, scenarioOf } from './read-scenario.ts';

export interface SensitivityCommandOptions {
  readonly variant?: string;
  readonly runs: number;
  readonly seed: number;
  readonly range?: readonly OwnRange[];
  readonly json?: true;
  readonly csv?: true;
}

/** How far the answer may be off when inputs are not known well, and what to measure next. */
export function sensitivity(file: string, options: SensitivityCommandOptions): number {
  const read = readScenarioFile(file);
  if (typeof read === 'number') return read;
  const scenario = scenarioOf(file, read, options.variant);
  if (scenario === undefined) return EXIT.badUsage;
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
  const study = conduct(studySensitivity(scenario, inputs, options.runs, options.seed));
  if (study === undefined) {
    console.error('Nothing to rank: too few of the runs have the pull that decides.');
    return EXIT.stopped;
  }
  if (options.csv) process.stdout.write(asCsv(study));
  else if (options.json) console.log(JSON.stringify(study, undefined, 2));
  else console.log([...asText(study), '', ESTIMATE_CAUTION].join('\n'));
  return EXIT.done;
}

const celsius = (kelvin: number): string => convert(kelvin, 'K', 'degC').toFixed(1);
const celsiusOr = (kelvin: number | undefined): string => (kelvin === undefined ? '-' : celsius(kelvin));

const COLUMNS: readonly (readonly [string, string, (row: RankedInput) => string])[] = [
  ['share', '%', ({ share }) => (100 * share).toFixed(1)],
  ['peak at low', 'degC', ({ peakAtLow }) => celsiusOr(peakAtLow)],
  ['peak at high', 'degC', ({ peakAtHigh }) => celsiusOr(peakAtHigh)],
];

function asText(study: Sensitivity): string[] {
  const { ranking } = study;
  const cells = [
    ['', ...COLUMNS.map(([heading]) => heading), 'range'],
    ['', ...COLUMNS.map(([, unit]) => unit), ''],
    ...ranking.map((row) => [row.input.name, ...COLUMNS.map(([, , show]) => show(row)), rangeInWords(row.input)]),
  ];
  const last = COLUMNS.length + 1;
  const widths = cells[0].map((_, column) => Math.max(...cells.map((row) => row[column].length)));
  const line = (row: readonly string[]): string =>
    row
      .map((text, column) =>
        column === 0 || column === last ? text.padEnd(widths[column]) : text.padStart(widths[column]),
      )
      .join('  ')
      .trimEnd();
  return [
    ...explainSensitivity(study, FILE_WORDING),
    '',
    'What to measure next: share of the spread of that peak, and the peak with that input alone at the ends of its range:',
    ...cells.map(line),
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
