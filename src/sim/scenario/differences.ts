import { type FileUnit, figure } from '../units.ts';
import { isList, isObject, type JsonObject, type JsonValue } from './issue.ts';
import { stepsOf } from './place.ts';
import { numberRowAt } from './row-at.ts';
import type { Scenario } from './scenario.ts';

/** A key that two scenarios do not agree in. */
export interface ChangedInput {
  /** of the file, an item of a list always with its index */
  readonly path: string;
  /** unit of the key; absent where it has none */
  readonly unit?: FileUnit;
  /** in the unit of the key, defaults in place; absent where the scenario has no such key */
  readonly from?: JsonValue;
  readonly to?: JsonValue;
}

/** A value of a changed input as it is written: "none" where the scenario has no such key. */
export function inputInWords(value: JsonValue | undefined): string {
  if (typeof value === 'number') return figure(value);
  return typeof value === 'string' ? value : (JSON.stringify(value) ?? 'none');
}

/** Of the file, not of the car. */
const NOT_INPUTS = ['$schema', 'name', 'notes', 'variants', 'upgrades'];

/**
 * The keys typed in either of two scenarios whose values differ, in the order of the table, with both values. Another
 * spelling of the same value ("5 min", 300) is no difference, and what follows from other keys is not listed.
 *
 * @example
 * changedInputs(scenario, biggerCore)[0] // { path: 'core.airConductance', unit: 'W/K', from: 390, to: 585 }
 */
export function changedInputs(first: Scenario, other: Scenario): ChangedInput[] {
  const from = leavesOf(first.values as unknown as JsonObject);
  const to = leavesOf(other.values as unknown as JsonObject);
  return [...new Set([...from.keys(), ...to.keys()])].flatMap((path): ChangedInput[] => {
    const steps = stepsOf(path);
    if (NOT_INPUTS.includes(steps[0])) return [];
    const [a, b] = [from.get(path), to.get(path)];
    if (JSON.stringify(a) === JSON.stringify(b)) return [];
    if (!isTyped(first.document, steps) && !isTyped(other.document, steps)) return [];
    const unit = numberRowAt(path)?.unit;
    return [
      {
        path,
        ...(unit !== undefined && unit !== '-' && { unit }),
        ...(a !== undefined && { from: a }),
        ...(b !== undefined && { to: b }),
      },
    ];
  });
}

/** Paths of all single values; a list of plain values, such as a pair, counts as one. */
function leavesOf(value: JsonValue | undefined, path = '', leaves = new Map<string, JsonValue>()) {
  const inner = isList(value)
    ? value.some(isObject)
      ? Object.entries(value)
      : undefined
    : isObject(value) && Object.entries(value);
  if (inner) {
    for (const [key, each] of inner) leavesOf(each, path === '' ? key : `${path}.${key}`, leaves);
  } else if (value !== undefined) leaves.set(path, value);
  return leaves;
}

/** Whether a file has something at a path; one item of a list may stand without its brackets. */
function isTyped(document: JsonValue | undefined, [step, ...rest]: readonly string[]): boolean {
  if (document === undefined || step === undefined) return document !== undefined;
  if (isList(document)) return isTyped(document[Number(step)], rest);
  if (!isObject(document)) return true;
  return step === '0' ? isTyped(document, rest) : isTyped(document[step], rest);
}
