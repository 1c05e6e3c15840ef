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
  /** everything that then stands under "core", and under "coreGeometry" */
  readonly core: JsonObject;
  readonly coreGeometry: JsonValue | undefined;
}

/** Cores that a file offers; the first is its own. */
export function corePresets(document: JsonObject): CorePreset[] {
  const own = document.core as JsonObject;
  const { coreGeometry } = document;
  const variants = isList(document.variants) ? document.variants.filter(isObject) : [];
  const ofCoreAlone = variants.flatMap(({ name, basedOn, changes }): CorePreset[] => {
    if (typeof name !== 'string' || basedOn !== undefined || !isObject(changes)) return [];
    const paths = Object.keys(changes);
    if (!paths.every((path) => /^core\.\w+$/.test(path))) return [];
    const values = paths.map((path) => [path.slice('core.'.length), changes[path]] as const);
    return [{ name, core: { ...own, ...Object.fromEntries(values) }, coreGeometry }];
  });
  return [{ name: 'Stock', core: own, coreGeometry }, ...ofCoreAlone];
}

/** Whether a document has the core of a preset. */
export function hasCore(document: JsonObject, preset: CorePreset): boolean {
  return changedPaths(coreOf(document), coreOf(preset)).length === 0;
}

function coreOf({ core, coreGeometry }: { readonly [key in 'core' | 'coreGeometry']?: JsonValue | undefined }) {
  return { ...(core !== undefined && { core }), ...(coreGeometry !== undefined && { coreGeometry }) };
}

/** Keys that the size of a core sets, in the order of the form. */
export const SIZED_KEYS = [
  'airConductance',
  'coolantConductance',
  'airDrop',
  'metalHeatCapacity',
  'coolantVolume',
] as const satisfies readonly (keyof CoreSizeValues)[];

/** Flows at which the conductances among them hold. */
const REFERENCE_FLOWS = ['airConductanceAtFlow', 'coolantConductanceAtFlow'] as const;

/** Measures of a core that its size is. */
const MEASURES = ['width', 'depth'] as const;

/**
 * What a size counted from a car sets in its file, or just what the file has at that very size: width and depth of a
 * core by its measures, else the five figures that follow, four digits each.
 */
export function sizeChanges({ values, document }: Scenario, size: CoreSize): Changes {
  const { coreGeometry } = values;
  if (coreGeometry !== undefined) {
    const typed = document.coreGeometry as JsonObject;
    const sized = (measure: (typeof MEASURES)[number]): JsonValue =>
      size[measure] === 1 ? typed[measure] : Number((coreGeometry[measure] * size[measure]).toPrecision(6));
    return Object.fromEntries(MEASURES.map((measure) => [`coreGeometry.${measure}`, sized(measure)]));
  }
  const own = document.core as JsonObject;
  const isOwnSize = size.width === 1 && size.depth === 1;
  const resized = resizeCore(values.core, size);
  const ofSize = (key: (typeof SIZED_KEYS)[number]): JsonValue | undefined =>
    isOwnSize ? own[key] : Number(resized[key].toPrecision(4));
  const sized = Object.fromEntries(SIZED_KEYS.map((key) => [`core.${key}`, ofSize(key)]));
  if (own.test === undefined) return sized;
  // Another size has another test: its conductances stand for themselves, at the flows of the test.
  const flowOf = (key: (typeof REFERENCE_FLOWS)[number]) => (isOwnSize ? own[key] : values.core[key]);
  const flows = REFERENCE_FLOWS.map((key) => [`core.${key}`, flowOf(key)] as const);
  return { ...sized, ...Object.fromEntries(flows), 'core.test': isOwnSize ? own.test : undefined };
}

/** Size of a car's core counted from another car; undefined where its values follow no one size. */
export function sizeBetween(before: Scenario, after: Scenario): CoreSize | undefined {
  const [from, to] = [before.values.coreGeometry, after.values.coreGeometry];
  const rounded = (factor: number) => Math.round(100 * factor) / 100;
  if (from !== undefined && to !== undefined)
    return { width: rounded(to.width / from.width), depth: rounded(to.depth / from.depth) };
  if (from !== undefined || to !== undefined) return undefined;
  const size = sizeOfCore(after.values.core, before.values.core);
  return size && { width: rounded(size.width), depth: rounded(size.depth) };
}

/** The same air at both ends of the core, to start from. */
export const EVEN_AIR = [
  { place: 0, speed: 1 },
  { place: 1, speed: 1 },
];
