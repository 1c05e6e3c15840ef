import {
  type Config,
  type Issue,
  type JsonObject,
  type JsonValue,
  type PullSummary,
  parseScenario,
  type RunStudy,
  type Scenario,
  stepsOf,
  type TimeSeries,
  toConfig,
} from '../../sim/index.ts';

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
  /** why a run failed, or stopped */
  readonly message?: string;
  /** what takes many runs: there once worked out for this very car */
  readonly study?: RunStudy;
}

export const NO_RUN: CarRun = { kind: 'waiting', time: 0, duration: 0, pulls: [] };

/** Reads a document into a car, or the issues that forbid it. */
export function readCar(label: string, document: JsonObject): { car?: Car; issues: readonly Issue[] } {
  const { scenario, issues } = parseScenario(JSON.stringify(document));
  if (scenario === undefined) return { issues };
  return { car: { label, document, scenario, config: toConfig(scenario), warnings: issues }, issues };
}

/** What stands at a path of a document, or undefined. */
export function valueAt(document: JsonValue | undefined, path: string): JsonValue | undefined {
  let value = document;
  for (const step of stepsOf(path)) {
    if (typeof value !== 'object' || value === null) return undefined;
    value = (value as { readonly [key: string]: JsonValue })[step];
  }
  return value;
}

/** Paths whose values differ between two documents, leaves only; variants, name and notes aside. */
export function changedPaths(before: JsonObject, after: JsonObject): string[] {
  const paths: string[] = [];
  const walk = (a: JsonValue | undefined, b: JsonValue | undefined, path: string) => {
    if (Object.is(a, b)) return;
    if (typeof a === 'object' && a !== null && typeof b === 'object' && b !== null) {
      const keys = new Set([...Object.keys(a), ...Object.keys(b)]);
      for (const key of keys) {
        if (path === '' && (key === 'variants' || key === 'name' || key === 'notes')) continue;
        const inner = (value: object) => (value as { readonly [k: string]: JsonValue })[key];
        walk(inner(a), inner(b), path === '' ? key : `${path}.${key}`);
      }
      return;
    }
    paths.push(path);
  };
  walk(before, after, '');
  return paths;
}
