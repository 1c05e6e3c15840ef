import {
  type CoreSize,
  type CoreSizeValues,
  isList,
  isObject,
  type JsonObject,
  type JsonValue,
  resizeCore,
  type Scenario,
  sizeOfCore,
} from '../../sim/index.ts';
import { changedPaths } from '../state/cars.ts';
import type { Changes } from '../state/session.ts';

/** A core to start from: the one of the file, or that of a variant which changes nothing but the core. */
export interface CorePreset {
  readonly name: string;
  /** everything that then stands under "core" */
  readonly core: JsonObject;
}

/** Cores that a file offers; the first is its own. */
export function corePresets(document: JsonObject): CorePreset[] {
  const own = document.core as JsonObject;
  const variants = isList(document.variants) ? document.variants.filter(isObject) : [];
  const ofCoreAlone = variants.flatMap(({ name, basedOn, changes }): CorePreset[] => {
    if (typeof name !== 'string' || basedOn !== undefined || !isObject(changes)) return [];
    const paths = Object.keys(changes);
    if (!paths.every((path) => /^core\.\w+$/.test(path))) return [];
    const values = paths.map((path) => [path.slice('core.'.length), changes[path]] as const);
    return [{ name, core: { ...own, ...Object.fromEntries(values) } }];
  });
  return [{ name: 'Stock', core: own }, ...ofCoreAlone];
}

/** Whether a document has the core of a preset. */
export function hasCore(document: JsonObject, { core }: CorePreset): boolean {
  return changedPaths({ core: document.core }, { core }).length === 0;
}

/** Keys that the size of a core sets, in the order of the form. */
export const SIZED_KEYS = [
  'airConductance',
  'coolantConductance',
  'airDrop',
  'metalHeatCapacity',
  'coolantVolume',
] as const satisfies readonly (keyof CoreSizeValues)[];

/** What a size counted from a car sets in its file: four figures each, or just what the file has at that very size. */
export function sizeChanges({ values, document }: Scenario, size: CoreSize): Changes {
  const own = document.core as JsonObject;
  const isOwnSize = size.width === 1 && size.depth === 1;
  const resized = resizeCore(values.core, size);
  const ofSize = (key: (typeof SIZED_KEYS)[number]): JsonValue | undefined =>
    isOwnSize ? own[key] : Number(resized[key].toPrecision(4));
  return Object.fromEntries(SIZED_KEYS.map((key) => [`core.${key}`, ofSize(key)]));
}

/** Size of a car's core counted from another car; undefined where its values follow no one size. */
export function sizeBetween(before: Scenario, after: Scenario): CoreSize | undefined {
  const size = sizeOfCore(after.values.core, before.values.core);
  const rounded = (factor: number) => Math.round(100 * factor) / 100;
  return size && { width: rounded(size.width), depth: rounded(size.depth) };
}
