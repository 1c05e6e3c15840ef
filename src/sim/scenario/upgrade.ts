import { type Issue, isList, isObject, type JsonObject, type JsonValue } from './issue.ts';
import { VERSION } from './shape.ts';

export const FIRST_VERSION = 1;

/** Keys of version 1 that have another name since: lines by the part they leave, not by both ends. */
const RENAMED: Readonly<Record<string, string>> = {
  pumpToCore: 'afterPump',
  coreToExchanger: 'afterCore',
  exchangerToReservoir: 'afterExchanger',
  reservoirToPump: 'afterReservoir',
};

/**
 * A file of an earlier version as one of this version, with what was done said; others as they are.
 *
 * @returns the document, and one warning where it was converted
 */
export function upgraded(document: JsonObject): { readonly document: JsonObject; readonly converted: Issue[] } {
  if (document.version !== FIRST_VERSION) return { document, converted: [] };
  const renamed = new Set<string>();
  const nameOf = (name: string): string => {
    if (!Object.hasOwn(RENAMED, name)) return name;
    renamed.add(name);
    return RENAMED[name];
  };
  const withNames = (lines: JsonValue): JsonValue =>
    isObject(lines) ? Object.fromEntries(Object.entries(lines).map(([key, value]) => [nameOf(key), value])) : lines;
  const variantWithNames = (variant: JsonValue): JsonValue => {
    if (!isObject(variant) || !isObject(variant.changes)) return variant;
    const changes = Object.entries(variant.changes).map(([path, value]): [string, JsonValue] => {
      const [group, ...steps] = path.split('.');
      if (group !== 'lines') return [path, value];
      return steps.length === 0
        ? [path, withNames(value)]
        : [[group, nameOf(steps[0]), ...steps.slice(1)].join('.'), value];
    });
    return { ...variant, changes: Object.fromEntries(changes) };
  };

  const next: JsonObject = {
    ...document,
    version: VERSION,
    ...('lines' in document && { lines: withNames(document.lines) }),
    ...(isList(document.variants) && { variants: document.variants.map(variantWithNames) }),
  };
  const names = [...renamed].map((name) => `${name} is now ${RENAMED[name]}`).join(', ');
  const message = `Made with format version ${FIRST_VERSION}; converted to version ${VERSION}: ${names === '' ? 'no key has another name' : names}. No value has changed.`;
  const issue: Issue = {
    severity: 'warning',
    path: 'version',
    message,
    found: String(FIRST_VERSION),
    expected: String(VERSION),
  };
  return { document: next, converted: [issue] };
}
