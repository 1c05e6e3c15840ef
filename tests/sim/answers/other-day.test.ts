import { describe, expect, it } from 'vitest';
import { explainDay, explainHottestDay } from '../../../src/sim/answers/day-sentences.ts';
import { studyDay, studyHottestDay } from '../../../src/sim/answers/other-day.ts';
import { summarisePulls } from '../../../src/sim/answers/pull-summary.ts';
import { conduct } from '../../../src/sim/answers/study.ts';
import { FILE_WORDING } from '../../../src/sim/answers/wording.ts';
import { type Day, onDay } from '../../../src/sim/scenario/other-day.ts';
import { parseScenario } from '../../../src/sim/scenario/parse.ts';
import type { Scenario } from '../../../src/sim/scenario/scenario.ts';
import { toConfig } from '../../../src/sim/scenario/to-config.ts';
import { applyVariant } from '../../../src/sim/scenario/variants.ts';
import { simulate } from '../../../src/sim/simulate.ts';
import { shippedDocument } from '../../support/shipped.ts';
import { edit, type LooseDocument, shortDocument } from '../../support/short-session.ts';

function read(document: LooseDocument): Scenario {
  const { scenario, issues } = parseScenario(JSON.stringify(document));
  if (scenario === undefined) throw new Error(issues[0].message);
  return scenario;
}

/** Pulls in a row whose peak stays at or under the limit, of a file with this outside temperature typed into it. */
function pullsAt(document: LooseDocument, temperature: number): number {
  const changed = structuredClone(document);
  edit(changed, 'ambient.temperature', temperature);
  const { scenario } = parseScenario(JSON.stringify(changed));
  if (scenario === undefined) return 0;
  const config = toConfig(scenario);
  const peaks = summarisePulls(simulate(config), 0).map(({ peak }) => peak);
  const over = peaks.findIndex((peak) => peak > config.limit.chargeTemperature);
  return over < 0 ? peaks.length : over;
}

/**
 * The file of a demo car or of a variant of it; with `start` its start temperatures, none = those of the air outside.
 */
function demo(file: string, variant?: string, start?: LooseDocument): LooseDocument {
  const scenario = read(shippedDocument(file));
  const chosen = variant === undefined ? scenario : applyVariant(scenario, variant).scenario;
  const document = structuredClone(chosen?.document) as LooseDocument;
  if (start !== undefined) document.start = start;
  return document;
}

const DEGREES = Array.from({ length: 81 }, (_, k) => k - 20);

describe('the hottest day', () => {
  it.each([
    ['rolling-road-estate, bigger core', demo('rolling-road-estate', 'bigger core'), [1, 2, 3, 4, 5, 6, 7, 8]],
    ['ridge-roadster, everything as warm as the air at the start', demo('ridge-roadster', undefined, {}), [1, 2, 3, 4]],
  ])('of %s is where a search of every degree puts it', (_, document, wanted) => {
    const counts = DEGREES.map((degree) => pullsAt(document, degree));
    for (const pulls of wanted) {
      const last = DEGREES[counts.findLastIndex((count) => count >= pulls)];
      expect(last).toBeGreaterThan(DEGREES[0]);
      const hottest = conduct(studyHottestDay(read(document), pulls));
      if (hottest.kind !== 'found') throw new Error(hottest.kind);
      const tenths = Math.round(10 * (hottest.temperature - 273.15));
      expect(Math.floor(tenths / 10), `${pulls} pulls`).toBe(last);
      expect(pullsAt(document, tenths / 10)).toBeGreaterThanOrEqual(pulls);
      expect(pullsAt(document, (tenths + 1) / 10)).toBeLessThan(pulls);
      expect(hottest.beyond).toEqual({ kind: 'limit', pull: expect.any(Number) });
    }
  });

  it('repeats the block on for more pulls than the session has', () => {
    const document = shortDocument({ 'limit.chargeTemperature': 62 });
    const longer = structuredClone(document);
    longer.cycle[1].repeat = 6;
    const found = [document, longer].map((each) => conduct(studyHottestDay(read(each), 6)));
    expect(found[0].kind).toBe('found');
    expect(found[0]).toEqual(found[1]);
  });

  it('is none where the cycle repeats no pull', () => {
    const [idle, { phases }] = shortDocument().cycle;
    const single = read(shortDocument({ cycle: [idle, ...phases] }));
    expect(conduct(studyHottestDay(single, 2))).toEqual({ kind: 'too few pulls', pulls: 1 });
  });

  it('is beyond all days, or before them, where the limit says so', () => {
    const wide = read(shortDocument({ 'limit.chargeTemperature': 200, 'coolant.capPressure': 100 }));
    expect(conduct(studyHottestDay(wide, 2))).toEqual({ kind: 'made on every day', upTo: 333.15 });
    const tight = read(shortDocument({ 'limit.chargeTemperature': -35 }));
    expect(conduct(studyHottestDay(tight, 1))).toMatchObject({
      kind: 'made on no day',
      downTo: expect.closeTo(233.15, 9),
    });
  });

  it('says why where it is the file that refuses a day, in its own words', () => {
    const { cycle } = shortDocument();
    cycle[0].outsideTemperature = -45;
    const edits = { cycle, 'limit.chargeTemperature': -35, 'coolant.freezingAccepted': 'yes' };
    const car = read(shortDocument({ ...edits, 'ambient.temperature': 20 }));
    const hottest = conduct(studyHottestDay(car, 1));
    const said = explainHottestDay({ scenario: car, config: toConfig(car) }, hottest, 1, FILE_WORDING)[0];
    expect(said).toBe(
      'On no day down to -40.0 degC outside does it make 1 pull: there the file is refused: Outside air in the phase is -105 degC; expected -50 to 150 degC.',
    );
  });

  it('says so where it is a stop that ends the pulls, not the limit', () => {
    // Plain water under no cap at 60 kPa boils at 85.9 degC (steam tables); without air the exchanger cools nothing.
    const { cycle } = shortDocument();
    for (const phase of [cycle[0], ...cycle[1].phases]) phase.exchangerAirSpeed = 0;
    const water = { 'coolant.glycolByVolume': 0, 'coolant.capPressure': 0, 'ambient.pressure': 60 };
    const car = read(shortDocument({ ...water, cycle, start: {}, 'limit.chargeTemperature': 200 }));
    const hottest = conduct(studyHottestDay(car, 30));
    expect(hottest).toMatchObject({
      kind: 'found',
      beyond: { kind: 'stopped', reason: expect.arrayContaining([expect.stringContaining('boils')]) },
    });
  });
});

