import { isObject, type JsonObject, type JsonValue } from './issue.ts';
import { PROPYLENE_BY_VOLUME } from './parameters/coolant-loop.ts';
import { DOCUMENT, type GroupShape, type Shape } from './shape.ts';
import { isNumberRow } from './table.ts';

/** Whether the coolant of a file is mixed with propylene glycol. */
const hasPropylene = ({ coolant }: JsonObject): boolean => isObject(coolant) && coolant.glycol === 'propylene';

/**
 * The file's tree as one document fills it: what a key may hold, and whether it must stand there, can hang on another
 * group.
 */
export function shapeFor(document: JsonObject): GroupShape {
  const { coolant } = DOCUMENT.keys;
  if (coolant.kind !== 'group') return DOCUMENT;
  const byKind = hasPropylene(document)
    ? { ...coolant, keys: { ...coolant.keys, glycolByVolume: { kind: 'value', row: PROPYLENE_BY_VOLUME } as const } }
    : coolant;
  const keys = Object.entries({ ...DOCUMENT.keys, coolant: byKind });
  return { ...DOCUMENT, keys: Object.fromEntries(keys.map(([key, shape]) => [key, relaxed(shape, document, key)])) };
}

/** A source that begins with a point stands in the same group. */
export const placeOfSource = (source: string, group: string): string =>
  source.startsWith('.') ? `${group}${source}` : source;

function isThere(document: JsonObject, path: string): boolean {
  let value: JsonValue | undefined = document;
  for (const step of path.split('.')) value = isObject(value) && Object.hasOwn(value, step) ? value[step] : undefined;
  return value !== undefined;
}

/** Keys whose value follows from a group that the document has may be left out. */
function relaxed(shape: Shape, document: JsonObject, group: string): Shape {
  if (shape.kind !== 'group') return shape;
  const keys = Object.entries(shape.keys).map(([key, inner]): [string, Shape] => {
    if (inner.kind !== 'value' || !isNumberRow(inner.row)) return [key, inner];
    const source = inner.row.followsFrom
      ?.map((path) => placeOfSource(path, group))
      .find((path) => isThere(document, path));
    return [key, source === undefined ? inner : { kind: 'value', row: { ...inner.row, absent: source } }];
  });
  return { ...shape, keys: Object.fromEntries(keys) };
}
