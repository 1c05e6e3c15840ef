import { describe, expect, it } from 'vitest';
import { figuresOf, studyBypassRoutes } from '../../src/sim/answers/bypass-routes.ts';
import { studyCarAgreement } from '../../src/sim/answers/car-agreement.ts';
import { studyComparison } from '../../src/sim/answers/comparison.ts';
import { studyCoreDrop } from '../../src/sim/answers/core-drop.ts';
import { writeLetter } from '../../src/sim/answers/letter.ts';
import { studyHottestDay } from '../../src/sim/answers/other-day.ts';
import { type PullSummary, summarisePulls } from '../../src/sim/answers/pull-summary.ts';
import { studyRest } from '../../src/sim/answers/rest-time.ts';
import { studySensitivity } from '../../src/sim/answers/sensitivity.ts';
import { conduct } from '../../src/sim/answers/study.ts';
import { studySweepCase } from '../../src/sim/answers/sweep.ts';
import { studyStore } from '../../src/sim/answers/tank-size.ts';
import { studyTriage, TRIAGE_DOUBTS } from '../../src/sim/answers/triage.ts';
import { uncertainInputs } from '../../src/sim/answers/uncertain-inputs.ts';
import { studyUpgrades } from '../../src/sim/answers/upgrade-steps.ts';
import { FILE_WORDING } from '../../src/sim/answers/wording.ts';
import { pullsOfCycle } from '../../src/sim/scenario/config/cycle.ts';
import type { Config } from '../../src/sim/scenario/config.ts';
import type { JsonObject, JsonValue } from '../../src/sim/scenario/issue.ts';
import { toConfig } from '../../src/sim/scenario/to-config.ts';
import { applyChanges, variants } from '../../src/sim/scenario/variants.ts';
import { simulate } from '../../src/sim/simulate.ts';
import { shippedConfig, shippedDocument, shippedScenario } from '../support/shipped.ts';

// Every answer of many runs, on every demo car, against whole runs of the same file with the change typed into it: the
// answers change a Config, cut their runs short and search; here none of that is used.

const FILES = [
  'rolling-road-estate',
  'ridge-roadster',
  'session-coupe',
  'motorway-wagon',
  'quarter-mile-saloon',
] as const;
const KELVIN = 273.15;

