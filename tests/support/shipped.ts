import { readFileSync } from 'node:fs';
import type { Config } from '../../src/sim/scenario/config.ts';
import type { JsonObject } from '../../src/sim/scenario/issue.ts';
import { parseScenario } from '../../src/sim/scenario/parse.ts';
import type { Scenario } from '../../src/sim/scenario/scenario.ts';
import { toConfig } from '../../src/sim/scenario/to-config.ts';
import { applyVariant } from '../../src/sim/scenario/variants.ts';

const textOf = (file: string): string => readFileSync(new URL(`../../scenarios/${file}.json`, import.meta.url), 'utf8');

/** A shipped scenario as its file has it. */
export const shippedDocument = (file: string): JsonObject => JSON.parse(textOf(file));

/** The same, read through the parser like any user's file. */
export function shippedScenario(file: string): Scenario {
  const { scenario, issues } = parseScenario(textOf(file));
  if (scenario === undefined) throw new Error(`${file}: ${issues[0].message}`);
  return scenario;
}

/** Configuration of a shipped scenario or one of its variants. */
export function shippedConfig(file: string, variant?: string): Config {
  const scenario = shippedScenario(file);
  if (variant === undefined) return toConfig(scenario);
  const changed = applyVariant(scenario, variant);
  if (changed.scenario === undefined) throw new Error(`${file} / ${variant}: ${changed.issues[0].message}`);
  return toConfig(changed.scenario);
}
