import { describe, expect, it } from 'vitest';
import { conductanceAt } from '../../../src/sim/model/conductance.ts';
import { airDropTimesDensity, coolantDropAt } from '../../../src/sim/model/drop-laws.ts';
import type { Config } from '../../../src/sim/scenario/config.ts';
import { parseScenario } from '../../../src/sim/scenario/parse.ts';
import { toConfig } from '../../../src/sim/scenario/to-config.ts';
import { shippedConfig, shippedDocument } from '../../support/shipped.ts';
import { type Edits, edit, type LooseDocument, shortDocument } from '../../support/short-session.ts';

function parsed(edits: Edits) {
  const car = shortDocument();
  for (const [path, value] of Object.entries(edits)) edit(car, path, value);
  return parseScenario(JSON.stringify(car));
}

function configWith(edits: Edits): Config {
  const { scenario, issues } = parsed(edits);
  if (scenario === undefined) throw new Error(issues[0].message);
  return toConfig(scenario);
}

/** The estate with its core by measures, one or two of them. */
function geometryWith(edits: Edits): Config {
  const { variants, upgrades: _, ...car } = structuredClone(shippedDocument('rolling-road-estate')) as LooseDocument;
  const measured = variants.find(({ name }: { name: string }) => name.startsWith('core by its measures'));
  const changes: Edits = { ...measured.changes, ...edits };
  for (const [path, value] of Object.entries(changes)) edit(car, path, value);
  const { scenario, issues } = parseScenario(JSON.stringify(car));
  if (scenario === undefined) throw new Error(issues[0].message);
  return toConfig(scenario);
}

describe.each([
  ['test points', configWith],
  ['its measures', geometryWith],
] as const)('two cores by %s', (_, make) => {
  const one = make({}).core;
  const air = 0.12;
  const coolant = 0.00012;

  it('in parallel are two cores at half of both flows', () => {
    const two = make({ 'core.count': 2 }).core;
    expect(conductanceAt(two.airConductance, 2 * air)).toBeCloseTo(2 * conductanceAt(one.airConductance, air), 8);
    const warm = conductanceAt(one.coolantConductance, 1000 * coolant);
    expect(conductanceAt(two.coolantConductance, 2000 * coolant)).toBeCloseTo(2 * warm, 8);
    expect(airDropTimesDensity(two.airDrop, 2 * air)).toBeCloseTo(airDropTimesDensity(one.airDrop, air), 8);
    expect(coolantDropAt(two.coolantDrop, 2 * coolant)).toBeCloseTo(coolantDropAt(one.coolantDrop, coolant), 8);
    expect(two.metalHeatCapacity).toBeCloseTo(2 * one.metalHeatCapacity, 8);
    expect(two.coolantVolume).toBeCloseTo(2 * one.coolantVolume, 12);
    expect(two.toBay).toBe(2 * one.toBay);
    expect(two.layout).toMatchObject({ inSeries: 1, sideBySide: 2 });
  });

  it('in series take all the coolant one after the other', () => {
    const two = make({ 'core.count': 2, 'core.coolantOrder': 'series' }).core;
    const warm = conductanceAt(one.coolantConductance, 1000 * coolant);
    expect(conductanceAt(two.coolantConductance, 1000 * coolant)).toBeCloseTo(2 * warm, 8);
    expect(coolantDropAt(two.coolantDrop, coolant)).toBeCloseTo(2 * coolantDropAt(one.coolantDrop, coolant), 8);
    expect(conductanceAt(two.airConductance, 2 * air)).toBeCloseTo(2 * conductanceAt(one.airConductance, air), 8);
    expect(two.layout).toMatchObject({ inSeries: 2, sideBySide: 1 });
  });
});

describe('the air velocity', () => {
  it('becomes a weight of every column, mean 1', () => {
    const points = [
      { place: 0, speed: 3 },
      { place: 1, speed: 1 },
    ];
    const { airVelocity } = configWith({ 'core.airVelocity': points }).core.layout;
    // Four columns of a straight line from 3 to 1: 2.75, 2.25, 1.75, 1.25 over their mean of 2.
    expect(airVelocity?.map((weight) => Number(weight.toFixed(9)))).toEqual([1.375, 1.125, 0.875, 0.625]);
  });

  it('is refused where its places do not rise, or no air moves', () => {
    const point = (place: number, speed: number) => ({ place, speed });
    const messagesOf = (points: { place: number; speed: number }[]) =>
      parsed({ 'core.airVelocity': points }).issues.map(({ path, message }) => `${path}: ${message}`);
    expect(messagesOf([point(0.5, 1), point(0.2, 1)])[0]).toContain(
      'core.airVelocity.1.place: The places of the air velocity must rise: 0.2 comes after 0.5.',
    );
    expect(messagesOf([point(0, 0), point(1, 0)])[0]).toContain('no air would cross the core');
  });

  it('is even where none is typed', () => {
    expect(shippedConfig('rolling-road-estate').core.layout.airVelocity).toBeUndefined();
  });
});

describe('two passes', () => {
  it('share an even number of cells along the air', () => {
    const { scenario, issues } = parsed({ 'core.passes': 2, 'core.cellsAlongAir': 5 });
    expect(scenario).toBeUndefined();
    expect(issues[0]).toMatchObject({ path: 'core.cellsAlongAir', fix: { value: 6 } });
  });
});
