import type { CoreDropStudy, DropFigures } from '../../../sim/index.ts';
import { columnShown, degrees, drivePower, joined, named, type Shown, temperature } from '../../format.ts';
import type { UnitChoice } from '../../state/display.ts';

/** The four that are compared, and what each is called. */
export const DROP_CARS = [
  ['asItIs', 'as it is'],
  ['free', 'no drop'],
  ['doubled', 'twice the drop'],
  ['none', 'no core'],
] as const;

const ROWS: readonly (readonly [name: string, show: (figures: DropFigures, units: UnitChoice) => Shown])[] = [
  ['Core pressure drop', ({ drop }, units) => columnShown(drop, 'coreAirDrop', units)],
  ['Pressure ratio', ({ pressureRatio }, units) => columnShown(pressureRatio, 'pressureRatio', units)],
  ['Discharge', ({ discharge }, units) => temperature(discharge, units)],
  ['Drive power', (figures, units) => drivePower(figures.drivePower, units)],
  ['Manifold', ({ manifold }, units) => columnShown(manifold, 'manifoldPressure', units)],
  ['Air', ({ airFlow }, units) => columnShown(airFlow, 'airFlow', units)],
  ['Peak', ({ peak }, units) => temperature(peak, units)],
];

/** The table: one row a figure, with its unit in the name, and one cell each of the four. */
export const dropRows = (study: CoreDropStudy, units: UnitChoice): string[][] =>
  ROWS.map(([name, show]) => {
    const cells = DROP_CARS.map(([car]) => show(study[car], units));
    return [named(name, cells[0].unit), ...cells.map(({ value }) => value)];
  });

interface DropBar {
  readonly name: string;
  /** of the longest of its panel */
  readonly share: number;
  readonly value: string;
}

export interface DropPanel {
  readonly title: string;
  readonly bars: readonly DropBar[];
}

/**
 * The picture: power and air as bars from nought, discharge from the air outside, since nought of its unit means nothing.
 *
 * @param outside - K
 */
export function dropPanels(study: CoreDropStudy, outside: number, units: UnitChoice): DropPanel[] {
  const panel = (
    title: string,
    size: (figures: DropFigures) => number,
    write: (figures: DropFigures) => string,
  ): DropPanel => {
    const longest = Math.max(...DROP_CARS.map(([car]) => size(study[car])));
    return {
      title,
      bars: DROP_CARS.map(([car, name]) => ({
        name,
        share: longest > 0 ? Math.max(0, size(study[car]) / longest) : 0,
        value: write(study[car]),
      })),
    };
  };
  return [
    panel(
      'Drive power',
      (figures) => figures.drivePower,
      (figures) => joined(drivePower(figures.drivePower, units)),
    ),
    panel(
      `Discharge, bars from ${degrees(outside, units)} outside`,
      ({ discharge }) => discharge - outside,
      ({ discharge }) => degrees(discharge, units),
    ),
    panel(
      'Air through the engine',
      ({ airFlow }) => airFlow,
      ({ airFlow }) => joined(columnShown(airFlow, 'airFlow', units)),
    ),
  ];
}