describe('another day', () => {
  const CAR = read(demo('rolling-road-estate', 'bigger core'));
  function answer(day: Day, pulls = 8) {
    const there = onDay(CAR, day).scenario;
    if (there === undefined) throw new Error('refused');
    const study = conduct(studyDay(CAR, there, pulls));
    return { study, words: explainDay(study, FILE_WORDING).join(' ') };
  }

  it('has the pulls of a file with that day typed into it, and a band from 5 % of core conductance', () => {
    const { study } = answer({ temperature: 35 });
    const document = demo('rolling-road-estate', 'bigger core');
    expect(study.day.count).toBe(pullsAt(document, 35));
    expect(study.typed.count).toBe(pullsAt(document, 27));
    const scaled = [0.95, 1.05].map((factor) => {
      const changed = structuredClone(document);
      changed.core.airConductance *= factor;
      changed.core.coolantConductance *= factor;
      return pullsAt(changed, 35);
    });
    expect([study.day.lower.count, study.day.higher.count]).toEqual(scaled);
    const { deciding, lower, higher } = study.day;
    expect(lower.peak).toBeGreaterThan(deciding?.peak ?? Number.NaN);
    expect(higher.peak).toBeLessThan(deciding?.peak ?? Number.NaN);
  });

  it('has the pulls of such a file on days every 5 K about it, the typed one and the hottest', () => {
    const { study } = answer({ temperature: 41 });
    const document = demo('rolling-road-estate', 'bigger core');
    const degrees = study.curve.map(({ temperature }) => Math.round(temperature - 273.15));
    // The hottest day with all eight lies between 25 and 41 degC outside, the typed one at 27.
    expect(degrees).toEqual([20, 25, 30, 35, 40, 45, 50]);
    for (const k of [1, 4, 6]) expect(study.curve[k].count).toBe(pullsAt(document, degrees[k]));
  });

  it('is told in sentences: this day, the typed one, the hottest, and what does not follow', () => {
    const { study, words } = answer({ temperature: 35, altitude: 1500, relativeHumidity: 30 }, 3);
    expect(words).toMatch(/^35\.0 degC outside, 84\.6 kPa, 30 % humidity: \d of 8 pulls \(\d \/ \d with 5 % less/);
    expect(words).toContain(`As typed, 27.0 degC outside, 99.5 kPa, 50 % humidity: ${study.typed.count} of 8 pulls`);
    expect(words).toMatch(
      /Hottest day with 3 pulls made at 84\.6 kPa, 30 % humidity: \d+\.\d degC outside; 0\.1 K warmer, pull 3 goes over the limit\./,
    );
    expect(words).toContain('coolant 30.0 degC, casing 45.0 degC and plenum 55.0 degC');
    expect(words).not.toMatch(/undefined|NaN/);
  });

  it('leaves the typed day out where it is the day asked about', () => {
    expect(answer({}).words).not.toContain('As typed');
  });

  it('says that the start follows where none of it is typed', () => {
    const following = read(demo('rolling-road-estate', 'bigger core', {}));
    const words = explainDay(conduct(studyDay(following, following, 1)), FILE_WORDING).join(' ');
    expect(words).toContain('Coolant, casing and plenum start at the temperature outside on every day.');
  });
});