describe.each(FILES)('%s', (file) => {
  const scenario = shippedScenario(file);
  const document = shippedDocument(file);
  const config = shippedConfig(file);
  const wanted = pullsOfCycle(config.cycle);

  /** The car whose file has these values. */
  function typed(changes: JsonObject): Config {
    const { scenario: changed, issues } = applyChanges(scenario, 'typed', changes);
    if (changed === undefined) throw new Error(issues[0].message);
    return toConfig(changed);
  }
  const pullsOf = (car: Config): PullSummary[] => summarisePulls(simulate(car), car.limit.chargeTemperature);
  /** Pulls until the first whose peak is over the limit. */
  const countOf = (car: Config): number => {
    const pulls = pullsOf(car);
    const over = pulls.findIndex(({ peak }) => peak > car.limit.chargeTemperature);
    return over < 0 ? pulls.length : over;
  };
  const valueAt = (path: string): JsonValue =>
    path.split('.').reduce((value: JsonValue, key) => (value as JsonObject)[key], document as JsonValue);
  const times = (path: string, factor: number): JsonObject => ({ [path]: factor * (valueAt(path) as number) });

  it('the smallest tank makes the pulls, and one cup less does not', () => {
    const { smallest, points } = conduct(studyStore(config, 'tank', wanted));
    const made = (cubicMetres: number) => countOf(typed({ 'reservoir.coolantVolume': 1000 * cubicMetres })) >= wanted;
    if (smallest === undefined) {
      for (const { size } of points) expect(made(size)).toBe(false);
    } else {
      expect(made(smallest)).toBe(true);
      if (smallest > points[0].size) expect(made(smallest - 0.1e-3)).toBe(false);
    }
  });

  it('the least ice makes the passes, and 0.1 kg less does not', () => {
    const { smallest, points, chilledTo } = conduct(studyStore(config, 'ice', wanted));
    const made = (kilograms: number): boolean => {
      const chilled = chilledTo === undefined || kilograms === 0 ? {} : { 'start.reservoir': chilledTo - KELVIN };
      return countOf(typed({ 'reservoir.iceMass': kilograms, ...chilled })) >= wanted;
    };
    if (smallest === undefined) expect(made(points[points.length - 1].size)).toBe(false);
    else {
      expect(made(smallest)).toBe(true);
      if (smallest > 0.1) expect(made(smallest - 0.1)).toBe(false);
    }
  });

  it('the shortest rest makes the pulls, and 2 s less does not', () => {
    const study = conduct(studyRest(config, wanted));
    if (study === undefined) {
      expect(file).toBe('motorway-wagon');
      return;
    }
    const made = (rest: number): boolean => {
      const blocks = document.cycle as JsonObject[];
      const at = blocks.findIndex(({ phases }) => phases !== undefined);
      const changes = config.cycle.block.flatMap(({ kind, duration }, k): [string, number][] =>
        kind === 'pull' ? [] : [[`cycle.${at}.phases.${k}.duration`, (duration * rest) / study.now]],
      );
      return countOf(typed(Object.fromEntries(changes))) >= wanted;
    };
    expect(study.countNow).toBe(countOf(config));
    if (study.needed === undefined) expect(made(study.curve[study.curve.length - 1].rest)).toBe(false);
    else {
      expect(made(study.needed)).toBe(true);
      if (study.needed > study.curve[0].rest) expect(made(study.needed - 2)).toBe(false);
    }
  });

  it('the hottest day makes as many pulls as today, and 0.1 K more does not', () => {
    const pulls = Math.max(1, countOf(config));
    const hottest = conduct(studyHottestDay(scenario, pulls));
    if (hottest.kind !== 'found') throw new Error(hottest.kind);
    const onDay = (kelvin: number) => countOf(typed({ 'ambient.temperature': kelvin - KELVIN }));
    expect(onDay(hottest.temperature)).toBeGreaterThanOrEqual(pulls);
    expect(onDay(hottest.temperature + 0.1)).toBeLessThan(pulls);
  });

  it('the core pressure drop takes what a core without it, and one with twice, show', () => {
    const study = conduct(studyCoreDrop(config));
    const first = ({ free, doubled }: NonNullable<typeof study>) => [free, doubled];
    const cars = [0, 2].map((factor) => pullsOf(typed(times('core.airDrop', factor)))[0]);
    expect(study).toBeDefined();
    if (study === undefined) return;
    first(study).forEach((figures, k) => {
      expect(figures.peak).toBeCloseTo(cars[k].peak, 6);
      expect(figures.drivePower).toBeCloseTo(cars[k].atEnd.drivePower, 3);
      expect(figures.manifold).toBeCloseTo(cars[k].atEnd.manifoldPressure, 3);
    });
    // To first order the drop is what it takes: the car as it is lies on the line from none to twice.
    const half = 0.5 * (study.free.peak + study.doubled.peak);
    expect(Math.abs(study.asItIs.peak - half)).toBeLessThan(
      0.1 * Math.abs(study.doubled.peak - study.free.peak) + 0.05,
    );
  });

  it('the routes of the recirculated air are those of two files', () => {
    const study = conduct(studyBypassRoutes(config));
    if (study === undefined) throw new Error('no part load');
    for (const [route, figures] of [
      ['before core', study.before],
      ['after core', study.after],
    ] as const) {
      const car = typed({ 'bypass.route': route });
      const whole = figuresOf(simulate(car), car, route);
      expect(figures.charge).toBeCloseTo(whole?.charge ?? Number.NaN, 6);
      expect(figures.pullPeak).toBeCloseTo(pullsOf(car)[0].peak, 6);
    }
  });

  it('gauge readings of a car with 90 % of the conductance tell just that', () => {
    const weak = typed({ ...times('core.airConductance', 0.9), ...times('core.coolantConductance', 0.9) });
    const { columns, phases } = simulate(weak);
    const readings = phases
      .filter(({ kind }) => kind === 'pull')
      .map(({ lastRow }, k) => ({ pull: k + 1, indicated: columns.indicatedTemperature[lastRow] }));
    const agreement = conduct(studyCarAgreement(config, readings, 0.1));
    if (agreement.kind !== 'compared') throw new Error(agreement.kind);
    expect(agreement.fit.factor).toBeCloseTo(0.9, 2);
    expect(agreement.verdict).toBe('core factor');
  });

  it('half the core full of air is what triage makes of its two temperatures', () => {
    const { columns, phases } = simulate(typed({ 'core.airLockedShare': 0.5 }));
    const lift = phases.findIndex(({ kind }) => kind === 'pull');
    const rows = [phases[lift - 1].lastRow, phases[lift].lastRow];
    const triage = conduct(
      studyTriage(config, {
        rise: columns.coolantOutOfCore[rows[0]] - columns.coolantIntoCore[rows[0]],
        approach: columns.indicatedTemperature[rows[1]] - columns.coolantIntoCore[rows[1]],
        ...TRIAGE_DOUBTS,
      }),
    );
    expect(triage?.leading.map(({ cause }) => cause)).toContain('air-locked core');
  });

  it('side by side with its first variant it differs as two runs do', () => {
    const variant = variants(scenario)[0];
    const other = shippedConfig(file, variant);
    const { cars } = conduct(studyComparison([config, other], 1));
    expect(cars.map(({ count }) => count)).toEqual([countOf(config), countOf(other)]);
    const peaks = [config, other].map((car) => pullsOf(car)[0].peak);
    // Recorded every second, the run takes other steps.
    expect(Math.abs((cars[1].difference.peaks[0] ?? Number.NaN) - (peaks[1] - peaks[0]))).toBeLessThan(0.05);
  });

  it('an uncertain input alone does what the file with that value does', () => {
    const inputs = uncertainInputs(scenario, []);
    const study = conduct(studySensitivity(scenario, inputs, 16, 7));
    if (study === undefined) throw new Error('no deciding pull');
    const peakOf = (changes: JsonObject) => pullsOf(typed(changes))[study.pull - 1]?.peak;
    const outside = scenario.values.ambient.temperature;
    for (const [name, low, high] of [
      ['core conductance, air side', times('core.airConductance', 0.85), times('core.airConductance', 1.15)],
      ['outside temperature', { 'ambient.temperature': outside - 3 }, { 'ambient.temperature': outside + 3 }],
    ] as const) {
      const ranked = study.ranking.find(({ input }) => input.name === name);
      expect(ranked?.peakAtLow).toBeCloseTo(peakOf(low), 6);
      expect(ranked?.peakAtHigh).toBeCloseTo(peakOf(high), 6);
    }
    const shares = study.ranking.reduce((sum, { share }) => sum + share, study.unexplained);
    expect(shares).toBeCloseTo(1, 9);
  });

  it('each upgrade alone, and all of them, make what their files make', () => {
    const upgrades = scenario.values.upgrades ?? [];
    const steps = upgrades.map(({ changes }) => changes);
    const carOf = (chosen: readonly number[]) => typed(Object.assign({}, ...chosen.map((k) => steps[k])));
    const study = conduct(
      studyUpgrades(upgrades, (chosen) => (chosen.length === 0 ? config : carOf(chosen)), {
        withOrders: true,
      }),
    );
    if (study?.best?.order === undefined) throw new Error('no order');
    for (const { upgrade, car } of study.alone) expect(car?.count).toBe(countOf(carOf([upgrade])));
    const last = study.best.order.at(-1);
    expect(last?.car?.count).toBe(countOf(carOf([...steps.keys()])));
    // The best order gives no fewer pulls over its steps than that of the file.
    const sum = (order: readonly { readonly car?: { readonly count: number } }[]) =>
      order.reduce((all, { car }) => all + (car?.count ?? 0), 0);
    expect(sum(study.best.order)).toBeGreaterThanOrEqual(sum(study.inOrder));
  });

  it('the letter says yes where no peak of the run is over the limit, else in which pull it goes over', () => {
    const series = simulate(config);
    const pulls = summarisePulls(series, config.limit.chargeTemperature);
    const letter = writeLetter({ before: { label: 'As it is', config, series, pulls } }, FILE_WORDING);
    const over = pulls.findIndex(({ peak }) => peak > config.limit.chargeTemperature);
    expect(letter.answer).toMatch(over < 0 ? /^Yes\./ : new RegExp(`^No\\. .* in (its first pull|pull ${over + 1})`));
    expect(letter.counts[0]).toMatchObject({ count: over < 0 ? wanted : over, of: wanted });
  });

  it('a case of a sweep is the run of the file with its values', () => {
    const outside = scenario.values.ambient.temperature + 2.5;
    const line = conduct(studySweepCase(scenario, { 'ambient.temperature': outside }));
    const car = typed({ 'ambient.temperature': outside });
    expect(line.pulls).toBe(countOf(car));
    expect(line.hottest_peak_degC).toBeCloseTo(Math.max(...pullsOf(car).map(({ peak }) => peak)) - KELVIN, 9);
  });
});
