import { isList, isObject, type JsonObject, KEYS_BY_KIND, parameterGroups, parseScenario } from '../../sim/index.ts';
import { DEMO_SCENARIOS } from '../files/demo-scenarios.ts';
import type { Car } from '../state/cars.ts';
import type { Changes } from '../state/session.ts';

type Geometry = NonNullable<Car['scenario']['values']['coreGeometry']>;

/** Every key of a core's measures, in the order of the file. */
const KEYS = parameterGroups()
  .filter(({ places }) => places.includes('coreGeometry'))
  .flatMap(({ rows }) => rows.map(({ key }) => key));

const pathOf = (key: string): string => `coreGeometry.${key}`;

/** Paths of all measures of a core. */
export const measurePaths = (): string[] => KEYS.map(pathOf);

/** Measures under one heading. */
export interface MeasureSection {
  readonly title: string;
  readonly paths: readonly string[];
}

const SECTIONS: readonly (readonly [title: string, isOne: (key: string) => boolean])[] = [
  ['Fins', (key) => /^(fin|louvre|strip)/.test(key)],
  ['Tubes', (key) => /^(tube|ports$|webThickness|turbulator)/.test(key)],
  ['Size, layers, headers', () => true],
];

/** The measures that a core has, by what they belong to: those that its kind of fins or tubes does not use are out. */
export function measureSections(geometry: Geometry): MeasureSection[] {
  const unused = new Set<string>(KEYS_BY_KIND.flatMap(([part, kind, keys]) => (geometry[part] === kind ? [] : keys)));
  const left = KEYS.filter((key) => !unused.has(key));
  const titleOf = (key: string) => SECTIONS.find(([, isOne]) => isOne(key))?.[0];
  return SECTIONS.map(([title]) => ({ title, paths: left.filter((key) => titleOf(key) === title).map(pathOf) }));
}

/** Keys of a core by test points that its measures take over. */
const BY_TEST_POINT =
  /^(airConductance|coolantConductance|airDrop|metalHeatCapacity|coolantVolume|coolantDropFactor|test$)/;

/** What gives a core by test points the measures of the demo car's core: invented, one like it could be built. */
export function exampleMeasures({ core }: JsonObject): Changes {
  const own = isObject(core) ? core : {};
  const kept = Object.fromEntries(Object.entries(own).filter(([key]) => !BY_TEST_POINT.test(key)));
  const { passes } = own;
  // A second pass has tubes of its own.
  return { core: kept, coreGeometry: { ...EXAMPLE, ...(Number(passes) > 1 && { rows: Number(passes) }) } };
}

const EXAMPLE: JsonObject = exampleOf(DEMO_SCENARIOS.map(({ text }) => text));

function exampleOf(texts: readonly string[]): JsonObject {
  for (const text of texts) {
    const { variants } = parseScenario(text).scenario?.document ?? {};
    for (const variant of isList(variants) ? variants : []) {
      const changes = isObject(variant) ? variant.changes : undefined;
      const geometry = isObject(changes) ? changes.coreGeometry : undefined;
      if (isObject(geometry)) return geometry;
    }
  }
  throw new Error('no demo car has a core by its measures');
}

/** Whether the measures are still those that were put in as an example. */
export const isExample = ({ coreGeometry }: JsonObject): boolean =>
  isObject(coreGeometry) && Object.entries(EXAMPLE).every(([key, value]) => Object.is(coreGeometry[key], value));
