import { Ajv2020 } from 'ajv/dist/2020.js';
import { describe, expect, it } from 'vitest';
import { parseScenario } from '../../../src/sim/scenario/parse.ts';
import { scenarioSchema } from '../../../src/sim/scenario/schema.ts';
import { type Edits, estateWith, issuesWith } from './estate.ts';
import { withMeasures } from './geometry.ts';

const POINT = {
  measuredHeat: 18,
  measuredAirFlow: 0.25,
  measuredAirInlet: 120,
  measuredCoolantFlow: 20,
  measuredCoolantInlet: 35,
};

const measures = (changes: Readonly<Record<string, unknown>>) => withMeasures(changes);
const beside = (core: Readonly<Record<string, unknown>>) => withMeasures({}, core);

describe('a core by its measures that cannot be is named', () => {
  it.each<[string, Edits, string, string]>([
    [
      'louvred fins without louvres',
      measures({ louvreAngle: undefined }),
      'coreGeometry.louvreAngle',
      'Louvre angle is missing. Expected 2 to 60 deg',
    ],
    [
      'louvres of plain fins',
      measures({ fins: 'plain' }),
      'coreGeometry.louvrePitch',
      'Louvre pitch says nothing about plain fins. Leave it out, or set fins to "louvred".',
    ],
    [
      'strips without length',
      measures({ fins: 'offset strip' }),
      'coreGeometry.stripLength',
      'Strip length is missing.',
    ],
    [
      'ports of turbulated tubes',
      measures({ ports: 4 }),
      'coreGeometry.ports',
      'Ports of a tube says nothing about turbulated tubes.',
    ],
    [
      'turbulators of plain tubes',
      measures({ tubes: 'plain', turbulatorHeat: 3 }),
      'coreGeometry.turbulatorHeat',
      'says nothing about plain tubes',
    ],
    [
      'a pitch typed as a bare count',
      measures({ finPitch: 14 }),
      'coreGeometry.finPitch',
      'Fin pitch is 14 mm/fin; expected 0.4 to 12 mm/fin. Did you mean 14 fpi (1.814 mm/fin)?',
    ],
    [
      'fins thicker than their pitch',
      measures({ finPitch: '0.5 mm', finThickness: 0.6 }),
      'coreGeometry.finThickness',
      'Fin thickness is 0.6 mm; expected below 0.5 mm: the air needs room between two fins',
    ],
    [
      'a sheet as thick as half the fin',
      measures({ finHeight: 1, finThickness: 0.5, height: 65 }),
      'coreGeometry.finThickness',
      'expected below 0.5 mm: a fin is higher than its sheet is thick',
    ],
    [
      'a louvred fin too thin for its friction',
      measures({ finPitch: '6 mm', finThickness: 0.05 }),
      'coreGeometry.finThickness',
      'expected above 0.0606 mm at this pitch',
    ],
    [
      'a louvre longer than the fin is high',
      measures({ louvreLength: 9 }),
      'coreGeometry.louvreLength',
      'Louvre length is 9 mm; expected below 8 mm: a louvre is cut inside the height of the fin.',
    ],
    [
      'louvres further apart than the core is deep',
      measures({ depth: 6, louvrePitch: 7 }),
      'coreGeometry.louvrePitch',
      'louvres stand one behind the other in the depth of the core',
    ],
    [
      'a strip longer than the core is deep',
      measures({ fins: 'offset strip', stripLength: 90 }),
      'coreGeometry.stripLength',
      'strips stand one behind the other',
    ],
    [
      'walls that fill the tube',
      measures({ tubeWall: 1.5 }),
      'coreGeometry.tubeWall',
      'Tube wall is 1.5 mm; expected below 1.5 mm: the tube needs room for coolant',
    ],
    [
      'rows that have no room',
      measures({ rows: 20, depth: 15, louvrePitch: 1 }),
      'coreGeometry.rows',
      'There is no room for 20 tubes along the air in a core 15 mm deep',
    ],
    [
      'ports that have no room',
      measures({ tubes: 'multi-port', ports: 190, webThickness: 0.5 }),
      'coreGeometry.ports',
      '190 ports have no room in a tube 79.2 mm wide inside',
    ],
    [
      'rows that passes cannot share',
      { ...withMeasures({ rows: 3 }, { passes: 2 }) },
      'coreGeometry.rows',
      '3 tubes along the air cannot be shared by 2 passes',
    ],
    [
      'one row for two passes',
      { ...withMeasures({ rows: 1 }, { passes: 2 }) },
      'coreGeometry.rows',
      '1 tube along the air cannot be shared by 2 passes',
    ],
    [
      'a stack that is not the height',
      measures({ coolantLayers: 10 }),
      'coreGeometry.height',
      'Core height is 180 mm, but 10 tubes of 3 mm and 11 fin layers of 8 mm are 118 mm.',
    ],
    [
      'headers too small to split the flow',
      measures({ headerVolume: 0.005, tubes: 'plain', tubeHeight: 8, coolantLayers: 11 }),
      'coreGeometry.headerVolume',
      'the coolant finds no steady split over 11 layers',
    ],
    ['an unknown alloy', measures({ alloy: '6061' }), 'coreGeometry.alloy', 'Did you mean "6061'],
    [
      'a fin pitch in an unknown unit',
      measures({ finPitch: '14 per foot' }),
      'coreGeometry.finPitch',
      '"per foot" is not a unit for it; expected mm/fin, fpi, in/fin or fins/cm',
    ],
    [
      'an exponent beside the curve',
      beside({ airConductanceExponent: 0.5 }),
      'core.airConductanceExponent',
      'Core air conductance exponent says nothing beside coreGeometry',
    ],
    [
      'a conductance without its flow',
      beside({ airConductance: 400 }),
      'core.airConductanceAtFlow',
      'A conductance means nothing without the flow',
    ],
    [
      'a flow without its conductance',
      beside({ coolantConductanceAtFlow: 0.3 }),
      'core.coolantConductance',
      'Core coolant conductance is missing',
    ],
    [
      'a bench drop without its flow',
      beside({ airDrop: 5 }),
      'core.airDropAtFlow',
      'A drop means nothing without its air flow',
    ],
    [
      'half a measured point',
      beside({ measuredHeat: 20 }),
      'core.measuredCoolantFlow',
      'Coolant flow of the measured heat is missing',
    ],
    [
      'two calibrations of one side',
      beside({ ...POINT, airConductance: 400, airConductanceAtFlow: 0.3 }),
      'core.measuredHeat',
      'The air side is calibrated twice',
    ],
    [
      'a measured point of a core of two passes',
      beside({ ...POINT, passes: 2 }),
      'core.measuredHeat',
      'A measured heat is worked out for coolant that crosses the air once, and this core has two passes.',
    ],
    [
      'a measured point upside down',
      beside({ ...POINT, measuredAirInlet: 30 }),
      'core.measuredAirInlet',
      'enters at 30 degC, not above its coolant at 35 degC',
    ],
    [
      'a heat that cannot pass',
      beside({ ...POINT, measuredHeat: 21.3 }),
      'core.measuredHeat',
      'Measured heat is 21.3 kW: with the coolant side as it is',
    ],
    [
      'a measured point of a core by test points',
      { 'core.measuredHeat': 20 },
      'core.measuredHeat',
      'calibrates a core by its measures, and the file has no coreGeometry',
    ],
    ['a measure in the wrong group', { 'core.finPitch': 1.8 }, 'core.finPitch', 'That key belongs in "coreGeometry".'],
    [
      'a missing measure',
      measures({ width: undefined }),
      'coreGeometry.width',
      'Core width is missing. Expected 20 to 2000 mm',
    ],
  ])('%s', (_, edits, path, message) => {
    const issues = issuesWith(edits);
    const issue = issues.find((each) => each.path === path && each.message.includes(message));
    expect(issue, JSON.stringify(issues, undefined, 1)).toBeDefined();
    expect(issue?.severity).toBe('error');
    expect(issue?.found).not.toBe('');
    expect(issue?.expected).not.toBe('');
    expect(parseScenario(estateWith(edits)).scenario).toBeUndefined();
  });

  it('groups of layers: no more than layers, and of one pass', () => {
    const messages = (edits: Edits) => issuesWith(edits).map(({ path, message }) => `${path}: ${message}`);
    expect(messages(withMeasures({ sheets: 3, coolantLayers: 2, height: 30 }))).toContainEqual(
      'coreGeometry.sheets: 3 groups are too many for 2 coolant layers.',
    );
    expect(messages(withMeasures({ sheets: 3, rows: 2 }, { passes: 2 })).join()).toContain('worked out for one pass');
    expect(messages(withMeasures({ sheets: 5 }))).toEqual([]);
  });

  it('and one that can be is not', () => {
    expect(issuesWith(withMeasures())).toEqual([]);
    expect(issuesWith(withMeasures({}, POINT))).toEqual([]);
    expect(issuesWith(withMeasures({ height: 186, rows: 2 }, { passes: 2 }))).toEqual([]);
    expect(issuesWith(withMeasures({ tubes: 'multi-port', ports: 12 }))).toEqual([]);
  });

  it('without coreGeometry the test points are required as ever', () => {
    const issues = issuesWith({ core: {} });
    expect(issues.map(({ path }) => path)).toContain('core.airConductance');
    expect(issues.map(({ path }) => path)).toContain('core.coolantDropFactor');
  });
});

describe('the schema', () => {
  const validate = new Ajv2020().compile(scenarioSchema());
  it.each<[string, Edits, boolean]>([
    ['takes a core by its measures', withMeasures(), true],
    ['asks for test points without them', { core: {} }, false],
    ['takes 59 % of propylene glycol', { coolant: { glycol: 'propylene', glycolByVolume: 59 } }, true],
    ['refuses 59 % of ethylene glycol', { coolant: { glycolByVolume: 59 } }, false],
    ['refuses an unknown measure', withMeasures({ madeUp: 1 }), false],
  ])('%s', (_, edits, isTaken) => {
    expect(validate(JSON.parse(estateWith(edits)))).toBe(isTaken);
    expect(issuesWith(edits).some(({ severity }) => severity === 'error')).toBe(!isTaken);
  });
});
