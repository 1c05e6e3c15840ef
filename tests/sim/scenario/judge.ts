import { expect } from 'vitest';
import type { Issue } from '../../../src/sim/scenario/issue.ts';
import { parseScenario } from '../../../src/sim/scenario/parse.ts';
import { stepsOf, withValue } from '../../../src/sim/scenario/place.ts';
import { shippedDocument } from '../../support/shipped.ts';
import { type Edits, edit, type LooseDocument } from '../../support/short-session.ts';

/** What is typed into a shipped file, and what is said to it. */
export interface BadInput {
  readonly what: string;
  readonly edits: Edits;
  readonly severity?: Issue['severity'];
  readonly path: string;
  readonly message: string;
  readonly fix?: unknown;
}

/** A shipped file with some values changed, without its variants. */
export function changed(file: string, edits: Edits): LooseDocument {
  const { variants: _, upgrades: __, ...car } = structuredClone(shippedDocument(file)) as LooseDocument;
  for (const [path, value] of Object.entries(edits)) edit(car, path, value);
  return car;
}

export const parsed = (document: LooseDocument) => parseScenario(JSON.stringify(document));

/** Expects the one issue, that the file is refused just where an issue is an error, and that a fix mends it. */
export function judge(file: string, { edits, severity = 'error', path, message, fix }: BadInput): void {
  const document = changed(file, edits);
  const { issues, scenario } = parsed(document);
  const issue = issues.find((each) => each.path === path && each.message.includes(message));
  expect(issue, JSON.stringify(issues, undefined, 1)).toBeDefined();
  expect(issue?.severity).toBe(severity);
  expect(scenario === undefined).toBe(issues.some((each) => each.severity === 'error'));
  if (fix === undefined) expect(issue?.fix).toBeUndefined();
  if (fix === undefined || issue?.fix === undefined) {
    expect(issue?.fix?.value).toBe(fix);
    return;
  }
  expect(issue.fix.value).toEqual(fix);
  const mended = withValue(document, stepsOf(issue.fix.path), issue.fix.value);
  expect(parsed(mended).issues.filter((each) => each.path === path)).toEqual([]);
}
