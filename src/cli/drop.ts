import { conduct, type DropFigures, explainCoreDrop, FILE_WORDING, studyCoreDrop } from '../sim/index.ts';
import { csvOf } from './csv.ts';
import { EXIT } from './exit-codes.ts';
import { configOf, readScenarioFile } from './read-scenario.ts';

export interface DropCommandOptions {
  readonly variant?: string;
  readonly json?: true;
  readonly csv?: true;
}

/** Prints what the core's air drop takes, and what is left of what its cooling gives. */
export function drop(file: string, options: DropCommandOptions): number {
  const scenario = readScenarioFile(file);
  if (typeof scenario === 'number') return scenario;
  const config = configOf(file, scenario, options.variant);
  if (config === undefined) return EXIT.badUsage;
  const study = conduct(studyCoreDrop(config));
  if (study === undefined) {
    console.error('No pull of this cycle runs to its end: there is no drop to speak of.');
    return EXIT.stopped;
  }
  if (options.json) {
    console.log(JSON.stringify(study, undefined, 2));
    return EXIT.done;
  }
  const cars = [study.asItIs, study.free, study.doubled, study.none];
  if (options.csv) {
    process.stdout.write(asCsv(cars));
    return EXIT.done;
  }
  const rows = [
    ['at the end of pull 1', 'as it is', 'no drop', 'twice', 'no core'],
    ...ROWS.map(([name, show]) => [name, ...cars.map(show)]),
  ];
  const table = rows.map(
    ([name, ...cells]) => `  ${name.padEnd(24)}${cells.map((cell) => cell.padStart(10)).join('')}`,
  );
  console.log([...table, '', ...explainCoreDrop(study, config.compressor, FILE_WORDING)].join('\n'));
  return EXIT.done;
}

const ROWS: readonly (readonly [string, (figures: DropFigures) => string])[] = [
  ['core drop, kPa', ({ drop: taken }) => (taken / 1e3).toFixed(2)],
  ['pressure ratio', ({ pressureRatio }) => pressureRatio.toFixed(3)],
  ['discharge, degC', ({ discharge }) => (discharge - 273.15).toFixed(1)],
  ['drive power, kW', ({ drivePower }) => (drivePower / 1e3).toFixed(2)],
  ['manifold, kPa abs', ({ manifold }) => (manifold / 1e3).toFixed(1)],
  ['air, kg/s', ({ airFlow }) => airFlow.toFixed(4)],
  ['peak, degC', ({ peak }) => (peak - 273.15).toFixed(1)],
];

const CARS = ['as it is', 'no drop', 'twice the drop', 'no core'];

function asCsv(cars: readonly DropFigures[]): string {
  const head = [
    'car',
    'core drop [Pa]',
    'pressure ratio [-]',
    'discharge [K]',
    'drive power [W]',
    'manifold [Pa]',
    'air flow [kg/s]',
    'peak [K]',
  ];
  const rows = cars.map((figures, k) => [
    CARS[k],
    figures.drop,
    figures.pressureRatio,
    figures.discharge,
    figures.drivePower,
    figures.manifold,
    figures.airFlow,
    figures.peak,
  ]);
  return csvOf(head, rows);
}
