import { explainStore, FILE_WORDING, type StoreStudy, storeSize, studyStore } from '../sim/index.ts';
import { celsius } from './celsius.ts';
import { csvOf } from './csv.ts';
import { EXIT } from './exit-codes.ts';
import { onAllCores } from './on-all-cores.ts';
import { type FormOptions, printAnswer } from './print-answer.ts';
import { readConfig } from './read-scenario.ts';
import { wantedPulls } from './wanted-pulls.ts';

export interface TankCommandOptions extends FormOptions {
  readonly variant?: string;
  readonly pulls?: number;
  readonly ice?: true;
}

/** Prints pulls against the size of the tank, or against ice, and how much is enough. */
export async function tank(file: string, options: TankCommandOptions): Promise<number> {
  const config = readConfig(file, options.variant);
  if (typeof config === 'number') return config;
  const wanted = wantedPulls(config, options.pulls);
  if (wanted === undefined) return EXIT.nothingToAnswer;
  const study = await onAllCores(studyStore(config, options.ice ? 'ice' : 'tank', wanted.pulls));
  printAnswer(options, {
    json: () => study,
    csv: () => asCsv(study),
    text: () => [...table(study), '', ...explainStore(study, wanted.length, FILE_WORDING)],
  });
  return EXIT.done;
}

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
