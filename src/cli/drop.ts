import {
  type DropFigures,
  decimals,
  explainCoreDrop,
  FILE_WORDING,
  studyCoreDrop,
  WHY_NO_ANSWER,
} from '../sim/index.ts';
import { aligned, indented } from './aligned.ts';
import { celsius } from './celsius.ts';
import { csvOf } from './csv.ts';
import { EXIT } from './exit-codes.ts';
import { hasPull, noAnswer } from './no-answer.ts';
import { onAllCores } from './on-all-cores.ts';
import { type FormOptions, printAnswer } from './print-answer.ts';
import { readConfig } from './read-scenario.ts';

export interface DropCommandOptions extends FormOptions {
  readonly variant?: string;
}

/** Prints what the core pressure drop takes, and what is left of what its cooling gives. */
export async function drop(file: string, options: DropCommandOptions): Promise<number> {
  const config = readConfig(file, options.variant);
  if (typeof config === 'number') return config;
  const study = await onAllCores(studyCoreDrop(config));
  if (study === undefined) {
    return noAnswer(WHY_NO_ANSWER.noWholePull, hasPull(config));
  }
  const cars = [study.asItIs, study.free, study.doubled, study.none];
  printAnswer(options, {
    json: () => study,
    csv: () => asCsv(cars),
    text: () => [...table(cars), '', ...explainCoreDrop(study, config.compressor, FILE_WORDING)],
  });
  return EXIT.done;
}

const ROWS: readonly (readonly [string, (figures: DropFigures) => string])[] = [
  ['core pressure drop, kPa', ({ drop: taken }) => decimals(taken / 1e3, 2)],
  ['pressure ratio', ({ pressureRatio }) => pressureRatio.toFixed(3)],
  ['discharge, degC', ({ discharge }) => celsius(discharge)],
  ['drive power, kW', ({ drivePower }) => (drivePower / 1e3).toFixed(2)],
  ['manifold, kPa abs', ({ manifold }) => (manifold / 1e3).toFixed(1)],
  ['air, kg/s', ({ airFlow }) => airFlow.toFixed(4)],
  ['peak, degC', ({ peak }) => celsius(peak)],
];

function table(cars: readonly DropFigures[]): string[] {
  const rows = [
    ['at the end of pull 1', 'as it is', 'no drop', 'twice', 'no core'],
    ...ROWS.map(([name, show]) => [name, ...cars.map(show)]),
  ];
  return indented(aligned(rows));
}

const CARS = ['as it is', 'no drop', 'twice the drop', 'no core'];

function asCsv(cars: readonly DropFigures[]): string {
  const head = [
    'car',
    'core pressure drop [Pa]',
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
