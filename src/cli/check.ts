import { applyVariant, type Issue, parseScenario, variants } from '../sim/index.ts';
import { EXIT } from './exit-codes.ts';
import { printIssues, readText } from './read-scenario.ts';

/** Checks a file and each of its variants; nothing is run. */
export function check(file: string, { json }: { json?: true }): number {
  const text = readText(file);
  if (text === undefined) return EXIT.unreadable;
  const { scenario, issues } = parseScenario(text);
  const byVariant: { variant?: string; issues: readonly Issue[] }[] = [{ issues }];
  if (scenario !== undefined) {
    for (const variant of variants(scenario))
      byVariant.push({ variant, issues: applyVariant(scenario, variant).issues });
  }
  const all = byVariant.flatMap((each) => each.issues);
  const errors = all.filter(({ severity }) => severity === 'error').length;
  if (json) {
    console.log(JSON.stringify({ file, errors, warnings: all.length - errors, checked: byVariant }, undefined, 2));
  } else {
    for (const each of byVariant) {
      printIssues(each.variant === undefined ? file : `${file} (${each.variant})`, each.issues);
    }
    const count = byVariant.length - 1;
    console.log(`${file}: ${errors} errors, ${all.length - errors} warnings, ${count} variants`);
  }
  return errors === 0 ? EXIT.done : EXIT.badScenario;
}
