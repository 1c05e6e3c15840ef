import { describe, expect, it } from 'vitest';
import { type JsonObject, parameterGroups, parseScenario, type Scenario } from '../../../src/sim/index.ts';
import { fieldGroups, groupAt, readAt } from '../../../src/viewer/document/field-groups.ts';
import { OTHER_GROUPS, PARTS, partOf } from '../../../src/viewer/document/parts.ts';
import { DEMO_SCENARIOS } from '../../../src/viewer/files/demo-scenarios.ts';

const estate = parseScenario(DEMO_SCENARIOS[0].text).scenario as Scenario;
const document: JsonObject = {
  ...estate.document,
  pump: {
    curve: [
      { flow: 0, pressure: '4 psi' },
      { flow: 20, pressure: 0 },
    ],
    electricalPower: 50,
  },
  chargeTable: [{ chargeTemperature: 45, spark: -2 }],
  heatSink: {
    curve: [
      { coolant: 5, heat: 0 },
      { coolant: 40, heat: 2000 },
    ],
  },
  core: {
    ...(estate.document.core as JsonObject),
    airVelocity: [
      { place: 0, speed: 1 },
      { place: 1, speed: 2 },
    ],
  },
};
const paths = fieldGroups(document).flatMap(({ fields }) => fields.map(({ path }) => path));

describe('the boxes of the form', () => {
  it('are there for every row of the parameter table', () => {
    const shown = new Set(fieldGroups(document).flatMap(({ fields }) => fields.map(({ row }) => row)));
    const missing = parameterGroups().flatMap(({ title, rows }) =>
      rows.filter(({ row }) => !shown.has(row)).map(({ key }) => `${title}: ${key}`),
    );
    expect(missing).toEqual([]);
  });

  it('are all in one of the nine parts, but for limit, name, notes, variants and upgrades', () => {
    const elsewhere = paths.filter((path) => partOf(path) === undefined).map((path) => path.split('.')[0]);
    const known = [...OTHER_GROUPS, '$schema', 'name', 'notes'];
    expect(elsewhere.filter((group) => !known.includes(group))).toEqual([]);
    expect(PARTS).toHaveLength(9);
  });

  it('that stand out in a part are in the table', () => {
    for (const { main } of PARTS) {
      const inTable = fieldGroups(estate.document).flatMap(({ fields }) => fields.map(({ path }) => path));
      expect(main.filter((path) => !inTable.includes(path))).toEqual([]);
    }
  });

  it('stand where the document has its objects: one segment without brackets, phases in and out of the block', () => {
    expect(paths).toContain('lines.afterPump.length');
    expect(paths).toContain('pump.curve.1.flow');
    expect(paths).toContain('chargeTable.0.spark');
    expect(paths).toContain('cycle.0.duration');
    expect(paths).toContain('cycle.1.repeat');
    expect(paths).toContain('cycle.1.phases.1.engineSpeed');
    expect(paths).not.toContain('cycle.1.duration');
    expect(paths).not.toContain('cycle.0.repeat');
    expect(new Set(paths).size).toBe(paths.length);
  });

  it('of a list of segments carry its index', () => {
    const listed = { ...document, lines: { afterPump: [{ length: 1 }, { length: 2 }] } };
    expect(groupAt(listed, 'lines.afterPump.1')?.fields.map(({ path }) => path)).toContain('lines.afterPump.1.length');
  });
});

describe('what a scenario reads at a path', () => {
  it.each([
    ['core.airConductance', 390],
    ['engine.referenceTemperature', 56.85],
    ['core.cellsAlongAir', 48],
    ['lines.afterPump.length', 1.4],
    ['lines.afterPump.bore', undefined],
    ['cycle.0.duration', 300],
    ['cycle.1.phases.0.engineSpeed.1', 6600],
    ['cycle.1.phases.1.engineSpeed', [1200, 1200]],
    ['bypass.throttle', 'upstream'],
    ['pump.curve.0.flow', undefined],
  ])('%s: %j', (path, value) => {
    const read = readAt(estate, path);
    if (typeof value === 'number') expect(read).toBeCloseTo(value, 9);
    else expect(read).toEqual(value);
  });
});
