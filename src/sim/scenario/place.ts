import { isList, isObject, type JsonValue } from './issue.ts';

/**
 * The steps of a path: keys and indices. The key after "variants.2.changes." or "upgrades.2.changes." is a path itself
 * and stays whole.
 *
 * @example
 * stepsOf('cycle.1.phases.0.duration') // ['cycle', '1', 'phases', '0', 'duration']
 */
export function stepsOf(path: string): string[] {
  const change = /^(variants|upgrades)\.(\d+)\.(changes)\.(.+)$/.exec(path);
  return change === null ? path.split('.') : change.slice(1);
}

/**
 * A document with one value changed, or `undefined` where the path leads through something that is neither an object
 * nor a list long enough. The given document stays as it is; objects that a path needs and that are absent are made.
 */
export function withValue(document: JsonValue, steps: readonly string[], value: JsonValue): JsonValue | undefined {
  if (steps.length === 0) return value;
  const [step, ...rest] = steps;
  if (isList(document)) {
    const index = /^\d+$/.test(step) ? Number(step) : document.length;
    if (index >= document.length) return undefined;
    const inner = withValue(document[index], rest, value);
    return inner === undefined ? undefined : document.with(index, inner);
  }
  if (!isObject(document)) return undefined;
  const inner = withValue(Object.hasOwn(document, step) ? document[step] : {}, rest, value);
  return inner === undefined ? undefined : { ...document, [step]: inner };
}

/** A document without the value at a path; the same document where there is none. The given one stays as it is. */
export function withoutValue(document: JsonValue, steps: readonly string[]): JsonValue {
  const [step, ...rest] = steps;
  if (isList(document)) {
    const index = /^\d+$/.test(step) ? Number(step) : document.length;
    if (index >= document.length) return document;
    return rest.length === 0 ? document.toSpliced(index, 1) : document.with(index, withoutValue(document[index], rest));
  }
  if (!isObject(document) || !Object.hasOwn(document, step)) return document;
  if (rest.length > 0) return { ...document, [step]: withoutValue(document[step], rest) };
  const { [step]: _, ...others } = document;
  return others;
}
