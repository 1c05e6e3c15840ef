import { BY_TEST, type JsonValue, type Scenario, type TestedPart, testPointOf } from '../../sim/index.ts';
import { valueAt } from '../state/cars.ts';
import type { Changes } from '../state/session.ts';

/** Paths of the conductances that a test point stands for. */
export const conductancePaths = (part: TestedPart): string[] => BY_TEST.map((key) => `${part}.${key}`);

/** Whether a part of a document is given by a test point. */
export const isTested = ({ document }: Pick<Scenario, 'document'>, part: TestedPart): boolean =>
  valueAt(document, `${part}.test`) !== undefined;

const rounded = (value: number): number => Number(value.toPrecision(5));

/** Changes that give a part by what a test of it would have shown, or by the conductances that its test comes to. */
export function givenOtherwise({ document, values }: Scenario, part: TestedPart): Changes {
  const own = values[part];
  if (own !== undefined && isTested({ document }, part)) {
    return {
      [`${part}.test`]: undefined,
      ...Object.fromEntries(BY_TEST.map((key) => [`${part}.${key}`, rounded(own[key])])),
    };
  }
  const test = Object.entries(testPointOf(values, part) ?? {}).map(([key, value]) => [key, rounded(value)] as const);
  return {
    [`${part}.test`]: Object.fromEntries(test) satisfies JsonValue,
    ...Object.fromEntries(conductancePaths(part).map((path) => [path, undefined])),
  };
}
