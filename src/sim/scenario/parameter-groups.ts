import { DOCUMENT, type GroupShape, type Shape } from './shape.ts';
import type { Parameter } from './table.ts';

/** The keys of one kind of object in the file and every place where such an object stands. Plain data. */
export interface ParameterGroup {
  readonly title: string;
  /** paths with "*" for the index of a list; "" is the file itself */
  readonly places: readonly string[];
  readonly rows: readonly { readonly key: string; readonly row: Parameter }[];
}

/** The parameter table in the order of the file: for forms, help and guides. */
export function parameterGroups(): ParameterGroup[] {
  const places = new Map<GroupShape, string[]>();
  collectPlaces(DOCUMENT, '', places);
  return [...places].map(([group, where]) => ({
    title: group.title,
    places: where,
    rows: Object.entries(group.keys).flatMap(([key, shape]) =>
      shape.kind === 'value' ? [{ key, row: shape.row }] : [],
    ),
  }));
}

function collectPlaces(shape: Shape, path: string, places: Map<GroupShape, string[]>): void {
  if (shape.kind === 'group') {
    places.set(shape, [...(places.get(shape) ?? []), path]);
    for (const [key, inner] of Object.entries(shape.keys)) {
      collectPlaces(inner, path === '' ? key : `${path}.${key}`, places);
    }
  } else if (shape.kind === 'list') {
    collectPlaces(shape.item, `${path}.*`, places);
  } else if (shape.kind === 'either') {
    collectPlaces(shape.other, path, places);
    collectPlaces(shape.keyed, path, places);
  }
}
