import { describe, expect, it } from 'vitest';
import type { JsonValue } from '../../../src/sim/scenario/issue.ts';
import { parseScenario } from '../../../src/sim/scenario/parse.ts';
import { toConfig } from '../../../src/sim/scenario/to-config.ts';
import { applyVariant } from '../../../src/sim/scenario/variants.ts';
import type { Edits } from '../../support/short-session.ts';
import { type BadInput, changed, judge, parsed } from './judge.ts';

/** Water at 15 degC: 999.10 kg/m3 and 4188.5 J/(kg K) (IAPWS-95), so 69.7455 W/K for each L/min. */
const WATER: Edits = { 'coolant.glycolByVolume': 0, 'coolant.propertiesAt': 15 };
const FOUR = ['airConductance', 'airConductanceAtFlow', 'coolantConductance', 'coolantConductanceAtFlow'];

/** A part by a test point alone. */
const byTest = (part: 'core' | 'exchanger', test: JsonValue, more: Edits = {}): Edits => ({
  ...Object.fromEntries(FOUR.map((key) => [`${part}.${key}`, undefined])),
  [`${part}.test`]: test,
  ...more,
});

function configOf(edits: Edits) {
  const { scenario, issues } = parsed(changed('rolling-road-estate', edits));
  if (scenario === undefined) throw new Error(JSON.stringify(issues));
  expect(issues).toEqual([]);
  return toConfig(scenario);
}

// J. L. Mason, 1955, evaluated apart from this code: both unmixed, NTU 2, C_min/C_max 0.5: 0.732409.
describe('conductances of a test point, both fluids unmixed', () => {
  // 0.3 kg/s of air are 301.8 W/K, 8.65432 L/min of water 603.6 W/K; UA = 2 x 301.8 W/K.
  const LITTLE_AIR = { airFlow: 0.3, coolantFlow: 8.65432 };
  // 0.6 kg/s of air are 603.6 W/K, half as much water 301.8 W/K; UA the same.
  const LITTLE_COOLANT = { airFlow: 0.6, coolantFlow: 4.32716 };

  it.each([
    ['an effectiveness, less air than coolant', { ...LITTLE_AIR, effectiveness: 0.732409 }],
    ['an effectiveness in per cent', { ...LITTLE_AIR, effectiveness: '73.2409 %' }],
    ['an effectiveness, less coolant than air', { ...LITTLE_COOLANT, effectiveness: 0.732409 }],
    // 0.732409 of 100 K
    ['temperatures, less air than coolant', { ...LITTLE_AIR, airIn: 130, airOut: 56.7591, coolantIn: 30 }],
    // The air gives up half of that, having twice the rate.
    ['temperatures, less coolant than air', { ...LITTLE_COOLANT, airIn: 130, airOut: 93.37955, coolantIn: 30 }],
  ])('%s', (_, test) => {
    const { core } = configOf(byTest('core', test, WATER));
    // 603.6 W/K, four fifths of the resistance on the air side
    expect(core.airConductance).toMatchObject({ atFlow: test.airFlow, exponent: 0.62 });
    expect(core.airConductance).toHaveProperty('reference', expect.closeTo(603.6 / 0.8, 0));
    expect(core.coolantConductance).toHaveProperty('reference', expect.closeTo(603.6 / 0.2, 0));
    const kilogramsPerSecond = (test.coolantFlow / 60e3) * 999.1;
    expect(core.coolantConductance).toHaveProperty('atFlow', expect.closeTo(kilogramsPerSecond, 4));
  });

  it('split over the two sides as the file says', () => {
    const test = { ...LITTLE_AIR, effectiveness: 0.732409, airShareOfResistance: 0.6 };
    const { core } = configOf(byTest('core', test, WATER));
    expect(core.airConductance).toHaveProperty('reference', expect.closeTo(603.6 / 0.6, 0));
    expect(core.coolantConductance).toHaveProperty('reference', expect.closeTo(603.6 / 0.4, 0));
  });

  it('of an exchanger, which warms its air', () => {
    const test = { ...LITTLE_AIR, airIn: 20, airOut: 49.29636, coolantIn: 60 };
    const { exchanger } = configOf(byTest('exchanger', test, WATER));
    expect(exchanger?.airConductance).toHaveProperty('reference', expect.closeTo(603.6 / 0.8, 0));
    expect(exchanger?.coolantConductance).toHaveProperty('reference', expect.closeTo(603.6 / 0.2, 0));
  });

  it('leave those that are typed beside it as they are where they agree', () => {
    // 390 and 1900 W/K at 0.3 kg/s each: UA 323.58 W/K, NTU 1.0722, ratio 0.2402, effectiveness 0.6123 by the same
    // formula
    const { core } = configOf({ ...WATER, 'core.test': { airFlow: 0.3, coolantFlow: 18.0162, effectiveness: 0.62 } });
    expect(core.airConductance).toMatchObject({ reference: 390, atFlow: 0.3 });
    expect(core.coolantConductance).toMatchObject({ reference: 1900, atFlow: 0.3 });
  });

  it('can be changed by a variant', () => {
    const document = changed('rolling-road-estate', byTest('core', { ...LITTLE_AIR, effectiveness: 0.6 }, WATER));
    document.variants = [{ name: 'better', changes: { 'core.test.effectiveness': 0.732409 } }];
    const { scenario } = parseScenario(JSON.stringify(document));
    const better = scenario && applyVariant(scenario, 'better').scenario;
    expect(better && toConfig(better).core.airConductance).toHaveProperty('reference', expect.closeTo(603.6 / 0.8, 0));
  });
});

