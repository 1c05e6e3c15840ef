import { readFileSync } from 'node:fs';
import { describe, expect, it } from 'vitest';
import { applyVariant, parseScenario, toConfig } from '../../../src/sim/index.ts';
import { blockShape } from '../../../src/viewer/scene/block-shape.ts';
import { powerOf } from '../../support/power-law.ts';

const text = readFileSync(new URL('../../../scenarios/rolling-road-estate.json', import.meta.url), 'utf8');
const { scenario } = parseScenario(text);
if (scenario === undefined) throw new Error('the scenario cannot be read');
const stock = toConfig(scenario).core;
const variant = (name: string) => {
  const { scenario: changed } = applyVariant(scenario, name);
  if (changed === undefined) throw new Error(`no variant ${name}`);
  return toConfig(changed).core;
};
const [asStock, bigger, wider] = [stock, variant('bigger core'), variant('one row wider')].map((core) =>
  blockShape(core, 8),
);

describe('the drawn shape of a core', () => {
  // The notes of scenarios/rolling-road-estate.json: the bigger core is 45 % wider and 30 % deeper, one row wider 9 %.
  it('finds from test points how much wider and deeper another core of that build is', () => {
    expect(bigger.height / asStock.height).toBeCloseTo(1.45, 2);
    expect(bigger.depth / asStock.depth).toBeCloseTo(1.3, 2);
    expect(wider.height / asStock.height).toBeCloseTo(1.09, 2);
    expect(wider.depth / asStock.depth).toBeCloseTo(1, 2);
  });

  it('gives a higher stack more tubes', () => {
    expect([asStock.tubeCount, wider.tubeCount, bigger.tubeCount]).toEqual([8, 9, 12]);
  });

  it('does not depend on the flow at which the drop was measured', () => {
    const law = powerOf(stock.airDrop);
    const { drop, atFlow, exponent } = law;
    const atTwice = { ...stock, airDrop: { ...law, drop: drop * 2 ** exponent, atFlow: 2 * atFlow } };
    expect(blockShape(atTwice, 8).height).toBeCloseTo(asStock.height, 12);
  });

  it('stays drawable for any core', () => {
    for (const [metalHeatCapacity, drop] of [
      [10, 9000],
      [1e6, 9000],
      [2600, 0],
      [2600, 1e7],
    ]) {
      const { depth, height, tubeCount } = blockShape(
        { metalHeatCapacity, airDrop: { ...powerOf(stock.airDrop), drop } },
        8,
      );
      for (const [value, usual] of [
        [depth, asStock.depth],
        [height, asStock.height],
      ]) {
        expect(value / usual).toBeGreaterThan(0.3);
        expect(value / usual).toBeLessThan(3.1);
      }
      expect(tubeCount).toBeGreaterThanOrEqual(3);
    }
  });
});
