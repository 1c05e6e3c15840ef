import fc from 'fast-check';
import { expect, it } from 'vitest';
import { coreGeometry } from '../../../src/sim/correlations/core-geometry.ts';
import { CORE_GEOMETRY } from '../../../src/sim/scenario/parameters/core-geometry.ts';
import { parseScenario } from '../../../src/sim/scenario/parse.ts';
import { isNumberRow, isWordRow, type Parameter } from '../../../src/sim/scenario/table.ts';
import { toConfig } from '../../../src/sim/scenario/to-config.ts';
import { estateWith } from './estate.ts';
import { MEASURES } from './geometry.ts';

/** Any value that the table allows, its ends among them. */
function allowed(row: Parameter): fc.Arbitrary<string | number> {
  if (isWordRow(row)) return fc.constantFrom(...row.choices);
  if (!isNumberRow(row)) return fc.constant('');
  if (row.whole) return fc.oneof(fc.integer({ min: row.min, max: row.max }), fc.constantFrom(row.min, row.max));
  const { min, max, usual = [min, max] } = row;
  return fc.oneof(
    fc.double({ min: usual[0], max: usual[1], noNaN: true }),
    fc.double({ min, max, noNaN: true }),
    fc.constantFrom(min, max),
  );
}

/** Hydraulic diameters; in shorter passages the line between laminar and turbulent friction falls too steeply. */
const LONG = 15;

const entries = Object.entries(CORE_GEOMETRY.coreGeometry);
const measures = fc.record(Object.fromEntries(entries.map(([key, row]) => [key, allowed(row)])));

/** Keys of other kinds of fins and tubes taken out, and parts made to fit one another, so that most cores can be. */
function fitted(typed: Readonly<Record<string, string | number>>): Record<string, string | number> {
  const core = { ...typed };
  const drop = (...keys: string[]): void => {
    for (const key of keys) delete core[key];
  };
  if (core.fins !== 'louvred') drop('louvrePitch', 'louvreLength', 'louvreAngle');
  if (core.fins !== 'offset strip') drop('stripLength');
  if (core.tubes !== 'multi-port') drop('ports', 'webThickness');
  if (core.tubes !== 'turbulated')
    drop('turbulatorHeat', 'turbulatorFriction', 'turbulatorExponent', 'turbulatorAtReynolds');
  const at = (key: string): number => Number(core[key]);
  const limit = (key: string, most: number): void => {
    if (core[key] !== undefined) core[key] = Math.min(at(key), most);
  };
  limit('finThickness', Math.min(0.3 * at('finPitch'), 0.2 * at('finHeight')));
  core.finThickness = Math.max(at('finThickness'), 0.02 * at('finPitch'));
  limit('louvreLength', 0.9 * at('finHeight'));
  limit('louvrePitch', at('depth') / 3);
  limit('stripLength', at('depth') / 3);
  core.rows = 1;
  limit('tubeWall', Math.min(at('tubeHeight'), at('depth')) / 4);
  limit('webThickness', 1);
  limit('ports', Math.max(1, Math.floor(at('depth') / 4)));
  limit('coolantLayers', Math.max(1, Math.floor(400 / (at('tubeHeight') + at('finHeight')))));
  limit('sheets', at('coolantLayers'));
  const layers = at('coolantLayers');
  core.height = layers * Number(core.tubeHeight) + (layers + 1) * Number(core.finHeight);
  return core;
}

function expectFinite(value: unknown, text: string): void {
  if (typeof value === 'object' && value !== null) for (const inner of Object.values(value)) expectFinite(inner, text);
  else if (typeof value === 'number') expect(Number.isFinite(value), text).toBe(true);
}

function expectAscending(values: readonly number[], text: string): void {
  for (let k = 1; k < values.length; k++) expect(values[k], text).toBeGreaterThan(values[k - 1]);
}

it('any measures end in a core with finite laws or in an error about the core', () => {
  const ends = { core: 0, error: 0 };
  fc.assert(
    fc.property(measures, fc.boolean(), (typed, isFitted) => {
      const text = estateWith({ core: {}, coreGeometry: isFitted ? fitted(typed) : typed });
      const { scenario, issues } = parseScenario(text);
      for (const { path, message } of issues) {
        expect(path).toMatch(/^core(Geometry)?\./);
        expect(message).not.toMatch(/NaN|undefined|Infinity/);
      }
      if (scenario === undefined) {
        ends.error++;
        return;
      }
      ends.core++;
      const { core } = toConfig(scenario);
      expectFinite(core, text);
      if (core.airDrop.kind !== 'table' || core.coolantDrop.kind !== 'table') throw new Error('no tables');
      // More flow takes more pressure, on either side, in passages long enough, and no layer runs backwards.
      if (core.geometry === undefined) throw new Error('no geometry');
      const { shape, air, coolant } = coreGeometry(core.geometry.shape);
      // A louvred fin far outside its data, at 60 degrees say, is marked and may do anything.
      const isFar = core.marks.some((mark) => /Air side.*(pitch|angle|height|length|thickness)/.test(mark));
      if (shape.depth > LONG * air.hydraulicDiameter && !isFar) expectAscending(core.airDrop.dropTimesDensity, text);
      if (shape.length > LONG * coolant.hydraulicDiameter) expectAscending(core.coolantDrop.drop, text);
      for (const { flow } of core.layout.sheets) expect(flow, text).toBeGreaterThan(0);
    }),
    { numRuns: 250 },
  );
  expect(Math.min(ends.core, ends.error)).toBeGreaterThan(40);
});

it('any one measure of a good core may be anything, and nothing throws', () => {
  const strange = fc.oneof(fc.double(), fc.string({ maxLength: 6 }), fc.jsonValue({ maxDepth: 1 }));
  fc.assert(
    fc.property(fc.constantFrom(...entries.map(([key]) => key)), strange, (key, value) => {
      const { scenario } = parseScenario(estateWith({ core: {}, coreGeometry: { ...MEASURES, [key]: value } }));
      if (scenario !== undefined) expectFinite(toConfig(scenario).core, key);
    }),
    { numRuns: 500 },
  );
});
