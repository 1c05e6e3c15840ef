import { readdirSync, readFileSync } from 'node:fs';
import { describe, expect, it } from 'vitest';
import { parseScenario } from '../../../src/sim/scenario/parse.ts';
import { toConfig } from '../../../src/sim/scenario/to-config.ts';
import { applyVariant, variants } from '../../../src/sim/scenario/variants.ts';

const FOLDER = new URL('../../../scenarios/', import.meta.url);
const files = readdirSync(FOLDER).filter((name) => name.endsWith('.json') && name !== 'scenario.schema.json');

describe('every shipped scenario', () => {
  it('is there', () => {
    expect(files).toEqual(expect.arrayContaining(['ridge-roadster.json', 'rolling-road-estate.json']));
  });

  it.each(files)('%s is read without an issue, with all its variants, and says that its data are invented', (name) => {
    const { scenario, issues } = parseScenario(readFileSync(new URL(name, FOLDER), 'utf8'));
    expect(issues).toEqual([]);
    if (scenario === undefined) throw new Error('no scenario');
    expect(scenario.values.notes).toContain('invented');
    const { lines, exchanger } = toConfig(scenario);
    expect(lines).toHaveLength(exchanger ? 4 : 3);
    const names = variants(scenario);
    expect(names.length).toBeGreaterThan(0);
    for (const variant of names) {
      const applied = applyVariant(scenario, variant);
      expect(applied.issues).toEqual([]);
      expect(applied.scenario && toConfig(applied.scenario).name).toBe(`${scenario.values.name}: ${variant}`);
    }
  });
});
