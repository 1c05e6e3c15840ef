import { describe, expect, it } from 'vitest';
import { phaseBeforePull } from '../../../src/sim/answers/bypass-routes.ts';
import { operatingPoint } from '../../../src/sim/answers/operating-point.ts';
import { conduct } from '../../../src/sim/answers/study.ts';
import { studyTriage, TRIAGE_DOUBTS, type Triage } from '../../../src/sim/answers/triage.ts';
import { FAULTS } from '../../../src/sim/answers/triage-faults.ts';
import { explainTriage } from '../../../src/sim/answers/triage-sentences.ts';
import { FILE_WORDING } from '../../../src/sim/answers/wording.ts';
import type { Config } from '../../../src/sim/scenario/config.ts';
import type { JsonObject } from '../../../src/sim/scenario/issue.ts';
import { parseScenario } from '../../../src/sim/scenario/parse.ts';
import { toConfig } from '../../../src/sim/scenario/to-config.ts';
import { applyChanges } from '../../../src/sim/scenario/variants.ts';
import { simulate } from '../../../src/sim/simulate.ts';
import { shippedConfig, shippedDocument } from '../../support/shipped.ts';
import { shortConfig } from '../../support/short-session.ts';

/** A shipped car with a fault typed into its file. */
function faulty(file: string, changes: JsonObject): Config {
  const { scenario } = parseScenario(JSON.stringify(shippedDocument(file)));
  const changed = scenario && applyChanges(scenario, 'fault', changes);
  if (changed?.scenario === undefined) throw new Error(JSON.stringify(changed?.issues));
  return toConfig(changed.scenario);
}

/** What two thermometers show on a car: end of the phase before the first pull, and end of that pull. */
function measured(car: Config): { rise: number; approach: number } {
  const { columns, phases } = simulate(car);
  const before = phaseBeforePull(phases)?.lastRow ?? Number.NaN;
  const lift = phases.find(({ kind }) => kind === 'pull')?.lastRow ?? Number.NaN;
  return {
    rise: columns.coolantOutOfCore[before] - columns.coolantIntoCore[before],
    approach: columns.indicatedTemperature[lift] - columns.coolantIntoCore[lift],
  };
}

function triageOf(config: Config, figures: { rise: number; approach: number }): Triage {
  const triage = conduct(studyTriage(config, { ...figures, ...TRIAGE_DOUBTS }));
  if (triage === undefined) throw new Error('nothing to compare');
  return triage;
}

const said = (triage: Triage): string => explainTriage(triage, FILE_WORDING).join(' ');

/** Both cars have three phases. */
const inAllPhases = (key: string, value: string | number): JsonObject =>
  Object.fromEntries(['cycle.0', 'cycle.1.phases.0', 'cycle.1.phases.1'].map((phase) => [`${phase}.${key}`, value]));

const CARS = [
  { file: 'rolling-road-estate', tank: 2.3, pump: { shutOffPressure: 28, freeFlow: 26 } },
  { file: 'ridge-roadster', tank: 0.5, pump: { shutOffPressure: 25, freeFlow: 22 } },
];

describe.each(CARS)('a fault typed into $file', ({ file, tank, pump }) => {
  const healthy = shippedConfig(file);

  it.each<[Triage['candidates'][number]['cause'], number | undefined, JsonObject]>([
    ['pump off', undefined, inAllPhases('pump', 'off')],
    ['low flow', 0.5, { 'pump.shutOffPressure': pump.shutOffPressure / 4, 'pump.freeFlow': pump.freeFlow / 2 }],
    ['low voltage', 0.2, inAllPhases('pumpVoltageRatio', 0.8)],
    ['air-locked core', 0.5, { 'core.airLockedShare': 0.5 }],
    ['blocked exchanger', 0.75, { 'exchanger.blockedShare': 0.75 }],
    ['leak past the core', 0.2, { 'core.leakPast': 0.2 }],
    ['low coolant', 0.5, { 'reservoir.missingCoolant': tank / 2 }],
  ])('leads, or is named beside what leads: %s %s', (cause, size, changes) => {
    const triage = triageOf(healthy, measured(faulty(file, changes)));
    const found = triage.leading.find((candidate) => candidate.cause === cause);
    expect(found?.size).toBe(size);
    // The fault that is run here is the one that was typed.
    expect(found?.distance).toBeCloseTo(0, 4);
    expect(said(triage)).toContain(found?.words);
  });

  it('of a size between those that are run leads with the nearest', () => {
    const triage = triageOf(healthy, measured(faulty(file, { 'core.airLockedShare': 0.3 })));
    expect(triage.leading[0]).toMatchObject({ cause: 'air-locked core', size: 0.25 });
  });

  it('that is none reads as a healthy car', () => {
    const triage = triageOf(healthy, measured(healthy));
    expect(triage.candidates[0]).toMatchObject({ cause: 'healthy', distance: expect.closeTo(0, 6) });
    expect(said(triage)).toMatch(/^These are the figures of a healthy car within their doubt\./);
  });

  it('of its air side stands alone when it is large', () => {
    const triage = triageOf(healthy, measured(faulty(file, { 'core.airLockedShare': 0.5 })));
    expect(triage.leading.map(({ cause }) => cause)).toEqual(['air-locked core']);
    expect(said(triage)).toBe('This looks most like 50 % of the core full of air.');
    expect(triage).not.toHaveProperty('next');
  });
});

