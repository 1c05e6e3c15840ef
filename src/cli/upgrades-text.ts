import { convert, type Upgrade, type UpgradeStep, type UpgradeStudy, type UpgradeWords } from '../sim/index.ts';
import { aligned, indented } from './aligned.ts';
import { celsius } from './celsius.ts';
import { type CsvCell, csvOf } from './csv.ts';
import { signed } from './signed.ts';
import { underlined } from './underlined.ts';

/** One line of the table: a step, or the car as it is. */
type Line = Partial<Omit<UpgradeStep, 'upgrade'>> & { readonly name: string; readonly isFitted?: true };

const MISSING = '-';

const COLUMNS: readonly (readonly [heading: string, unit: string, show: (line: Line) => string | undefined])[] = [
  ['pulls', '', ({ car }) => car && String(car.count)],
  ['deciding', 'pull', ({ car }) => car?.deciding && String(car.deciding.pull)],
  ['peak', 'degC', ({ car }) => car?.deciding && celsius(car.deciding.peak)],
  ['change', 'K', ({ change }) => (change?.peak === undefined ? undefined : signed(change.peak, 2))],
  ['on base', 'K', ({ total }) => (total?.peak === undefined ? undefined : signed(total.peak, 2))],
  ['coolant', 'L/min', ({ car }) => car?.firstPull && convert(car.firstPull.coolantFlow, 'm3/s', 'L/min').toFixed(1)],
  ['core drop', 'kPa', ({ car }) => car?.firstPull && (car.firstPull.coreAirDrop / 1e3).toFixed(2)],
  ['drive', 'kW', ({ car }) => car?.firstPull && (car.firstPull.drivePower / 1e3).toFixed(2)],
  ['air', 'kg/s', ({ car }) => car?.firstPull?.airFlow.toFixed(4)],
  ['', '', ({ car, change }) => (car === undefined ? 'refused' : (change?.effect ?? ''))],
];

/** A study of upgrades as a person reads it at a terminal. */
export function upgradesAsText(
  title: string,
  study: UpgradeStudy,
  upgrades: readonly Upgrade[],
  words: UpgradeWords,
): string[] {
  const { base, alone, inOrder, best } = study;
  const lineOf = (step: UpgradeStep): Line => ({ ...step, name: upgrades[step.upgrade].name });
  const onTop = (steps: readonly UpgradeStep[]): Line[] => [
    { name: 'as it is', car: base },
    ...steps.map(lineOf).map((line) => ({ ...line, name: `+ ${line.name}` })),
  ];
  const part = (heading: string, lines: readonly Line[], said: readonly string[]): string[] =>
    lines.length + said.length === 0 ? [] : ['', heading, ...table(lines), ...said];
  return [
    ...underlined(title),
    ...words.base,
    'Flow, core pressure drop, drive power and air are those at the end of the first pull.',
    ...(alone.length === 0
      ? []
      : [
          ...part(
            'Each alone, on the car as it is:',
            [{ name: 'as it is', car: base }, ...alone.map(lineOf)],
            words.alone,
          ),
          ...part('One on top of the other, in the order of the file:', onTop(inOrder), words.inOrder),
        ]),
    ...part('In the best order:', best?.order === undefined ? [] : onTop(best.order), words.best),
    ...part('The cheapest way:', [], words.ways),
  ];
}

function table(lines: readonly Line[]): string[] {
  if (lines.length === 0) return [];
  const cells = [
    ['', ...COLUMNS.map(([heading]) => heading)],
    ['', ...COLUMNS.map(([, unit]) => unit)],
    ...lines.map((line) => [line.name, ...COLUMNS.map(([, , show]) => show(line) ?? MISSING)]),
  ];
  return indented(aligned(cells, [0, COLUMNS.length]));
}

const CSV: readonly (readonly [header: string, value: (line: Line & Partial<Upgrade>) => CsvCell])[] = [
  ['upgrade', ({ name }) => name],
  ['price [-]', ({ price }) => price],
  ['hours [h]', ({ hours }) => hours],
  ['pulls to limit [-]', ({ car }) => car?.count],
  ['pulls run [-]', ({ car }) => car?.pullsRun],
  ['deciding pull [-]', ({ car }) => car?.deciding?.pull],
  ['deciding peak [K]', ({ car }) => car?.deciding?.peak],
  ['change of pulls [-]', ({ change }) => change?.count],
  ['change of deciding peak [K]', ({ change }) => change?.peak],
  ['change of pulls on base [-]', ({ total }) => total?.count],
  ['change of deciding peak on base [K]', ({ total }) => total?.peak],
  ['coolant flow [m3/s]', ({ car }) => car?.firstPull?.coolantFlow],
  ['core pressure drop [Pa]', ({ car }) => car?.firstPull?.coreAirDrop],
  ['drive power [W]', ({ car }) => car?.firstPull?.drivePower],
  ['air flow [kg/s]', ({ car }) => car?.firstPull?.airFlow],
  [
    'effect',
    ({ car, change, isFitted }) => (isFitted ? 'already fitted' : car === undefined ? 'refused' : change?.effect),
  ],
];

/** One row a step and mode (RFC 4180, decimal points), SI; the car as it is comes first, then what it has already. */
export function upgradesAsCsv(
  { base, fitted, alone, inOrder, best }: UpgradeStudy,
  upgrades: readonly Upgrade[],
): string {
  const modes: readonly (readonly [mode: string, steps: readonly UpgradeStep[]])[] = [
    ['alone', alone],
    ['in order', inOrder],
    ['best order', best?.order ?? []],
  ];
  const steps = modes.flatMap(([mode, list]) =>
    list.map((step, k) => rowOf(mode, k + 1, { ...step, ...upgrades[step.upgrade] })),
  );
  const head = ['mode', 'step [-]', ...CSV.map(([header]) => header)];
  const had = fitted.map((upgrade) => rowOf('already fitted', 0, { name: upgrades[upgrade].name, isFitted: true }));
  return csvOf(head, [rowOf('as it is', 0, { name: '', car: base }), ...had, ...steps]);
}

const rowOf = (mode: string, step: number, line: Line & Partial<Upgrade>): CsvCell[] => [
  mode,
  step,
  ...CSV.map(([, value]) => value(line)),
];
