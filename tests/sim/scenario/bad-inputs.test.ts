import { describe, expect, it } from 'vitest';
import type { Issue } from '../../../src/sim/scenario/issue.ts';
import { parseScenario } from '../../../src/sim/scenario/parse.ts';
import { stepsOf, withValue } from '../../../src/sim/scenario/place.ts';
import { type Edits, ESTATE, estateWith, issuesWith } from './estate.ts';

interface BadInput {
  readonly what: string;
  readonly edits: Edits;
  readonly severity: Issue['severity'];
  readonly path: string;
  readonly message: string;
  readonly fix?: unknown;
}

const byCurve = (curve: unknown): Edits => ({
  'pump.shutOffPressure': undefined,
  'pump.freeFlow': undefined,
  'pump.curve': curve,
});
const PULL = 'cycle.1.phases.0';

// What shops type, and what a good tool says to it: the input errors that the trade knows.
const BAD_INPUTS: readonly BadInput[] = [
  {
    what: 'pump pressure that rises with flow',
    edits: byCurve([
      { flow: 0, pressure: 70 },
      { flow: 30, pressure: 55 },
      { flow: 40, pressure: '0.6 bar' },
    ]),
    severity: 'error',
    path: 'pump.curve.2',
    message: 'Pressure must fall as flow rises. Row 3 (40 L/min, 60 kPa) is not below row 2 (30 L/min, 55 kPa).',
  },
  {
    what: 'two equal points of the pump',
    edits: byCurve([
      { flow: 0, pressure: 70 },
      { flow: 0, pressure: 70 },
    ]),
    severity: 'error',
    path: 'pump.curve.1',
    message: 'Flow must rise from row to row. Row 2 (0 L/min, 70 kPa) is not beyond row 1 (0 L/min, 70 kPa).',
  },
  {
    what: 'a free flow alone',
    edits: { 'pump.shutOffPressure': undefined },
    severity: 'error',
    path: 'pump.shutOffPressure',
    message:
      'Shut-off pressure of the pump is missing. The free flow on a label is a flow without resistance: alone it does not tell the flow in the loop.',
  },
  {
    what: 'no pump data at all',
    edits: { 'pump.shutOffPressure': undefined, 'pump.freeFlow': undefined },
    severity: 'error',
    path: 'pump',
    message: 'Give shutOffPressure and freeFlow, or curve with two or more points',
  },
  {
    what: 'pump given twice',
    edits: {
      'pump.curve': [
        { flow: 0, pressure: 70 },
        { flow: 30, pressure: 55 },
      ],
    },
    severity: 'error',
    path: 'pump.curve',
    message: 'The pump is given twice',
  },
  {
    what: 'a fitting size for a bore',
    edits: { 'lines.bore': 'AN-12' },
    severity: 'error',
    path: 'lines.bore',
    message: 'That is a fitting size. Dash 12 is about 17 to 19 mm inside. Enter the bore you can measure.',
    fix: 17,
  },
  {
    what: 'inches in a box for millimetres',
    edits: { 'lines.bore': 0.75 },
    severity: 'error',
    path: 'lines.bore',
    message: 'Line bore is 0.75 mm; expected 4 to 80 mm. Did you mean 0.75 in (19.05 mm)?',
    fix: '0.75 in',
  },
  {
    what: 'no coolant in the core',
    edits: { 'core.coolantVolume': 0 },
    severity: 'error',
    path: 'core.coolantVolume',
    message: 'No coolant there: nothing to carry the heat.',
  },
  {
    what: 'coolant left empty',
    edits: { 'reservoir.coolantVolume': undefined },
    severity: 'error',
    path: 'reservoir.coolantVolume',
    message: 'No coolant there: nothing to carry the heat.',
  },
  {
    what: 'no coolant at all',
    edits: { coolant: undefined },
    severity: 'error',
    path: 'coolant',
    message: 'No coolant in the loop: nothing to carry the heat.',
  },
  {
    what: 'glycol above all of it',
    edits: { 'coolant.glycolByVolume': 120 },
    severity: 'error',
    path: 'coolant.glycolByVolume',
    message:
      'Glycol by volume is 120 %; expected 0 to 57.3 %. The published fit for ethylene glycol ends at 60 % by mass. 50 % by mass is about 47.2 % by volume.',
  },
  {
    what: 'glycol by mass',
    edits: { 'coolant.glycolByVolume': '50 % by mass' },
    severity: 'error',
    path: 'coolant.glycolByVolume',
    message: '50 % by mass is about 47.2 % by volume.',
    fix: 47.2,
  },
  {
    what: 'glycol that can only be by mass',
    edits: { 'coolant.glycolByVolume': 60 },
    severity: 'error',
    path: 'coolant.glycolByVolume',
    message: '60 % by mass is about 57.3 % by volume.',
    fix: 57.3,
  },
  {
    what: 'glycol as a share',
    edits: { 'coolant.glycolByVolume': 0.4 },
    severity: 'warning',
    path: 'coolant.glycolByVolume',
    message: '0.4 % is next to nothing. Did you mean 40 %?',
    fix: 40,
  },
  {
    what: 'properties of the coolant taken where it is ice',
    edits: { 'coolant.glycolByVolume': 26, 'coolant.propertiesAt': -31 },
    severity: 'error',
    path: 'coolant.propertiesAt',
    message:
      'Density and heat capacity are taken at -31 degC, where this mix is no liquid: its first ice forms at -13.',
  },
  {
    what: 'water on a freezing day',
    edits: { 'coolant.glycolByVolume': 0, 'ambient.temperature': -8 },
    severity: 'error',
    path: 'coolant.glycolByVolume',
    message:
      'Water freezes at 0 degC and the air outside is -8 degC. Pump, core and front exchanger can split. With 5 K to spare it takes 30 % ethylene glycol',
    fix: 30,
  },
  {
    what: 'coolant that starts frozen',
    edits: { 'start.coolant': -30 },
    severity: 'error',
    path: 'coolant.glycolByVolume',
    message: 'A mix of 40 % ethylene glycol freezes at -26.75 degC and the coolant starts at -30 degC.',
    fix: 50,
  },
  {
    what: 'degrees Fahrenheit in a box for Celsius',
    edits: { 'ambient.temperature': 95 },
    severity: 'warning',
    path: 'ambient.temperature',
    message: 'Did you mean 95 degF (35 degC)?',
    fix: '95 degF',
  },
  {
    what: 'core drop without its flow',
    edits: { 'core.airDropAtFlow': undefined },
    severity: 'error',
    path: 'core.airDropAtFlow',
    message: 'A drop means nothing without its air flow',
  },
  {
    what: 'intake drop without its flow',
    edits: { 'intake.drop': 3 },
    severity: 'error',
    path: 'intake.dropAtFlow',
    message: 'A drop means nothing without its air flow.',
  },
  {
    what: 'an efficiency beyond any compressor',
    edits: { 'compressor.quotedEfficiency': 0.9 },
    severity: 'warning',
    path: 'compressor.quotedEfficiency',
    message:
      'Quoted efficiency is 0.9 (90 %): unusually high, usually 0.4 to 0.82. Automotive compressors reach 0.50 to 0.78.',
  },
  {
    what: 'an efficiency in per cent',
    edits: { 'compressor.quotedEfficiency': 60 },
    severity: 'warning',
    path: 'compressor.quotedEfficiency',
    message: 'Quoted efficiency 60 read as 60 %: using 0.6.',
    fix: 0.6,
  },
  {
    what: 'a drive ratio upside down',
    edits: { 'compressor.driveRatio': 0.5, [`${PULL}.engineSpeed`]: [2500, 6500] },
    severity: 'warning',
    path: 'compressor.driveRatio',
    message: 'At 6500 rpm of the engine the compressor turns 3250 rpm. Did you mean a ratio of 2?',
    fix: 2,
  },
  {
    what: 'cubic centimetres for litres',
    edits: { 'compressor.sweptVolume': 900 },
    severity: 'warning',
    path: 'compressor.sweptVolume',
    message: 'Swept volume 900 read as 900 cm3/rev: using 0.9 L/rev.',
    fix: 0.9,
  },
  {
    what: 'idle power above all losses',
    edits: { 'compressor.idlePower': 9 },
    severity: 'error',
    path: 'compressor.idlePower',
    message: 'leaves only 8.759 kW for all losses',
  },
  {
    what: 'a leak that lets all air back',
    edits: { 'compressor.leak': 4, 'compressor.quotedSpeed': 2000, 'compressor.quotedPressureRatio': 2 },
    severity: 'error',
    path: 'compressor.leak',
    message: 'lets all air back',
  },
  {
    what: 'a pull that ends below its start',
    edits: { [`${PULL}.engineSpeed`]: [6500, 3000] },
    severity: 'error',
    path: `${PULL}.engineSpeed`,
    message: 'The pull ends at 3000 rpm but starts at 6500 rpm.',
    fix: [3000, 6500],
  },
  {
    what: 'a phase of no length',
    edits: { 'cycle.0.duration': 0 },
    severity: 'error',
    path: 'cycle.0.duration',
    message: 'A phase of no length computes nothing.',
  },
  { what: 'an empty cycle', edits: { cycle: [] }, severity: 'error', path: 'cycle', message: 'a list of at least 1' },
  {
    what: 'a cycle of twelve hours',
    edits: { 'cycle.0.duration': '12 h', numerics: { longestStep: 2 } },
    severity: 'warning',
    path: 'cycle',
    // 12 h + 8 (12 + 90) s = 44016 s
    message: 'The cycle lasts 12.23 h: at steps of up to 2 s that is 22008 points or more.',
  },
  {
    what: 'steps of a millisecond',
    edits: { numerics: { longestStep: 0.001 } },
    severity: 'warning',
    path: 'numerics.longestStep',
    // 300 s + 8 x 90 s = 1020 s
    message: 'Longest step elsewhere is 0.001 s: over 17 min that is 1020000 points or more.',
    fix: 10,
  },
  {
    what: 'no pull to judge',
    edits: { [`${PULL}.kind`]: 'cruise', [`${PULL}.manifoldPressure`]: 60 },
    severity: 'warning',
    path: 'cycle',
    message: 'The cycle has no pull',
  },
  {
    what: 'no air through the exchanger during pulls',
    edits: { [`${PULL}.exchangerAirSpeed`]: 0 },
    severity: 'warning',
    path: `${PULL}.exchangerAirSpeed`,
    // 8 pulls of 12 s
    message: 'No air through the front exchanger during pulls, 96 s in all. Fan off?',
  },
  {
    what: 'no air through the exchanger for long',
    edits: { 'cycle.1.phases.1.exchangerAirSpeed': 0 },
    severity: 'warning',
    path: 'cycle.1.phases.1.exchangerAirSpeed',
    // 8 rests of 90 s
    message: 'No air through the front exchanger with the engine running, 12 min in all. Fan off?',
  },
  {
    what: 'a limit below the day',
    edits: { 'limit.chargeTemperature': 30, 'ambient.temperature': 36 },
    severity: 'warning',
    path: 'limit.chargeTemperature',
    message:
      'Outside air at 36 degC is above the limit of 30 degC: no passive system can meet it, only ice or a chiller.',
  },
  {
    what: 'a sensor without lag',
    edits: { 'sensor.timeConstantMoving': 0 },
    severity: 'error',
    path: 'sensor.timeConstantMoving',
    message: 'Typical are 2 to 5 s in moving air.',
    fix: 3,
  },
  {
    what: 'a sensor of five minutes',
    edits: { 'sensor.timeConstantStill': 300 },
    severity: 'warning',
    path: 'sensor.timeConstantStill',
    message: 'Typical are 8 to 15 s in still air.',
  },
  {
    what: 'a sensor quicker in still air',
    edits: { 'sensor.timeConstantStill': 2 },
    severity: 'error',
    path: 'sensor.timeConstantStill',
    message: '2 s still is below 3 s moving. Exchanged?',
  },
  {
    what: 'boost at part load',
    edits: { 'cycle.0.manifoldPressure': 105 },
    severity: 'error',
    path: 'cycle.0.manifoldPressure',
    message:
      'Manifold pressure 105 kPa abs is above the station pressure 99.5 kPa: with the bypass open there is no boost.',
  },
  {
    what: 'psi in a box for kPa',
    edits: { 'cycle.0.manifoldPressure': 5.5 },
    severity: 'error',
    path: 'cycle.0.manifoldPressure',
    message: 'Did you mean 5.5 psi abs (37.92 kPa abs)?',
    fix: '5.5 psi abs',
  },
  {
    what: 'a manifold pressure in a pull',
    edits: { [`${PULL}.manifoldPressure`]: 100 },
    severity: 'warning',
    path: `${PULL}.manifoldPressure`,
    message: 'A manifold pressure is not used in a pull: it follows from compressor and engine.',
  },
  {
    what: 'part load without manifold pressure',
    edits: { 'cycle.0.manifoldPressure': undefined },
    severity: 'error',
    path: 'cycle.0.manifoldPressure',
    message: 'Manifold pressure is missing.',
  },
  {
    what: 'a soak that leaves the pump open',
    edits: { 'cycle.0': { kind: 'hot soak', duration: 1200 } },
    severity: 'error',
    path: 'cycle.0.pump',
    message: 'A hot soak must say whether the pump runs on',
    fix: 'off',
  },
  {
    what: 'an engine that turns in a soak',
    edits: { 'cycle.0': { kind: 'hot soak', duration: 1200, pump: 'off', engineSpeed: 800 } },
    severity: 'error',
    path: 'cycle.0.engineSpeed',
    message: 'The engine is off in a hot soak, but turns 800 rpm.',
    fix: 0,
  },
  {
    what: 'an engine that stands in a pull',
    edits: { [`${PULL}.engineSpeed`]: 0 },
    severity: 'error',
    path: `${PULL}.engineSpeed`,
    message: 'A phase of kind "pull" needs the engine running. With the engine off it is a "hot soak".',
  },
  {
    what: 'a pump off at rated voltage',
    edits: { 'cycle.0.pump': 'off', 'cycle.0.pumpVoltageRatio': 1 },
    severity: 'error',
    path: 'cycle.0.pumpVoltageRatio',
    message: 'The pump is off and its voltage ratio 1. Keep one of the two keys.',
  },
  {
    what: 'two repetitions',
    edits: { 'cycle.0': { repeat: 2, phases: [{ kind: 'hot soak', duration: 10, pump: 'off' }] } },
    severity: 'error',
    path: 'cycle.1',
    message: 'A cycle can hold one repetition.',
  },
  {
    what: 'a file of a later version',
    edits: { version: 3 },
    severity: 'error',
    path: 'version',
    message: 'This file is of format version 3; this program reads versions 1 and 2',
  },
  {
    what: 'no version',
    edits: { version: undefined },
    severity: 'error',
    path: 'version',
    message: 'Version is missing; expected 2.',
    fix: 2,
  },
  {
    what: 'a file of something else',
    edits: { format: 'shopping-list' },
    severity: 'error',
    path: 'format',
    message: 'This is not a scenario file: its format is "shopping-list"',
  },
  {
    what: 'a number that can be read two ways',
    edits: { 'core.airConductance': '1,234.5' },
    severity: 'error',
    path: 'core.airConductance',
    message: 'It can be read as 1234.5 or as 12345.',
  },
  {
    what: 'a unit of something else',
    edits: { 'pump.freeFlow': '14 psi' },
    severity: 'error',
    path: 'pump.freeFlow',
    message: '"psi" is not a unit for it; expected L/min, gpm, L/h, imp gpm, m3/h or m3/s.',
  },
  {
    what: 'a slip of the key',
    edits: { 'core.airConductance': '58,5o' },
    severity: 'error',
    path: 'core.airConductance',
    message: 'Core air conductance is "58,5o". "o" is not a unit for it; expected W/K or kW/K.',
  },
  {
    what: 'a misspelt key',
    edits: { 'core.airConductnace': 390 },
    severity: 'error',
    path: 'core.airConductnace',
    message: '"airConductnace" is not a key of core. Did you mean "airConductance"?',
  },
  {
    what: 'a key with its unit',
    edits: { 'core.airConductance_W_K': 390 },
    severity: 'error',
    path: 'core.airConductance_W_K',
    message: 'Did you mean "airConductance"?',
  },
  {
    what: 'a key with more words',
    edits: { 'cycle.0.engineSpeedRevolutionsPerMinute': 800 },
    severity: 'error',
    path: 'cycle.0.engineSpeedRevolutionsPerMinute',
    message: 'Did you mean "engineSpeed"?',
  },
  {
    what: 'a key of another group',
    edits: { 'core.faceArea': 0.1 },
    severity: 'error',
    path: 'core.faceArea',
    message: 'That key belongs in "exchanger".',
  },
  {
    what: 'a misspelt word',
    edits: { 'cycle.0.kind': 'cruse' },
    severity: 'error',
    path: 'cycle.0.kind',
    message: 'Did you mean "cruise"?',
    fix: 'cruise',
  },
];

