import { conduct, explainStore, FILE_WORDING, type StoreStudy, storeSize, studyStore } from '../sim/index.ts';
import { csvOf } from './csv.ts';
import { EXIT } from './exit-codes.ts';
import { configOf, readScenarioFile } from './read-scenario.ts';
import { pullsOf } from './wanted-pulls.ts';

export interface TankCommandOptions {
  readonly variant?: string;
  readonly pulls?: number;
  readonly ice?: true;
  readonly json?: true;
  readonly csv?: true;
}

/** Prints pulls against the size of the tank, or against ice, and how much is enough. */
export function tank(file: string, options: TankCommandOptions): number {
  const scenario = readScenarioFile(file);
  if (typeof scenario === 'number') return scenario;
  const config = configOf(file, scenario, options.variant);
  if (config === undefined) return EXIT.badUsage;
  const wanted = pullsOf(config, options.pulls);
  if (wanted === undefined) return EXIT.stopped;
  const study = conduct(studyStore(config, options.ice ? 'ice' : 'tank', wanted.pulls));
  if (options.json) console.log(JSON.stringify(study, undefined, 2));
  else if (options.csv) process.stdout.write(asCsv(study));
  else console.log([...table(study), '', ...explainStore(study, wanted.length, FILE_WORDING)].join('\n'));
  return EXIT.done;
}

const celsius = (kelvin: number): string => (Number.isFinite(kelvin) ? (kelvin - 273.15).toFixed(1) : '-');

function table({ kind, points, pulls }: StoreStudy): string[] {
  const head = [kind === 'tank' ? 'tank' : 'ice', 'pulls', 'peak of pull 1', `of pull ${pulls}`];
  const iced = points.some(({ pullsOnIce }) => pullsOnIce > 0);
  const rows = points.map(({ size, count, firstPeak, lastPeak, pullsOnIce }) => [
    storeSize(kind, size),
    `${count} of ${pulls}`,
    `${celsius(firstPeak)} degC`,
    `${celsius(lastPeak)} degC`,
    ...(iced ? [`${pullsOnIce} on ice`] : []),
  ]);
  return [iced ? [...head, 'ice lasts'] : head, ...rows].map((cells) =>
    cells.map((cell) => cell.padStart(14)).join('  '),
  );
}

function asCsv({ kind, points }: StoreStudy): string {
  const head = [
    kind === 'tank' ? 'tank [m3]' : 'ice [kg]',
    'pulls [-]',
    'first peak [K]',
    'last peak [K]',
    'pulls on ice [-]',
  ];
  return csvOf(
    head,
    points.map(({ size, count, firstPeak, lastPeak, pullsOnIce }) => [size, count, firstPeak, lastPeak, pullsOnIce]),
  );
}