describe('a core by a test point', () => {
  const FLOWS = { airFlow: 0.3, coolantFlow: 12 };
  const swapped = { ...FLOWS, airIn: 120, airOut: 28, coolantIn: 34 };
  const BAD: readonly BadInput[] = [
    {
      what: 'with air out below the coolant',
      edits: byTest('core', swapped),
      path: 'core.test',
      message: 'Air out (28 degC) is colder than coolant in (34 degC). Probes swapped, or taken on lift-off?',
      fix: { ...swapped, airOut: 34, coolantIn: 28 },
    },
    {
      what: 'with air in and out exchanged, units kept',
      edits: byTest('core', { ...FLOWS, airIn: '120 degF', airOut: 120, coolantIn: 34 }),
      path: 'core.test',
      message: 'Air out (120 degC) is not colder than air in (48.89 degC). Probes swapped',
      fix: { ...FLOWS, airIn: 120, airOut: '120 degF', coolantIn: 34 },
    },
    {
      what: 'with coolant hotter than the air',
      edits: byTest('core', { ...FLOWS, airIn: 40, airOut: 60, coolantIn: 120 }),
      path: 'core.test',
      message: 'Air in (40 degC) is not warmer than coolant in (120 degC). Probes swapped',
      fix: { ...FLOWS, airIn: 120, airOut: 60, coolantIn: 40 },
    },
    {
      what: 'with one temperature three times',
      edits: byTest('core', { ...FLOWS, airIn: 40, airOut: 40, coolantIn: 40 }),
      path: 'core.test',
      message: 'Air in (40 degC) is not warmer than coolant in (40 degC).',
    },
    {
      what: 'with an effectiveness above 1',
      edits: byTest('core', { ...FLOWS, effectiveness: 1.2 }),
      path: 'core.test.effectiveness',
      message:
        'Effectiveness of the test is 1.2; expected 0.05 to 1. It is heat over the most that could pass, 0.60 to 0.85 in a core at full load, and never reaches 1.',
    },
    {
      what: 'with an effectiveness in per cent without the sign',
      edits: byTest('core', { ...FLOWS, effectiveness: 62 }),
      severity: 'warning',
      path: 'core.test.effectiveness',
      message: 'Effectiveness of the test 62 read as 62 %: using 0.62.',
      fix: 0.62,
    },
    {
      // 301.8 W/K of air, 2 L/min of water 139.5 W/K: 0.7 of the air's temperatures would be 1.514.
      what: 'with more heat than its coolant can take',
      edits: byTest('core', { airFlow: 0.3, coolantFlow: 2, airIn: 130, airOut: 60, coolantIn: 30 }, WATER),
      path: 'core.test',
      message: 'The test comes to an effectiveness of 1.514; at these flows none above',
    },
    {
      // 54/93 against outside air, 54/76 against the coolant
      what: 'with an effectiveness against outside air',
      edits: byTest('core', { ...FLOWS, effectiveness: 0.58, airIn: 120, airOut: 66, coolantIn: 44, ambient: 27 }),
      severity: 'warning',
      path: 'core.test.effectiveness',
      message:
        'This number used outside air as the cold side. Against the coolant it is 0.711, not 0.58; the run takes it as typed.',
      fix: 0.711,
    },
    {
      what: 'with an effectiveness that its temperatures do not give',
      edits: byTest('core', { ...FLOWS, effectiveness: 0.62, airIn: 120, airOut: 66, coolantIn: 44, ambient: 27 }),
      path: 'core.test.effectiveness',
      message: 'The effectiveness of 0.62 and the temperatures, which give 0.711, disagree. Keep one.',
      fix: 0.711,
    },
    {
      what: 'without its air flow',
      edits: byTest('core', { coolantFlow: 12, effectiveness: 0.6 }),
      path: 'core.test.airFlow',
      message: 'Air flow of the test is missing. An effectiveness means nothing without both flows.',
    },
    {
      what: 'that says flows alone',
      edits: byTest('core', FLOWS),
      path: 'core.test',
      message:
        'A test point needs effectiveness, or the measured airIn, airOut, coolantIn: without either it says nothing.',
    },
    {
      what: 'with a probe too few',
      edits: byTest('core', { ...FLOWS, airIn: 120, airOut: 66 }),
      path: 'core.test.coolantIn',
      message: 'Coolant into the test is missing. Expected -40 to 150 degC: measured before it, steady.',
    },
    {
      what: 'with two passes',
      edits: byTest('core', { ...FLOWS, effectiveness: 0.6 }, { 'core.passes': 2 }),
      path: 'core.test',
      message: 'A test point is worked out for coolant that crosses the air once, and this core has two passes.',
    },
    {
      what: 'without test and conductances',
      edits: byTest('core', undefined as unknown as JsonValue),
      path: 'core.airConductance',
      message: 'Core air conductance is missing.',
    },
  ];
  it.each(BAD)('$what', (bad) => judge('rolling-road-estate', bad));

  it('and by its measures is given twice', () => {
    const bad = changed('rolling-road-estate', byTest('core', { ...FLOWS, effectiveness: 0.6 }, { coreGeometry: {} }));
    const issue = parsed(bad).issues.find(({ path }) => path === 'core.test');
    expect(issue).toMatchObject({ severity: 'error' });
    expect(issue?.message).toContain('The core is given twice: by its measures and by a test point.');
  });
});