describe('a bad input is named, judged and, where it can be, mended', () => {
  it('the file that they all start from has no issue', () => {
    expect(parseScenario(ESTATE).issues).toEqual([]);
  });

  it.each(BAD_INPUTS)('$what', ({ edits, severity, path, message, fix }) => {
    const issues = issuesWith(edits);
    const issue = issues.find((each) => each.path === path && each.message.includes(message));
    expect(issue, JSON.stringify(issues, undefined, 1)).toBeDefined();
    expect(issue?.severity).toBe(severity);
    if (fix !== undefined) expect(issue?.fix).toMatchObject({ path, value: fix });

    const { scenario } = parseScenario(estateWith(edits));
    expect(scenario === undefined).toBe(issues.some((each) => each.severity === 'error'));

    if (issue?.fix === undefined) return;
    const mended = withValue(JSON.parse(estateWith(edits)), stepsOf(issue.fix.path), issue.fix.value);
    expect(parseScenario(JSON.stringify(mended)).issues.filter((each) => each.path === path)).toEqual([]);
  });
});

describe('what is not modelled is refused by name', () => {
  it.each([
    [{ 'compressor.kind': 'twin-charged' }, 'Compressor kind "twin-charged" is not modelled yet'],
    [{ exchanger: [{}, {}] }, 'A second one is the group secondExchanger.'],
    [{ 'intake.waterInjection': 1 }, 'is not modelled yet: "waterInjection" cannot be used'],
    [{ twinCompressor: {} }, 'More than one compressor is not modelled yet: "twinCompressor" cannot be used.'],
    [{ boosting: 'twin-charged' }, 'More than one compressor is not modelled yet: "boosting" cannot be used.'],
  ])('%j', (edits, message) => {
    const issues = issuesWith(edits);
    expect(issues.map((issue) => issue.message).join('\n')).toContain(message);
    expect(parseScenario(estateWith(edits)).scenario).toBeUndefined();
  });
});

