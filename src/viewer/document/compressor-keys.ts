import { carAlone, type JsonObject, type JsonValue, parameterGroups } from '../../sim/index.ts';
import { readCar } from '../state/cars.ts';

/** Keys of compressor and bypass by what a kind of compressor makes of them. */
export interface KindKeys {
  /** paths that say nothing about it */
  readonly unused: ReadonlySet<string>;
  /** paths that it cannot do without */
  readonly needed: ReadonlySet<string>;
}

/** Keys that have a default, so that the reader lets them stand, and no meaning for some kinds. */
const WITHOUT_MEANING: Readonly<Record<string, readonly string[]>> = {
  displacement: ['compressor.boostInletTemperature', 'compressor.boostInletPressure'],
  centrifugal: ['compressor.leak'],
  'turbine-driven': ['compressor.leak'],
};

const KNOWN = new Map<string, KindKeys>();

/** What the reader makes of every key for a kind of compressor: asked of it with all of them typed, and with none. */
export function keysOfKind(file: JsonObject, kind: string): KindKeys {
  const known = KNOWN.get(kind);
  if (known !== undefined) return known;
  const document = carAlone(file);
  const issuesWith = (more: JsonObject) =>
    readCar('', {
      ...document,
      compressor: { ...more, kind },
      bypass: { throttle: 'upstream', ...more },
    }).issues.filter(({ path, severity }) => severity === 'error' && /^(compressor|bypass)\./.test(path));
  const unused = issuesWith(allTyped()).filter(({ expected }) => expected === 'nothing');
  const needed = issuesWith({}).filter(({ found }) => found === 'nothing');
  const keys: KindKeys = {
    unused: new Set([...unused.map(({ path }) => path), ...(WITHOUT_MEANING[kind] ?? [])]),
    needed: new Set(needed.map(({ path }) => path)),
  };
  KNOWN.set(kind, keys);
  return keys;
}

/** Every number of compressor and bypass at the low end of its range. */
function allTyped(): JsonObject {
  const typed: Record<string, JsonValue> = {};
  for (const { places, rows } of parameterGroups()) {
    if (!places.includes('compressor') && !places.includes('bypass')) continue;
    for (const { key, row } of rows) if ('unit' in row) typed[key] = row.min;
  }
  return typed;
}
