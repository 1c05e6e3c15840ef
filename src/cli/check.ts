import { counted, parseScenario, variants } from '../sim/index.ts';
import { EXIT } from './exit-codes.ts';
import { printIssues, readText } from './read-scenario.ts';

/** Checks a file and each of its variants; nothing is run. */
export function check(file: string, { json }: { json?: true }): number {
  const text = readText(file);
  if (text === undefined) return EXIT.unreadable;
  const { scenario, issues } = parseScenario(text);
  const errors = issues.filter(({ severity }) => severity === 'error').length;
  const warnings = issues.length - errors;
  if (json) {
    console.log(JSON.stringify({ file, errors, warnings, issues }, undefined, 2));
  } else {
    printIssues(file, issues);
    const checked = scenario === undefined ? '' : `, ${counted(variants(scenario).length, 'variant')}`;
    console.log(`${file}: ${counted(errors, 'error')}, ${counted(warnings, 'warning')}${checked}`);
  }
  return errors === 0 ? EXIT.done : EXIT.badScenario;
}