describe('what to measure next', () => {
  it('is what parts the leading causes, with its value under each as the model has it', () => {
    const healthy = shippedConfig('rolling-road-estate');
    const half = faulty('rolling-road-estate', { 'pump.shutOffPressure': 7, 'pump.freeFlow': 13 });
    const triage = triageOf(healthy, measured(half));
    expect(triage.leading.map(({ cause }) => cause)).toContain('leak past the core');
    expect(triage.next?.quantity).toBe('coolant flow');
    const { columns, phases } = simulate(half);
    const flow = columns.coolantFlow[phases.find(({ kind }) => kind === 'pull')?.lastRow ?? Number.NaN];
    const k = triage.leading.findIndex(({ cause }) => cause === 'low flow');
    expect(triage.next?.values[k]).toBeCloseTo(flow, 9);
    expect(said(triage)).toContain(`${(6e4 * flow).toFixed(1)} L/min with a pump that makes 50 % less flow`);
  });
});

describe('figures that fit nothing', () => {
  it('are said to, with both measurements to be checked', () => {
    const triage = triageOf(shippedConfig('ridge-roadster'), { rise: -20, approach: 90 });
    expect(triage.candidates[0].distance).toBeGreaterThan(3);
    expect(said(triage)).toMatch(/^No single fault .* Check both measurements\./);
  });
});

describe('a car', () => {
  it('without a front exchanger has none to block', () => {
    const { candidates } = triageOf(shippedConfig('quarter-mile-saloon'), { rise: 1, approach: 20 });
    expect(candidates.map(({ cause }) => cause)).not.toContain('blocked exchanger');
    expect(candidates).toHaveLength(7);
  });

  it('whose flow was measured has less of it with a weak pump', () => {
    const weak = (config: Config) =>
      triageOf(config, { rise: 1, approach: 20 }).candidates.find(({ cause }) => cause === 'low flow');
    const typed = weak(shortConfig());
    const metered = weak(shortConfig({ 'pump.measuredFlow': 13.2 }));
    expect(metered?.size).toBe(typed?.size);
    expect(metered?.rise).toBeCloseTo(typed?.rise ?? Number.NaN, 1);
  });

  it('whose flow was measured has less of it with air in its core', () => {
    const metered = shortConfig({ 'pump.measuredFlow': 13.1 });
    const locked = FAULTS.find(({ cause }) => cause === 'air-locked core')?.apply(metered, 0.75);
    const flowOf = (config: Config | undefined) => config && operatingPoint(config)?.flow;
    expect(flowOf(locked)).toBeLessThan(0.9 * (flowOf(metered) ?? 0));
  });

  it('without a pull after part load has nothing to compare', () => {
    const pull = { kind: 'pull', duration: 6, engineSpeed: 3000, exchangerAirSpeed: 2.5, bayAboveAmbient: 25 };
    expect(conduct(studyTriage(shortConfig({ cycle: [pull] }), { rise: 1, approach: 20, ...TRIAGE_DOUBTS }))).toBe(
      undefined,
    );
  });

  it('that boils with its pump off says so', () => {
    // Water under no cap boils near 99.5 degC at 99.5 kPa; a minute of discharge air is hotter than that.
    const bay = { exchangerAirSpeed: 2.5, bayAboveAmbient: 25 };
    const cycle = [
      { kind: 'idle', duration: 15, engineSpeed: 1200, manifoldPressure: 38, ...bay },
      { kind: 'pull', duration: 60, engineSpeed: 6600, ...bay },
    ];
    const config = shortConfig({ cycle, 'coolant.glycolByVolume': 0, 'coolant.capPressure': 0 });
    const triage = triageOf(config, { rise: 1, approach: 20 });
    expect(triage.notRun).toEqual(['pump off']);
    expect(said(triage)).toContain('The run does not come to the end of that pull with: pump off.');
  });
});
