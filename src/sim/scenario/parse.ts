import { isError, type Issue, isObject, type JsonObject, quoted } from './issue.ts';
import { readJson } from './json.ts';
import { readDocument } from './read-document.ts';
import { checkTogether } from './rules.ts';
import { FORMAT, VERSION, type Values } from './shape.ts';
import { variantIssues } from './variants.ts';

/** A scenario file that can run: what was typed, and what it means. Plain data, deeply frozen. */
export interface Scenario {
  /** the file as typed */
  readonly document: JsonObject;
  /** every parameter in its file unit, with the defaults */
  readonly values: Values;
}

export interface ParseResult {
  /** absent where an issue is an error */
  readonly scenario?: Scenario;
  readonly issues: readonly Issue[];
}
