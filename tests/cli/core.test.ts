import { describe, expect, it } from 'vitest';
import { runCommandLine } from '../../src/cli/command-line.ts';
import { carFile } from '../support/car-file.ts';
import { listen } from '../support/said.ts';
import { shippedDocument } from '../support/shipped.ts';

const ESTATE = new URL('../../scenarios/rolling-road-estate.json', import.meta.url).pathname;
const BY_MEASURES = ['core', ESTATE, '--variant', 'core by its measures, 120 mm deep'];

const said = listen();

describe('soakbench core', () => {
  it('prints sizes, both sides, three coolant drops, marks and what one row more does', async () => {
    expect(await runCommandLine(BY_MEASURES)).toBe(0);
    for (const words of ['free area over face', 'fin efficiency', 'slowing down', 'ports', 'headers', 'tubes'])
      expect(said.out).toContain(words);
    expect(said.out).toMatch(/Mark: .*extrapolated in depth/);
    expect(said.out).toMatch(/Wider by 1\.09 .* air conductance x1\.0\d+ \(1\.09\^\(1 - n\), n = 0\.\d+ gives x1\.0/);
    expect(said.out).toMatch(/Deeper by 1\.09 .* core pressure drop x1\.08\d/);
    expect(said.out.match(/Common practice, no published source/g)).toHaveLength(2);
    expect(said.out).not.toMatch(/undefined|NaN|Infinity/);
  });

  it('adds the map and the optimum of each goal', async () => {
    expect(await runCommandLine([...BY_MEASURES, '--map'])).toBe(0);
    expect(said.out).toContain('too open to cool');
    expect(said.out).toContain('too dense to breathe');
    for (const goal of ['lowest charge', 'most air mass', 'least drive power'])
      expect(said.out).toContain(`For ${goal}: `);
    expect(said.out).not.toMatch(/undefined|NaN|Infinity/);
  });

  it('gives the same as data', async () => {
    expect(await runCommandLine([...BY_MEASURES, '--map', '--json'])).toBe(0);
    const { design, changes, map } = JSON.parse(said.out);
    expect(design.geometry.shape.depth).toBeCloseTo(0.12, 12);
    expect(changes.map(({ measure }: { measure: string }) => measure)).toEqual(['width', 'depth']);
    expect(map.optima).toHaveLength(3);
    expect(said.out).not.toContain('null');
  });

  it('says so where the core is given by test points, and where the variant is unknown', async () => {
    expect(await runCommandLine(['core', ESTATE])).toBe(5);
    expect(said.err).toContain('the core of this file is given by test points');
    expect(await runCommandLine(['core', ESTATE, '--variant', 'core by its measure'])).toBe(3);
    expect(said.err).toContain('There is no variant');
  });

  it('has nothing to work out where the coolant stands still in the pull, of which a run tells no conduction', async () => {
    const car = shippedDocument('rolling-road-estate');
    const still = {
      name: 'still',
      basedOn: 'core by its measures, 120 mm deep',
      changes: { 'cycle.1.phases.0.pump': 'off', 'cycle.1.repeat': 1 },
    };
    const path = carFile({ ...car, variants: [...(car.variants as object[]), still] });
    expect(await runCommandLine(['core', path, '--variant', 'still'])).toBe(5);
    expect(said.err).toContain('does not come to its end with coolant flowing');
    expect(await runCommandLine(['run', path, '--variant', 'still'])).toBe(0);
    expect(said.out).toContain('The pump is off in pull (12 s)');
    expect(said.out).not.toMatch(/Infinity|Metal conduction/);
  });

  it('lists the measures among the keys', async () => {
    expect(await runCommandLine(['keys', 'measures'])).toBe(0);
    expect(said.out).toMatch(/finPitch +mm\/fin +required/);
  });
});
