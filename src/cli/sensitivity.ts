import {
  conduct,
  convert,
  ESTIMATE_CAUTION,
  issuesOfRanges,
  type OwnRange,
  type RankedInput,
  type Sensitivity,
  studySensitivity,
  type UncertainInput,
  uncertainInputs,
} from '../sim/index.ts';
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

/** One input that is not known well, as a person reads its range. */
function rangeOf({ kind, low, high, unit }: UncertainInput): string {
  if (kind === 'factor') return `x${low} to x${high}`;
  const [a, b] = kind === 'shift' ? [low, `+${high}`] : [low, high];
  return `${a} to ${b}${unit === undefined ? '' : ` ${unit}`}`;
}

const COLUMNS: readonly (readonly [string, string, (row: RankedInput) => string])[] = [
  ['share', '%', ({ share }) => (100 * share).toFixed(1)],
  ['peak at low', 'degC', ({ peakAtLow }) => celsiusOr(peakAtLow)],
  ['peak at high', 'degC', ({ peakAtHigh }) => celsiusOr(peakAtHigh)],
];

function asText({ typed, pull, limit, count, peak, ranking, unexplained, runs, unusable }: Sensitivity): string[] {
  const cells = [
    ['', ...COLUMNS.map(([heading]) => heading), 'range'],
    ['', ...COLUMNS.map(([, unit]) => unit), ''],
    ...ranking.map((row) => [row.input.name, ...COLUMNS.map(([, , show]) => show(row)), rangeOf(row.input)]),
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
  const sources = [...new Set(ranking.map(({ input }) => input.source))];
  return [
    `Pulls to limit: ${typed.count} as typed; ${count.low} to ${count.high} in 9 of 10 of ${runs.length} runs with all inputs uncertain at once, ${count.lowest} to ${count.highest} in all.`,
    `Peak of pull ${pull}: ${celsius(typed.peak)} degC as typed; ${celsius(peak.low)} to ${celsius(peak.high)} degC in 9 of 10, half below ${celsius(peak.middle)} (limit ${celsius(limit)} degC).`,
    ...(unusable === 0 ? [] : [`${unusable} of the runs are left out: refused, or stopped before that pull.`]),
    '',
    'What to measure next: share of the spread of that peak, and the peak with that input alone at the ends of its range:',
    ...cells.map(line),
    `${(100 * unexplained).toFixed(1)} % of the spread follows no straight line: curvature, and inputs that act together.`,
    `Ranges: ${sources.join('; ')}.`,
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
    ...(result === undefined ? ['', ''] : [result.count, convert(result.peak, 'K', 'degC')]),
  ]);
  const quoted = heading.map((text) => (text.includes(',') ? `"${text}"` : text));
  return [quoted, ...rows].map((row) => `${row.join(',')}\r\n`).join('');
}
