import {
  type Config,
  type FileUnit,
  fromSi,
  type HottestDay,
  type Issue,
  type JsonObject,
  type JsonValue,
  measuredIn,
  measuredOnOneOf,
  type PullSummary,
  parseScenario,
  type RunStudy,
  type Scenario,
  stepsOf,
  type TimeSeries,
  toConfig,
  type Wording,
  withoutValue,
  withValue,
} from '../../sim/index.ts';

/** Before and After; a car alone is 'before'. */
export type CarRole = 'before' | 'after';
export const ROLE_NAMES: Readonly<Record<CarRole, string>> = { before: 'Before', after: 'After' };

/** A car that can run: the file as typed, and what it means. */
export interface Car {
  /** what the page calls it: "stock car", "bigger core" */
  readonly label: string;
  readonly document: JsonObject;
  readonly scenario: Scenario;
  readonly config: Config;
  readonly warnings: readonly Issue[];
}

/** Where the run of a car stands. A series is there as soon as there is anything to draw. */
export interface CarRun {
  readonly kind: 'waiting' | 'running' | 'solved' | 'cancelled' | 'stopped' | 'failed';
  /** simulated time reached, and the whole, s */
  readonly time: number;
  readonly duration: number;
  /** pulls that have ended; while a newer run has not told how far it is (`time` 0), those of the run before */
  readonly pulls: readonly PullSummary[];
  /** the newest whole or partial series; while a newer run is under way, that of the run before */
  readonly series?: TimeSeries;
  /** the car that `series` belongs to: another than the one on screen while its own run is under way */
  readonly of?: Car;
  /** why a run failed */
  readonly message?: string;
  /** what takes many runs: there once worked out for this very car */
  readonly study?: RunStudy;
  /** the hottest day on which it makes all pulls of the session; worked out after the rest */
  readonly hottestDay?: HottestDay;
}

export const NO_RUN: CarRun = { kind: 'waiting', time: 0, duration: 0, pulls: [] };

/** A document read: a car, or the issues that forbid it. */
interface ReadCar {
  readonly car?: Car;
  readonly issues: readonly Issue[];
}

/**
 * Reads a document into a car.
 *
 * @param measuredOn - the car on which the flow was measured that the document gives, where that is another one
 */
export function readCar(label: string, document: JsonObject, measuredOn?: Scenario): ReadCar {
  const { scenario, issues } = parseScenario(JSON.stringify(document), measuredOn);
  if (scenario === undefined) return { issues };
  return { car: { label, document, scenario, config: toConfig(scenario), warnings: issues }, issues };
}

/**
 * Reads a document that was made of cars on the page: a flow that was measured stays that of the car on which it was,
 * unless the document gives another.
 *
 * @param cars - of which the first counts that gives the same measured flow
 */
export function readChanged(label: string, document: JsonObject, cars: readonly (Car | undefined)[]): ReadCar {
  const scenarios = cars.flatMap((car) => car?.scenario ?? []);
  return readCar(label, document, measuredOnOneOf(scenarios, document));
}

/** The same car with other words, lists or limits in its document: nothing that a flow depends on. */
export function readAgain({ label, scenario }: Car, document: JsonObject): ReadCar {
  return readCar(label, document, scenario.measuredOn);
}

/**
 * The car as a file that stands alone. A file takes its measured flow as that of the car in it: where it was measured
 * before the car was changed, the file gives what the meter would read now, which means the same resistances.
 *
 * @returns the document; and where the flow is another one, why, in words with flows as a reader has them
 */
export function asFile({ document, config, scenario }: Car): {
  document: JsonObject;
  note?: (litres: Wording['flow']) => string;
} {
  const { measuredOn } = scenario;
  const measured = measuredOn && measuredIn(config);
  const isMet = measured?.resistanceFactor !== undefined;
  if (measured === undefined || (isMet && measured.now === undefined)) return { document };
  const { flow, now } = measured;
  const { measuredFlow: _, ...pump } = document.pump as JsonObject;
  if (now === undefined) {
    const note = (litres: Wording['flow']) =>
      `The file has no measured flow: no resistance gives ${litres(flow)} with the pumps of the car on which it was measured, so the curves stand, as they do here.`;
    return { document: { ...document, pump }, note };
  }
  const measuredFlow = typed(now, 'L/min');
  const measuredFlowAt = typed(config.measuredFlow?.temperature ?? Number.NaN, 'degC');
  const note = (litres: Wording['flow']) =>
    `The file gives a measured flow of ${litres(now)} in the place of ${litres(flow)}, which was measured before the car was changed: that is what the meter would read on the changed car, so that the file means the same resistances. Once it is measured on the car, type what it reads.`;
  return { document: { ...document, pump: { ...pump, measuredFlow, measuredFlowAt } }, note };
}

