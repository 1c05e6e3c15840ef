import {
  type JsonObject,
  type JsonValue,
  type Parameter,
  type ParameterGroup,
  parameterGroups,
  type Scenario,
  stepsOf,
} from '../../sim/index.ts';
import { type Car, valueAt } from '../state/cars.ts';

/** One box of the form: a row of the parameter table at its place in a document. */
export interface FieldSpec {
  readonly path: string;
  readonly row: Parameter;
}

/** The boxes of one object of the file: "core", or "cycle.1.phases.0". */
export interface FieldGroup {
  readonly path: string;
  readonly title: string;
  readonly fields: readonly FieldSpec[];
}

const TABLE = parameterGroups();

/** Every object that stands in a document, or may, with its boxes, in the order of the file. */
export function fieldGroups(document: JsonObject): FieldGroup[] {
  return TABLE.flatMap((group) =>
    group.places
      .flatMap((place) => placesIn(document, place))
      .filter((path) => isOfKind(valueAt(document, path), group))
      .map((path) => ({
        path,
        title: group.title,
        fields: group.rows.map(({ key, row }) => ({ path: path === '' ? key : `${path}.${key}`, row })),
      })),
  );
}

/** The one group at a path. */
export function groupAt(document: JsonObject, path: string): FieldGroup | undefined {
  return fieldGroups(document).find((group) => group.path === path);
}

/** A place of the table, "*" for an index, as the paths that there are in a document. */
function placesIn(document: JsonObject, place: string): string[] {
  const star = place.indexOf('.*');
  if (star < 0) return [place];
  const list = place.slice(0, star);
  const rest = place.slice(star + 2);
  const items = valueAt(document, list);
  // One item may stand without its brackets; it has no index then.
  if (!Array.isArray(items)) return items === undefined ? [] : [`${list}${rest}`];
  return items.flatMap((_, index) => placesIn(document, `${list}.${index}${rest}`));
}

/** Items of the cycle are phases or repetitions: told apart by the key that only one of them has. */
function isOfKind(value: JsonValue | undefined, { title }: ParameterGroup): boolean {
  if (title !== 'phase' && title !== 'repetition') return true;
  const isRepetition = typeof value === 'object' && value !== null && 'repeat' in value;
  return isRepetition === (title === 'repetition');
}

/**
 * What a scenario reads at a path of its document, in the file unit: a number, a word, a pair, or undefined where
 * nothing stands and no one value stands in.
 */
export function readAt({ values }: Scenario, path: string): unknown {
  let value: unknown = values;
  for (const step of stepsOf(path)) {
    // One item without its brackets is read as a list of one.
    if (Array.isArray(value) && !/^\d+$/.test(step)) value = value[0];
    if (typeof value !== 'object' || value === null) return undefined;
    value = (value as Readonly<Record<string, unknown>>)[step];
  }
  return value;
}

/** What a car reads at a path, in the file unit; of a value that holds all through its phase, the one value. */
export function numberAt({ scenario }: Pick<Car, 'scenario'>, path: string): number | undefined {
  const value = readAt(scenario, path);
  return (Array.isArray(value) ? value[0] : value) as number | undefined;
}
