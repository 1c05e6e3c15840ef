import { describe, expect, it } from 'vitest';
import { summarisePulls } from '../../../src/sim/answers/pull-summary.ts';
import { type Sensitivity, studySensitivity } from '../../../src/sim/answers/sensitivity.ts';
import { explainSensitivity } from '../../../src/sim/answers/sensitivity-sentences.ts';
import { conduct } from '../../../src/sim/answers/study.ts';
import { issuesOfRanges, type OwnRange, uncertainInputs } from '../../../src/sim/answers/uncertain-inputs.ts';
import { FILE_WORDING } from '../../../src/sim/answers/wording.ts';
import { parseScenario } from '../../../src/sim/scenario/parse.ts';
import { toConfig } from '../../../src/sim/scenario/to-config.ts';
import { simulate } from '../../../src/sim/simulate.ts';
import { shippedDocument } from '../../support/shipped.ts';
import { type Edits, edit, type LooseDocument, shortDocument } from '../../support/short-session.ts';

function read(document: LooseDocument) {
  const { scenario, issues } = parseScenario(JSON.stringify(document));
  if (scenario === undefined) throw new Error(issues[0].message);
  return scenario;
}

function study(document: LooseDocument, own: readonly OwnRange[], runs: number, seed = 1) {
  const scenario = read(document);
  const inputs = uncertainInputs(scenario, own);
  expect(issuesOfRanges(scenario, inputs)).toEqual([]);
  const found = conduct(studySensitivity(scenario, inputs, runs, seed));
  if (found === undefined) throw new Error('nothing to rank');
  return found;
}

describe('what to measure next', () => {
  const ESTATE = shippedDocument('rolling-road-estate') as LooseDocument;

  it('is what was planted: an intake pick-up of 0 to 60 K on the estate', () => {
    const planted = study(ESTATE, [{ path: 'intake.pickUp', low: 0, high: 60 }], 24);
    expect(planted.ranking[0].input.path).toBe('intake.pickUp');
    expect(planted.ranking[0].share).toBeGreaterThan(2 * planted.ranking[1].share);
    const small = study(ESTATE, [{ path: 'intake.pickUp', low: 5.9, high: 6.1 }], 24);
    expect(small.ranking[0].input.path).not.toBe('intake.pickUp');
  });

  it('shows each input alone at its ends, as a file with that value has it', () => {
    const { ranking, pull } = study(ESTATE, [{ path: 'intake.pickUp', low: 0, high: 40 }], 12);
    const row = (name: string) => ranking.find(({ input }) => input.name === name);
    const peakOf = (edits: Edits): number => {
      const changed = structuredClone(ESTATE);
      for (const [path, value] of Object.entries(edits)) edit(changed, path, value);
      return summarisePulls(simulate(toConfig(read(changed))), 0)[pull - 1].peak;
    };
    const cases: [string, Edits, Edits][] = [
      ['intake pick-up', { 'intake.pickUp': 0 }, { 'intake.pickUp': 40 }],
      ['outside temperature', { 'ambient.temperature': 24 }, { 'ambient.temperature': 30 }],
      ['core conductance, air side', { 'core.airConductance': 0.85 * 390 }, { 'core.airConductance': 1.15 * 390 }],
      ['core conductance, coolant side', { 'core.coolantConductance': 1615 }, { 'core.coolantConductance': 2185 }],
      ['pump free flow', { 'pump.freeFlow': 23.4 }, { 'pump.freeFlow': 28.6 }],
      ['pump shut-off pressure', { 'pump.shutOffPressure': 25.2 }, { 'pump.shutOffPressure': 30.8 }],
      ['compressor idle power', { 'compressor.idlePower': 0.45 }, { 'compressor.idlePower': 1.8 }],
      ['swallowing exponent', { 'engine.temperatureExponent': 0 }, { 'engine.temperatureExponent': 0.5 }],
    ];
    for (const [name, low, high] of cases) {
      expect(row(name)?.peakAtLow, name).toBeCloseTo(peakOf(low), 6);
      expect(row(name)?.peakAtHigh, name).toBeCloseTo(peakOf(high), 6);
    }
    const air = (speed: number): Edits => ({
      'cycle.0.exchangerAirSpeed': speed,
      'cycle.1.phases.0.exchangerAirSpeed': speed,
      'cycle.1.phases.1.exchangerAirSpeed': speed,
    });
    expect(row('air speed at the front exchanger')?.peakAtLow).toBeCloseTo(peakOf(air(1.875)), 6);
  });

  it('calls the swallowing exponent as its key is called', () => {
    const { issues } = parseScenario(JSON.stringify(shortDocument({ 'engine.temperatureExponent': 2 })));
    expect(issues.map(({ message }) => message)).toEqual([expect.stringMatching(/^Swallowing exponent is 2/)]);
    expect(uncertainInputs(read(ESTATE), []).map(({ name }) => name)).toContain('swallowing exponent');
  });

  it('takes a range of the user in place of that of the trade', () => {
    const own = [
      { path: 'core.airConductance', low: 300, high: 500 },
      { path: 'ambient.temperature', low: 20, high: 40 },
    ];
    const inputs = uncertainInputs(read(ESTATE), own);
    const names = inputs.map(({ name }) => name);
    expect(names).not.toContain('core conductance, air side');
    expect(names).not.toContain('outside temperature');
    // As the guide to keys has them.
    expect(inputs.slice(-2)).toMatchObject([
      { name: 'core air conductance', unit: 'W/K', path: 'core.airConductance' },
      { name: 'outside air temperature', unit: 'degC', path: 'ambient.temperature' },
    ]);
    expect(names).toHaveLength(8);
  });

  it('has no air speed of an exchanger where there is none', () => {
    const names = uncertainInputs(read(shippedDocument('quarter-mile-saloon')), []).map(({ name }) => name);
    expect(names).toHaveLength(7);
    expect(names).not.toContain('air speed at the front exchanger');
  });

  it('refuses ranges that the file refuses', () => {
    const scenario = read(shortDocument());
    const inputs = uncertainInputs(scenario, [{ path: 'core.airConductance', low: -5, high: 500 }]);
    expect(issuesOfRanges(scenario, inputs).map(({ message }) => message)).toEqual([expect.stringContaining('-5')]);
  });
});

