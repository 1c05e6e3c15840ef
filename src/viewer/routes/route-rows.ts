import type { RouteComparison, RouteFigures } from '../../sim/index.ts';
import { degrees, fixed, kelvins, powerInWords, signed } from '../format.ts';
import type { UnitChoice } from '../state/display.ts';

/** One line of the table: the same figure by both routes, and what it moves by. */
export interface RouteRow {
  readonly name: string;
  readonly before: string;
  readonly after: string;
  readonly change: string;
}

const NOTHING = '–';

type Kind = 'temperature' | 'power' | 'ratio';
const ROWS: readonly (readonly [name: string, kind: Kind, read: (figures: RouteFigures) => number | undefined])[] = [
  ['Compressor inlet', 'temperature', ({ compressorInlet }) => compressorInlet],
  ['Discharge', 'temperature', ({ discharge }) => discharge],
  ['Casing', 'temperature', ({ casing }) => casing],
  ['Core outlet', 'temperature', ({ coreOutlet }) => coreOutlet],
  ['Charge', 'temperature', ({ charge }) => charge],
  ['Recirculated over engine air, r', 'ratio', ({ recirculation }) => recirculation],
  ['Power into the gas', 'power', ({ gasPower }) => gasPower],
  ['Heat into the core', 'power', ({ heatToCore }) => heatToCore],
  ['Coolant into the core', 'temperature', ({ coolantIntoCore }) => coolantIntoCore],
  ['Peak of the pull that follows', 'temperature', ({ pullPeak }) => pullPeak],
];

const SHOWN: Readonly<Record<Kind, (value: number, units: UnitChoice) => string>> = {
  temperature: degrees,
  power: powerInWords,
  ratio: (value) => fixed(value, 2),
};
const CHANGES: Readonly<Record<Kind, (value: number, units: UnitChoice) => string>> = {
  ...SHOWN,
  temperature: kelvins,
};

/** Both routes side by side, as the reader's units write them. */
export function routeRows({ before, after }: RouteComparison, units: UnitChoice): RouteRow[] {
  return ROWS.map(([name, kind, read]) => {
    const [a, b] = [read(before), read(after)];
    if (a === undefined || b === undefined) return { name, before: NOTHING, after: NOTHING, change: NOTHING };
    const shown = SHOWN[kind];
    return { name, before: shown(a, units), after: shown(b, units), change: signed(CHANGES[kind](b - a, units)) };
  });
}
