import {
  figure,
  moneyText,
  type Upgrade,
  type UpgradeStep,
  type UpgradeStudy,
  type UpgradeWay,
} from '../../sim/index.ts';
import { columnShown, difference, joined, temperature } from '../format.ts';
import { signed } from '../routes/figures.ts';
import type { UnitChoice } from '../state/display.ts';
import { drivePower } from './drive-power.ts';

/** One row: a step, or the car as it is. */
type Line = Partial<Omit<UpgradeStep, 'upgrade'>> & Upgrade;

const MISSING = '–';

type Cell = (line: Line, units: UnitChoice) => string | undefined;

/** Temperature changes to the hundredth, as at the terminal: the tenth is where no effect begins. */
const change = (kelvin: number | undefined, units: UnitChoice): string | undefined =>
  kelvin === undefined ? undefined : signed(joined(difference(kelvin, units, 2)));

const COLUMNS: readonly (readonly [head: string, show: Cell])[] = [
  ['Upgrade', ({ name }) => name],
  ['Effect', ({ car, change: step }) => (car === undefined ? 'refused' : step?.effect)],
  ['Pulls', ({ car }) => car && `${car.count} of ${car.pullsRun}`],
  ['Deciding pull', ({ car }) => car?.deciding && String(car.deciding.pull)],
  ['Its peak', ({ car }, units) => car?.deciding && joined(temperature(car.deciding.peak, units))],
  ['Change', ({ change: step }, units) => change(step?.peak, units)],
  ['On the car as it is', ({ total }, units) => change(total?.peak, units)],
  [
    'Coolant',
    ({ car }, units) => car?.firstPull && joined(columnShown(car.firstPull.coolantFlow, 'coolantFlow', units)),
  ],
  [
    'Core drop',
    ({ car }, units) => car?.firstPull && joined(columnShown(car.firstPull.coreAirDrop, 'coreAirDrop', units)),
  ],
  ['Drive power', ({ car }, units) => car?.firstPull && drivePower(car.firstPull.drivePower, units)],
  ['Air', ({ car }, units) => car?.firstPull && joined(columnShown(car.firstPull.airFlow, 'airFlow', units))],
  ['Price', ({ price }) => (price === undefined ? undefined : moneyText(price))],
  ['Hours', ({ hours }) => (hours === undefined ? undefined : figure(hours))],
];

export const UPGRADE_HEADS: readonly string[] = COLUMNS.map(([head]) => head);

/** The table of one way to go through the upgrades, from the car as it is. */
export function upgradeRows(
  base: UpgradeStudy['base'],
  steps: readonly UpgradeStep[],
  upgrades: readonly Upgrade[],
  units: UnitChoice,
): string[][] {
  const lines: Line[] = [
    { name: 'as it is', car: base },
    ...steps.map((step) => ({ ...step, ...upgrades[step.upgrade] })),
  ];
  return lines.map((line) => COLUMNS.map(([, show]) => show(line, units) ?? MISSING));
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
