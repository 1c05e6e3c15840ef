import { isNumberRow } from '../../sim/index.ts';
import { type FieldSpec, fieldGroups, readAt } from '../inputs/fields.ts';
import { measureOf, valueText } from '../inputs/measure.ts';
import { PARTS } from '../inputs/parts.ts';
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
  const named = (path: string) => nameOf(after ?? before, path) ?? nameOf(before, path) ?? path;
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
  (valueAt(car.document, path) !== undefined || specAt(car, path)?.row.default === undefined);

/** The row of a path, or of the pair that it is an end of. */
function specAt({ document }: Car, path: string): FieldSpec | undefined {
  const all = fieldGroups(document).flatMap(({ fields }) => fields);
  return all.find((field) => field.path === path) ?? all.find((field) => field.path === path.replace(/\.[01]$/, ''));
}

/** What the table calls a path, behind the name of the phase that it belongs to. */
function nameOf(car: Car, path: string): string | undefined {
  const spec = specAt(car, path);
  if (spec === undefined) return undefined;
  const phase = spec.path.startsWith('cycle.') ? spec.path.replace(/\.[^.]+$/, '.name') : undefined;
  const name = phase === undefined ? undefined : valueAt(car.document, phase);
  return typeof name === 'string' ? `${name}: ${spec.row.label}` : spec.row.label;
}

function said(car: Car, path: string, units: UnitChoice): string {
  const value = readAt(car.scenario, path);
  if (value === undefined || value === null) return 'none';
  const row = specAt(car, path)?.row;
  const write = (each: unknown): string =>
    typeof each === 'number' && row !== undefined && isNumberRow(row)
      ? valueText(each, measureOf(row.unit, units))
      : String(each);
  return Array.isArray(value) ? value.map(write).join(' rising to ') : write(value);
}
