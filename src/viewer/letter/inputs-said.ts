import { numberRowAt, rowAt } from '../../sim/index.ts';
import { fieldGroups, readAt } from '../document/field-groups.ts';
import { inputName, valueInWords } from '../document/input-words.ts';
import { PARTS } from '../document/parts.ts';
import { measureOf, valueText } from '../fields/measure.ts';
import { type Car, changedPaths, valueAt } from '../state/cars.ts';
import type { UnitChoice } from '../state/display.ts';

/** Told of every car, beside what stands for each of its parts. */
const MAIN = [
  'limit.chargeTemperature',
  'start.coolant',
  ...PARTS.flatMap(({ main }) => main),
  'core.coolantConductance',
  'core.airDrop',
];

/** The values that a letter was worked out with, each as "name value". */
interface SaidInputs {
  /** what differs: "pump free flow 26 to 60 L/min" */
  readonly changed: readonly string[];
  readonly main: readonly string[];
}

export function sayInputs(before: Car, after: Car | undefined, units: UnitChoice): SaidInputs {
  const hand = after ?? before;
  const changed = after === undefined ? [] : changedPaths(before.document, after.document);
  const named = (path: string) => inputName(after ?? before, path) ?? inputName(before, path) ?? path;
  const drive = fieldGroups(hand.document).flatMap(({ path, fields }) =>
    path.startsWith('cycle') ? fields.filter((field) => /\.(repeat|duration)$/.test(field.path)) : [],
  );
  const main = [...MAIN, ...drive.map(({ path }) => path)];
  return {
    changed: changed.map((path) => `${named(path)} ${said(before, path, units)} to ${said(hand, path, units)}`),
    main: main
      .filter((path) => !changed.includes(path) && isKnown(hand, path))
      .map((path) => `${named(path)} ${said(hand, path, units)}`),
  };
}

/** Whether a value stands in the file or follows from it; what nobody typed and has a default says nothing. */
const isKnown = (car: Car, path: string): boolean =>
  readAt(car.scenario, path) !== undefined &&
  (valueAt(car.document, path) !== undefined || rowAt(path)?.default === undefined);

function said(car: Car, path: string, units: UnitChoice): string {
  const row = numberRowAt(path);
  const measure = row && measureOf(row.unit, units);
  return valueInWords(readAt(car.scenario, path), (value) => (measure ? valueText(value, measure) : String(value)));
}