describe('the sample', () => {
  const CAR = shortDocument({ 'limit.chargeTemperature': 60 });

  it('is the same to the byte for the same seed, another for another', () => {
    const text = (seed: number): string => JSON.stringify(study(CAR, [], 12, seed));
    expect(text(4)).toBe(text(4));
    expect(text(4)).not.toBe(text(5));
  });

  it('has bands that hold nine of ten runs, counts and peaks that belong together', () => {
    const { runs, peak, count, pull, limit, unusable } = study(CAR, [], 40);
    const results = runs.flatMap(({ result }) => result ?? []);
    expect(results).toHaveLength(40 - unusable);
    expect(results.filter((each) => each.peak < peak.low)).toHaveLength(2);
    expect(results.filter((each) => each.peak > peak.high)).toHaveLength(2);
    expect(Math.min(...results.map((each) => each.count))).toBe(count.lowest);
    expect(Math.max(...results.map((each) => each.count))).toBe(count.highest);
    for (const each of results) if (each.peak > limit) expect(each.count).toBeLessThan(pull);
  });

  it('leaves out runs that do not come to the pull, and says how many', () => {
    const own = [{ path: 'start.coolant', low: 20, high: 140 }];
    const scenario = read(CAR);
    const found = conduct(studySensitivity(scenario, uncertainInputs(scenario, own), 40, 1));
    expect(found?.unusable).toBeGreaterThan(0);
    expect(found?.runs.filter(({ result }) => result === undefined)).toHaveLength(found?.unusable ?? Number.NaN);
    expect(found?.ranking.find(({ input }) => input.path === 'start.coolant')).not.toHaveProperty('peakAtHigh');
  });

  it('is none where the car has no pull', () => {
    const scenario = read(shortDocument({ cycle: [shortDocument().cycle[0]] }));
    expect(conduct(studySensitivity(scenario, uncertainInputs(scenario, []), 12, 1))).toBeUndefined();
  });
});

describe('the bands in words', () => {
  const study = (low: number, high: number, lowest: number, highest: number) =>
    ({
      pull: 3,
      limit: 331.15,
      typed: { count: 4, peak: 330 },
      count: { low, high, middle: 4, lowest, highest },
      peak: { low: 325, high: 335, middle: 330 },
      runs: Array(64),
      unusable: 0,
    }) as unknown as Sensitivity;
  const said = (...bands: [number, number, number, number]) => explainSensitivity(study(...bands), FILE_WORDING)[0];

  it('are two where runs differ, and one word where they do not', () => {
    expect(said(2, 5, 1, 8)).toBe(
      'Pulls to limit: 4 as typed; 2 to 5 in nine tenths of 64 runs with every input uncertain at once, 1 to 8 in all.',
    );
    expect(said(4, 4, 3, 4)).toContain(
      '4 in nine tenths of 64 runs with every input uncertain at once, 3 to 4 in all.',
    );
    expect(said(4, 4, 4, 4)).toBe('Pulls to limit: 4 as typed; 4 in all 64 runs with every input uncertain at once.');
  });
});

describe('a flow that was measured', () => {
  it('leaves a pump that is not known well little to say: the meter has said it', () => {
    // One run alone at either end of the range is all that is looked at.
    const spread = (edits: Edits, path: string): number => {
      const own = { 'pump.freeFlow': [23.4, 28.6], 'pump.measuredFlow': [11, 13] }[path] ?? [];
      const scenario = read(shortDocument(edits));
      const inputs = uncertainInputs(scenario, [{ path, low: own[0], high: own[1] }]).filter(
        (each) => each.path === path,
      );
      const { ranking } = conduct(studySensitivity(scenario, inputs, 3, 1)) as Sensitivity;
      return Math.abs((ranking[0].peakAtHigh ?? Number.NaN) - (ranking[0].peakAtLow ?? Number.NaN));
    };
    const typed = spread({}, 'pump.freeFlow');
    expect(spread({ 'pump.measuredFlow': 12 }, 'pump.freeFlow')).toBeLessThan(0.05 * typed);
    expect(spread({ 'pump.measuredFlow': 12 }, 'pump.measuredFlow')).toBeGreaterThan(0.5 * typed);
  });
});