/** More figures than any answer shows, fewer than a reader would stumble over. */
const typed = (value: number, unit: FileUnit): number => Number(fromSi(value, unit).toPrecision(8));

/** A car with the variants and the upgrades of another one's file; a list that does not fit it as a whole stays behind. */
export function withListsOf(car: Car, { document }: Car): Car {
  return LISTS_OF_FILE.reduce((fitted, list) => {
    const items = document[list];
    return (items !== undefined && readAgain(car, { ...fitted.document, [list]: items }).car) || fitted;
  }, car);
}

const LISTS_OF_FILE = ['variants', 'upgrades'] as const;

/** What stands at a path of a document, or undefined. */
export function valueAt(document: JsonValue | undefined, path: string): JsonValue | undefined {
  let value = document;
  for (const step of stepsOf(path)) {
    if (typeof value !== 'object' || value === null) return undefined;
    value = (value as { readonly [key: string]: JsonValue })[step];
  }
  return value;
}

/** Whether one path is the other, or leads to or through it. */
export const areRelated = (a: string, b: string): boolean => a === b || a.startsWith(`${b}.`) || b.startsWith(`${a}.`);

/** Paths whose values differ between two documents, leaves only; variants, upgrades, name and notes aside. */
export function changedPaths(before: JsonObject, after: JsonObject): string[] {
  const paths: string[] = [];
  const walk = (a: JsonValue | undefined, b: JsonValue | undefined, path: string) => {
    if (Object.is(a, b)) return;
    if (isNested(a) ? b === undefined || isNested(b) : a === undefined && isNested(b)) {
      // What is absent on one side counts as empty: every key inside it is a change of its own.
      for (const key of new Set([...Object.keys(a ?? {}), ...Object.keys(b ?? {})])) {
        if (path === '' && NOT_THE_CAR.has(key)) continue;
        walk(valueAt(a, key), valueAt(b, key), path === '' ? key : `${path}.${key}`);
      }
      return;
    }
    paths.push(path);
  };
  walk(before, after, '');
  return paths;
}

const NOT_THE_CAR: ReadonlySet<string> = new Set([...LISTS_OF_FILE, 'name', 'notes']);

const isNested = (value: JsonValue | undefined): value is JsonObject | readonly JsonValue[] =>
  typeof value === 'object' && value !== null;

/** The shortest path on the way to `path` at which two documents cannot be compared key by key any more. */
function placeOfChange(a: JsonObject, b: JsonObject, path: string): string[] {
  const steps = stepsOf(path);
  for (let length = 1; length < steps.length; length++) {
    const place = steps.slice(0, length).join('.');
    const [one, other] = [valueAt(a, place), valueAt(b, place)];
    const isGroup = (value: JsonValue | undefined) => value === undefined || (isNested(value) && !Array.isArray(value));
    const areAlike = Array.isArray(one) && Array.isArray(other) && one.length === other.length;
    if (!areAlike && !(isGroup(one) && isGroup(other))) return steps.slice(0, length);
  }
  return steps;
}

/**
 * A document with what another one has at `path`; where a list on the way differs in length, the whole list. A group
 * that the other one does not have goes with its last key.
 */
export function withValueOf(document: JsonObject, source: JsonObject, path: string): JsonObject {
  const steps = placeOfChange(document, source, path);
  const value = valueAt(source, steps.join('.'));
  if (value !== undefined) return (withValue(document, steps, value) ?? document) as JsonObject;
  const changed = withoutValue(document, steps) as JsonObject;
  const group = steps.slice(0, -1).join('.');
  const isLeftOver = group !== '' && valueAt(source, group) === undefined && isEmpty(valueAt(changed, group));
  return isLeftOver ? withValueOf(changed, source, group) : changed;
}

const isEmpty = (value: JsonValue | undefined): boolean => isNested(value) && Object.keys(value).length === 0;

/**
 * What turns one document into another, as the changes of a variant: paths with their new values.
 *
 * @returns the changes, and the paths that a variant cannot say: what is there before and absent after
 */
export function changesBetween(
  before: JsonObject,
  after: JsonObject,
): { readonly changes: JsonObject; readonly removed: readonly string[] } {
  const changes: Record<string, JsonValue> = {};
  const removed: string[] = [];
  for (const path of changedPaths(before, after)) {
    const place = placeOfChange(before, after, path).join('.');
    const value = valueAt(after, place);
    if (value === undefined) removed.push(place);
    else changes[place] = value;
  }
  return { changes, removed };
}