describe('a slip in the key of a second part is answered with the key', () => {
  it.each([
    [{ secondExchangr: {} }, 'Did you mean "secondExchanger"?'],
    [{ secondPumps: {} }, 'Did you mean "secondPump"?'],
    [{ pumps: {} }, 'Did you mean "pump"?'],
    [{ parallel: true }, '"parallel" is not a key of a scenario file. The keys here are'],
    [{ nmae: 'twin-charged estate' }, 'Did you mean "name"?'],
  ])('%j', (edits, message) => {
    const messages = issuesWith(edits).map((issue) => issue.message);
    expect(messages.join('\n')).toContain(message);
    expect(messages.join('\n')).not.toContain('not modelled');
  });
});

describe('one fault makes one issue', () => {
  it.each([
    { [`${PULL}.manifoldPressure`]: 150 },
    { [`${PULL}.engineSpeed`]: ['fast', 0] },
    { [`${PULL}.duration`]: -1, [`${PULL}.exchangerAirSpeed`]: 0 },
    { 'cycle.0.kind': 'lap' },
    { [`${PULL}.kind`]: 'lap' },
    { 'core.cellsAlongAir': 12.5 },
    { 'sensor.timeConstantStill': -1 },
    { 'start.coolant': 'cold' },
    { engine: undefined },
    { 'lines.bore': [16.5, 19] },
    byCurve([
      { flow: 0, pressure: 70 },
      { flow: 'x', pressure: 75 },
      { flow: 40, pressure: 60 },
    ]),
  ])('%j', (edits) => {
    const messages = issuesWith(edits).map(({ message }) => message);
    expect(messages).toHaveLength(1);
    expect(messages[0]).not.toMatch(/NaN|Did you mean/);
  });
});

it('a drop of nothing needs no flow', () => {
  expect(issuesWith({ 'intake.drop': 0 })).toEqual([]);
});

it('all issues come at once', () => {
  const issues = issuesWith({
    'lines.bore': 'AN-12',
    'core.airDropAtFlow': undefined,
    'cycle.1.phases.0.engineSpeed': [6500, 3000],
    'ambient.temperature': 95,
    'pump.nonsense': 1,
  });
  expect(issues.map(({ path }) => path).sort()).toEqual([
    'ambient.temperature',
    'core.airDropAtFlow',
    'cycle.1.phases.0.engineSpeed',
    'limit.chargeTemperature',
    'lines.bore',
    'pump.nonsense',
  ]);
});

it('a number beyond all numbers is out of range', () => {
  const { scenario, issues } = parseScenario(ESTATE.replace('"pressure": 99.5', '"pressure": 1e999'));
  expect(scenario).toBeUndefined();
  expect(issues[0]).toMatchObject({ path: 'ambient.pressure', expected: '40 to 120 kPa abs' });
});