describe('conductances typed beside a test point', () => {
  const core = changed('rolling-road-estate', {}).core;
  const kept = Object.fromEntries(Object.entries(core).filter(([key]) => !FOUR.includes(key)));

  it('that disagree are refused with both figures', () => {
    // 390 W/K at 0.3 kg/s falls to 253.8 at 0.15, 1900 to 1253.5: UA 211.0 W/K, NTU 1.3985, ratio 0.2402, 0.6970.
    const test = { airFlow: 0.15, coolantFlow: 9.0081, effectiveness: 0.55 };
    judge('rolling-road-estate', {
      what: '',
      edits: { ...WATER, 'core.test': test },
      path: 'core.airConductance',
      message: 'Conductances and test point give an effectiveness of 0.697 and 0.55 at this flow. Keep one.',
      fix: { ...kept, test },
    });
  });

  it('that are not all there are refused', () => {
    const test = { airFlow: 0.3, coolantFlow: 12, effectiveness: 0.6 };
    judge('rolling-road-estate', {
      what: '',
      edits: { 'core.test': test, 'core.coolantConductance': undefined, 'core.coolantConductanceAtFlow': undefined },
      path: 'core.airConductance',
      message:
        'Core air conductance stands beside a test point, from which both sides follow. Leave it out, or give coolantConductance and coolantConductanceAtFlow too.',
      fix: { ...kept, test },
    });
  });
});

describe('an exchanger by a test point', () => {
  const FLOWS = { airFlow: 0.6, coolantFlow: 12 };
  const BAD: readonly BadInput[] = [
    {
      what: 'with air out above the coolant',
      edits: byTest('exchanger', { ...FLOWS, airIn: 20, airOut: 48, coolantIn: 40 }),
      path: 'exchanger.test',
      message: 'Air out (48 degC) is warmer than coolant in (40 degC). Probes swapped?',
      fix: { ...FLOWS, airIn: 20, airOut: 40, coolantIn: 48 },
    },
    {
      what: 'that cools its air',
      edits: byTest('exchanger', { ...FLOWS, airIn: 40, airOut: 20, coolantIn: 60 }),
      path: 'exchanger.test',
      message: 'Air out (20 degC) is not warmer than air in (40 degC). Probes swapped?',
      fix: { ...FLOWS, airIn: 20, airOut: 40, coolantIn: 60 },
    },
  ];
  it.each(BAD)('$what', (bad) => judge('rolling-road-estate', bad));
});
