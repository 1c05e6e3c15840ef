import { readFileSync } from 'node:fs';
import type { Issue } from '../../../src/sim/scenario/issue.ts';
import { parseScenario } from '../../../src/sim/scenario/parse.ts';

/** Text of the shipped default scenario, which every test of the format starts from. */
export const ESTATE = readFileSync(new URL('../../../scenarios/rolling-road-estate.json', import.meta.url), 'utf8');

/** Paths of the file with their new values; `undefined` takes the key out. */
export type Edits = Readonly<Record<string, unknown>>;

/** The estate's file with some values changed, without its variants and upgrades unless they are among the edits. */
export function estateWith(edits: Edits): string {
  const file = JSON.parse(ESTATE);
  delete file.variants;
  delete file.upgrades;
  for (const [path, value] of Object.entries(edits)) {
    const steps = path.split('.');
    const last = steps.pop() ?? '';
    const place = steps.reduce((inner, step) => inner[step], file);
    if (value === undefined) delete place[last];
    else place[last] = value;
  }
  return JSON.stringify(file);
}

export const issuesWith = (edits: Edits): readonly Issue[] => parseScenario(estateWith(edits)).issues;
