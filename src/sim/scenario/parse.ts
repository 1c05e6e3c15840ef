import { type Issue, isObject, type JsonObject, quoted } from './issue.ts';
import { readJson } from './json.ts';
import { readScenario, resultOf, type Scenario, type ScenarioResult } from './scenario.ts';
import { FORMAT, VERSION } from './shape.ts';
import { FIRST_VERSION, upgraded } from './upgrade.ts';
import { issuesOfUpgrades } from './upgrade-list.ts';
import { issuesOfVariants } from './variants.ts';

/**
 * Reads a scenario file.
 *
 * Every issue is reported at once, those of its variants and upgrades included. An error leaves no scenario; a warning
 * does. No value is ever clamped or dropped. Never throws, whatever the text.
 *
 * @param text - content of the file
 * @param measuredOn - the car on which the flow was measured that the file gives, where that is another one
 * @returns the scenario unless an issue is an error, and the issues: of the file first, then of its variants and
 *   upgrades
 * @example
 * const { scenario, issues } = parseScenario(text);
 */
export function parseScenario(text: string, measuredOn?: Scenario): ScenarioResult {
  const { value, issues } = readJson(text);
  if (value === undefined) return { issues };
  const unreadable = isObject(value) ? otherFormat(value) : notAnObject(quoted(value));
  if (unreadable !== undefined || !isObject(value)) return { issues: [...issues, ...(unreadable ? [unreadable] : [])] };
  const { document, converted } = upgraded(value);
  const own = readScenario(document, measuredOn === undefined);
  const ofLists = [...issuesOfVariants(document, own), ...issuesOfUpgrades(document, own)];
  return resultOf(document, own.values, [...issues, ...converted, ...own.issues, ...ofLists], measuredOn);
}

function notAnObject(found: string): Issue {
  const expected = `an object that begins { "format": "${FORMAT}", "version": ${VERSION}, ... }`;
  const message = `This is not a scenario: found ${found}; expected ${expected}.`;
  return { severity: 'error', path: 'file', message, found, expected };
}

/** A file of another program or version: nothing else in it can be judged. */
function otherFormat({ format, version }: JsonObject): Issue | undefined {
  if (format !== undefined && format !== FORMAT) {
    const [found, expected] = [quoted(format), quoted(FORMAT)];
    const message = `This is not a scenario file: its format is ${found}; expected ${expected}.`;
    return { severity: 'error', path: 'format', message, found, expected };
  }
  if (typeof version !== 'number' || version === VERSION || version === FIRST_VERSION) return undefined;
  const message = `This file is of format version ${quoted(version)}; this program reads versions ${FIRST_VERSION} and ${VERSION}. A newer program may have written it: open it there, or set the version to ${VERSION} if its keys are those of version ${VERSION}.`;
  const expected = `${FIRST_VERSION} or ${VERSION}`;
  return { severity: 'error', path: 'version', message, found: quoted(version), expected };
}
