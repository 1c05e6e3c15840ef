import { isList, type JsonObject, type JsonValue } from '../../sim/index.ts';
import { valueAt } from '../state/cars.ts';
import type { Changes } from '../state/session.ts';

/** Items of a list of the file; one without its brackets is a list of one. */
export function itemsAt(document: JsonObject, list: string): readonly JsonValue[] {
  const items = valueAt(document, list);
  if (items === undefined) return [];
  return isList(items) ? items : [items];
}

/** One item more, the same as that at `index`, right behind it. */
export function itemAdded(document: JsonObject, list: string, index: number): Changes {
  const items = itemsAt(document, list);
  return { [list]: items.toSpliced(index + 1, 0, items[index]) };
}

/** The list without the item at `index`. */
export function itemRemoved(document: JsonObject, list: string, index: number): Changes {
  return { [list]: itemsAt(document, list).toSpliced(index, 1) };
}

/** One item more, halfway from that at `index` to the next; from the last, halfway back to the one before. */
export function halfwayAdded<Key extends string>(
  document: JsonObject,
  list: string,
  items: readonly Readonly<Record<Key, number>>[],
  index: number,
): Changes {
  const first = Math.min(index, items.length - 2);
  const [from, to] = [items[first], items[first + 1]];
  const between = Object.fromEntries((Object.keys(from) as Key[]).map((key) => [key, (from[key] + to[key]) / 2]));
  return { [list]: itemsAt(document, list).toSpliced(first + 1, 0, between) };
}
