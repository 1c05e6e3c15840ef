import {
  figure,
  moneyText,
  type Upgrade,
  type UpgradeStep,
  type UpgradeStudy,
  type UpgradeWay,
} from '../../../sim/index.ts';
import { columnShown, difference, drivePower, named, type Shown, signed, temperature } from '../../format.ts';
import type { UnitChoice } from '../../state/display.ts';

/** One row: a step, or the car as it is. */
type Line = Partial<Omit<UpgradeStep, 'upgrade'>> & Upgrade;

const MISSING = '–';

type Cell = (line: Line, units: UnitChoice) => string | Shown | undefined;

function change(kelvin: number | undefined, units: UnitChoice): Shown | undefined {
  if (kelvin === undefined) return undefined;
  const { value, unit } = difference(kelvin, units);
  return { value: signed(value), unit };
}

const ON_BASE = 'On the car as it is';

const COLUMNS: readonly (readonly [head: string, show: Cell])[] = [
  ['Upgrade', ({ name }) => name],
  ['Effect', ({ car, change: step }) => (car === undefined ? 'refused' : step?.effect)],
  ['Pulls', ({ car }) => car && `${car.count} of ${car.pullsRun}`],
  ['Deciding pull', ({ car }) => car?.deciding && String(car.deciding.pull)],
  ['Its peak', ({ car }, units) => car?.deciding && temperature(car.deciding.peak, units)],
  ['Change', ({ change: step }, units) => change(step?.peak, units)],
  [ON_BASE, ({ total }, units) => change(total?.peak, units)],
  ['Price', ({ price }) => (price === undefined ? undefined : moneyText(price))],
  ['Hours', ({ hours }) => (hours === undefined ? undefined : figure(hours))],
  ['Coolant', ({ car }, units) => car?.firstPull && columnShown(car.firstPull.coolantFlow, 'coolantFlow', units)],
  ['Core drop', ({ car }, units) => car?.firstPull && columnShown(car.firstPull.coreAirDrop, 'coreAirDrop', units)],
  ['Drive power', ({ car }, units) => car?.firstPull && drivePower(car.firstPull.drivePower, units)],
  ['Air', ({ car }, units) => car?.firstPull && columnShown(car.firstPull.airFlow, 'airFlow', units)],
];

/** What the table beside the picture has; all else is in the tables of every figure. */
const IN_SHORT: readonly string[] = ['Upgrade', 'Effect', 'Pulls', 'Its peak', 'Change', 'Price', 'Hours'];

/** In short; or every figure of steps that go on top of the other, or are each alone, where both changes are one. */
type TableKind = 'short' | 'on top' | 'alone';

const HAS_COLUMN: Readonly<Record<TableKind, (head: string) => boolean>> = {
  short: (head) => IN_SHORT.includes(head),
  'on top': () => true,
  alone: (head) => head !== ON_BASE,
};

interface UpgradeTable {
  readonly heads: readonly string[];
  readonly rows: readonly (readonly string[])[];
}

/** The table of one way to go through the upgrades, from the car as it is. */
export function upgradeTable(
  base: UpgradeStudy['base'],
  steps: readonly UpgradeStep[],
  upgrades: readonly Upgrade[],
  units: UnitChoice,
  kind: TableKind,
): UpgradeTable {
  const lines: Line[] = [
    { name: 'as it is', car: base },
    ...steps.map((step) => ({ ...step, ...upgrades[step.upgrade] })),
  ];
  const columns = COLUMNS.filter(([head]) => HAS_COLUMN[kind](head)).map(([head, show]) => {
    const shown = lines.map((line) => show(line, units));
    const unit = shown.map((cell) => (typeof cell === 'object' ? cell.unit : '')).find((each) => each !== '') ?? '';
    return {
      head: named(head, unit),
      cells: shown.map((cell) => (typeof cell === 'object' ? cell.value : (cell ?? MISSING))),
    };
  });
  return {
    heads: columns.map(({ head }) => head),
    rows: lines.map((_, k) => columns.map(({ cells }) => cells[k])),
  };
}

export const WAY_HEADS: readonly string[] = ['Pulls', 'Price', 'Hours', 'With'];

/** The cheapest way to each number of pulls. */
export function wayRows(ways: readonly UpgradeWay[], upgrades: readonly Upgrade[]): string[][] {
  return ways.map(({ pulls, money, hours, upgrades: chosen }, k) => {
    const least = k === 0 ? 0 : ways[k - 1].pulls + 1;
    return [
      least === pulls ? String(pulls) : `${least} to ${pulls}`,
      moneyText(money),
      hours === undefined ? MISSING : figure(hours),
      chosen.length === 0 ? 'the car as it is' : chosen.map((upgrade) => upgrades[upgrade].name).join('; '),
    ];
  });
}
