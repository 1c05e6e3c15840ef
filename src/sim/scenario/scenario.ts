import { withGeometry } from './geometry-values.ts';
import { type Issue, isError, type JsonObject } from './issue.ts';
import { readDocument } from './read-document.ts';
import { checkAirPath } from './rules/air-path.ts';
import { checkBoost } from './rules/boost.ts';
import { checkCoolantLoop, checkMeasuredFlow, checkSink } from './rules/coolant-loop.ts';
import { checkCoreGeometry } from './rules/core-geometry.ts';
import { checkLoopOrder } from './rules/loop-order.ts';
import { checkSession } from './rules/session.ts';
import { checkTank, checkWarmStart } from './rules/tank.ts';
import { checkTestPoints } from './rules/test-point.ts';
import type { Values } from './shape.ts';
import { withTestPoints } from './test-point.ts';

/** A scenario that can run: what was typed and what it means. Plain data, deeply frozen. */
export interface Scenario {
  /** the file as typed */
  readonly document: JsonObject;
  /** every parameter in its file unit, defaults in place */
  readonly values: Values;
  /** the car that this one was made of, where the flow that was measured is of that one; absent: of this one */
  readonly measuredOn?: Scenario;
}

export interface ScenarioResult {
  /** absent where an issue is an error */
  readonly scenario?: Scenario;
  readonly issues: readonly Issue[];
}

/**
 * A document read and checked: each key against the parameter table, then all of them together.
 *
 * @param isMeasuredHere - whether the flow that was measured, if any, is of this very car
 */
export function readScenario(
  document: JsonObject,
  isMeasuredHere = true,
): { readonly values: Values; readonly issues: readonly Issue[] } {
  const issues: Issue[] = [];
  const report = (issue: Issue): void => {
    issues.push(issue);
  };
  const typed = readDocument(document, report);
  checkAirPath(typed, report);
  checkBoost(typed, report);
  checkCoolantLoop(typed, report);
  checkLoopOrder(typed, report);
  if (isMeasuredHere) checkMeasuredFlow(typed, report);
  checkSink(typed, report);
  checkTank(typed, report);
  checkCoreGeometry(typed, document, report);
  checkTestPoints(typed, document, report);
  checkSession(typed, report);
  const hasErrors = issues.some(isError);
  const values = withGeometry(hasErrors ? typed : withTestPoints(typed), document, hasErrors, report);
  if (!issues.some(isError)) checkWarmStart(values, report);
  return { values, issues };
}

/** The result of reading: a frozen scenario unless an issue forbids it. */
export function resultOf(
  document: JsonObject,
  values: Values,
  issues: readonly Issue[],
  measuredOn?: Scenario,
): ScenarioResult {
  if (issues.some(isError)) return { issues };
  const isOfAnother = measuredOn !== undefined && values.pump.measuredFlow !== undefined;
  return { scenario: deeplyFrozen({ document, values, ...(isOfAnother && { measuredOn }) }), issues };
}

/** Freezes a value and everything in it. */
export function deeplyFrozen<T>(value: T): T {
  if (typeof value !== 'object' || value === null || Object.isFrozen(value)) return value;
  Object.freeze(value);
  for (const inner of Object.values(value)) deeplyFrozen(inner);
  return value;
}
