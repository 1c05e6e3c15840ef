import type { JsonObject } from '../../sim/index.ts';
import { readCar, valueAt } from '../state/cars.ts';
import { type Changes, withChanges } from '../state/session.ts';

/** The reader says so where a value may not stand at all, or only beside other fins or tubes. */
const isOneTooMany = (expected: string): boolean => /^(nothing|(fins|tubes) ")/.test(expected);

/**
 * What choosing a word sets: the word itself, and out of the file what the reader refuses beside it.
 *
 * @param value - `undefined` takes the word out, so that its default stands
 */
export function choiceChanges(document: JsonObject, path: string, value: string | undefined): Changes {
  const choice: Changes = { [path]: value };
  const { issues } = readCar('', withChanges(document, choice));
  const refused = issues.filter(
    (issue) =>
      issue.severity === 'error' &&
      issue.path !== path &&
      isOneTooMany(issue.expected) &&
      valueAt(document, issue.path) !== undefined,
  );
  return { ...choice, ...Object.fromEntries(refused.map((issue) => [issue.path, undefined])) };
}
