import { readFileSync } from 'node:fs';
import { applyVariant, type Config, type Issue, parseScenario, type Scenario, toConfig } from '../sim/index.ts';
import { EXIT } from './exit-codes.ts';

/** Text of a file or of standard input; a message and undefined where it cannot be read. */
export function readText(file: string): string | undefined {
  try {
    return readFileSync(file === '-' ? 0 : file, 'utf8');
  } catch (error) {
    console.error(`Cannot read ${file}: ${error instanceof Error ? error.message : String(error)}`);
    return undefined;
  }
}

/**
 * Reads and checks a scenario file, as it stands or one of its variants; prints its issues; returns the exit code where
 * it cannot be used.
 */
export function readScenarioFile(file: string, variant?: string): Scenario | number {
  const text = readText(file);
  if (text === undefined) return EXIT.unreadable;
  const { scenario, issues } = parseScenario(text);
  printIssues(file, issues);
  if (scenario === undefined) return EXIT.badScenario;
  return scenarioOf(file, scenario, variant) ?? EXIT.badUsage;
}

/** The same, ready for the model. */
export function readConfig(file: string, variant: string | undefined): Config | number {
  const scenario = readScenarioFile(file, variant);
  return typeof scenario === 'number' ? scenario : toConfig(scenario);
}

/** A scenario as it stands or one of its variants; prints why where there is none. */
export function scenarioOf(file: string, scenario: Scenario, variant: string | undefined): Scenario | undefined {
  if (variant === undefined) return scenario;
  const changed = applyVariant(scenario, variant);
  if (changed.scenario === undefined) printIssues(file, changed.issues);
  return changed.scenario;
}

/** Why values that no file holds are refused, on standard error. */
export function printRefusal(where: string, issues: readonly Issue[]): void {
  for (const { severity, message } of issues) if (severity === 'error') console.error(`${where}: error: ${message}`);
}

/** One issue a paragraph, on standard error: severity, path, what is wrong, found and expected, and the way out. */
export function printIssues(where: string, issues: readonly Issue[]): void {
  for (const issue of issues) {
    const found = `found ${issue.found}; expected ${issue.expected}`;
    const fix =
      issue.fix === undefined ? '' : `\n    ${issue.fix.label}: ${issue.fix.path} = ${JSON.stringify(issue.fix.value)}`;
    console.error(`${where}: ${issue.severity}: ${issue.path || 'file'}: ${issue.message}\n    ${found}${fix}`);
  }
}
