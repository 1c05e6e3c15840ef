import { describe, expect, it } from 'vitest';
import { studyCoreDesign, withCore } from '../../../src/sim/answers/core-designer.ts';
import { coreMapLists, studyCoreMap } from '../../../src/sim/answers/core-map.ts';
import { summarisePulls } from '../../../src/sim/answers/pull-summary.ts';
import { reportRun } from '../../../src/sim/answers/run-report.ts';
import { conduct } from '../../../src/sim/answers/study.ts';
import { conductanceAt } from '../../../src/sim/model/conductance.ts';
import { coolantDropAt } from '../../../src/sim/model/drop-laws.ts';
import type { Config } from '../../../src/sim/scenario/config.ts';
import { simulate } from '../../../src/sim/simulate.ts';
import { shippedConfig } from '../../support/shipped.ts';
import type { Edits } from '../scenario/estate.ts';
import { MEASURES, measuredConfig, withMeasures } from '../scenario/geometry.ts';

const near = (found: number, expected: number, share: number): void =>
  expect(Math.abs(found / expected - 1), `${found} for ${expected}`).toBeLessThan(share);

/** The core of the shipped variant of 120 mm, with changes. */
const DEEP = {
  ...MEASURES,
  width: 200,
  height: 63,
  depth: 120,
  coolantLayers: 5,
  louvreLength: 6.6,
  headerVolume: 0.1,
};
const car = (changes: Readonly<Record<string, unknown>> = {}): Config =>
  measuredConfig(withMeasures({ ...DEEP, ...changes }, { toBay: 1 }));

const toFirstPull = (config: Config) => simulate(config, { continueAfter: ({ kind }) => kind !== 'pull' });

function designOf(config: Config) {
  const study = conduct(studyCoreDesign(config));
  if (study === undefined) throw new Error('no design');
  return study;
}

describe('a core at the end of the first pull', () => {
  const config = car();
  const { design } = designOf(config);
  const run = toFirstPull(config);
  const [pull] = summarisePulls(run, config.limit.chargeTemperature);

  it('has the conductances and the coolant drop that the run had', () => {
    const { density } = config.core.geometry?.coolant ?? { density: Number.NaN };
    near(design.airConductance, conductanceAt(config.core.airConductance, pull.atEnd.airFlow), 5e-4);
    const coolant = conductanceAt(config.core.coolantConductance, pull.atEnd.coolantFlow * density);
    near(design.coolantConductance, coolant, 5e-4);
    near(design.coolant.drop.total, coolantDropAt(config.core.coolantDrop, pull.atEnd.coolantFlow), 5e-4);
  });

  it('has the air drop that the run had, worked out from its own two densities', () => {
    near(design.airDrop, pull.atEnd.coreAirDrop, 5e-3);
  });

  it('has sizes by hand', () => {
    // Face 200 x 63 mm; 6 fin layers of 8 mm with 14 fins of 0.1 mm to the inch; tubes 5 of 120 x 3 mm.
    near(design.geometry.air.faceArea, 0.2 * 0.063, 1e-9);
    const pitch = 0.0254 / 14;
    near(design.geometry.air.areaRatio, (((6 * 0.2) / pitch) * (pitch - 1e-4) * 0.0079) / (0.2 * 0.063), 1e-9);
    near(design.geometry.coolant.flowArea, 5 * 0.0022 * 0.1192, 1e-9);
  });

  it.each<[string, Edits, number]>([
    ['two cores', { 'core.count': 2 }, 2],
    ['two cores in series', { 'core.count': 2, 'core.coolantOrder': 'series' }, 2],
    ['a core half full of air', { 'core.airLockedShare': 0.5 }, 1],
  ])('is that of the run with %s', (_, edits, cores) => {
    const locked = measuredConfig({ ...withMeasures(DEEP, { toBay: 1 }), ...edits });
    const { design: one } = designOf(locked);
    const [own] = summarisePulls(toFirstPull(locked), 331);
    const coreFlow = own.atEnd.airFlow * (1 - locked.core.leakPast);
    near(one.airDrop, own.atEnd.coreAirDrop, 5e-3);
    near(cores * one.airConductance, conductanceAt(locked.core.airConductance, coreFlow), 5e-4);
    const { geometry } = locked.core;
    if (geometry === undefined) throw new Error('no geometry');
    // Made anew with the same measures it is the same core.
    const anew = withCore(locked, geometry).core;
    near(conductanceAt(anew.airConductance, coreFlow), conductanceAt(locked.core.airConductance, coreFlow), 1e-9);
  });

  it('keeps what is typed: measured points scale it', () => {
    const scaled = measuredConfig(withMeasures(DEEP, { airDrop: 9, airDropAtFlow: 0.3, coolantDropFactor: 30 }));
    const { design: typed } = designOf(scaled);
    const [own] = summarisePulls(toFirstPull(scaled), 331);
    near(typed.airDrop, own.atEnd.coreAirDrop, 5e-3);
    expect(typed.factors.airDrop).toBeGreaterThan(2);
  });

  it('is absent for a core by test points', () => {
    expect(conduct(studyCoreDesign(shippedConfig('rolling-road-estate')))).toBeUndefined();
    expect(conduct(studyCoreMap(shippedConfig('rolling-road-estate')))).toBeUndefined();
  });
});

describe('one row more', () => {
  const config = car();
  const { design, changes } = designOf(config);
  const [wider, deeper] = changes;

  it('the slope is that of the louvred fin, Re^0.51 of its film (Chang and Wang, 1997), less what the fins lose', () => {
    // eta = tanh(x)/x with x ~ h^1/2 (Kays and London, chapter 2): d eta/d ln h = (1/cosh(x)^2 - eta)/2.
    const { heatTransferCoefficient: h, surfaceEfficiency } = design.air;
    const x = Math.sqrt(((2 * h) / (193 * 1e-4)) * (1 + 1e-4 / 0.12)) * (0.004 - 1e-4);
    const eta = Math.tanh(x) / x;
    const { finArea, area } = design.geometry.air;
    const loss = ((finArea / area) * (1 / Math.cosh(x) ** 2 - eta)) / 2 / surfaceEfficiency;
    expect(Math.abs(wider.slope - 0.51 * (1 + loss))).toBeLessThan(1e-3);
  });

  it.each(['louvred', 'offset strip'])('wider: air conductance x1.09^(1 - n) and drop x about 0.86, %s', (fins) => {
    const louvres =
      fins === 'louvred'
        ? {}
        : { louvrePitch: undefined, louvreLength: undefined, louvreAngle: undefined, stripLength: 3 };
    const [width] = designOf(car({ fins, ...louvres })).changes;
    near(width.airConductance, 1.09 ** (1 - width.slope), 1e-3);
    expect(width.airDrop).toBeGreaterThan(0.84);
    expect(width.airDrop).toBeLessThan(0.89);
  });

  it('deeper: air conductance and friction x1.09, the drop less by what entry and exit do not change', () => {
    near(deeper.airConductance, 1.09, 1e-3);
    near(deeper.airDropOfFriction, 1.09, 1e-6);
    const { friction, total } = design.air.drop;
    near(deeper.airDrop, (total + 0.09 * friction) / total, 1e-6);
    expect(deeper.airDrop).toBeLessThan(1.09);
  });

  it('says what the first pull makes of it, as a car with that core does', () => {
    const { core } = car({ width: 218 });
    const [pull] = summarisePulls(toFirstPull({ ...config, core }), 331);
    const [before] = summarisePulls(toFirstPull(config), 331);
    expect(wider.pull?.peak).toBeCloseTo(pull.peak - before.peak, 6);
    expect(wider.pull?.airFlow).toBeCloseTo(pull.atEnd.airFlow / before.atEnd.airFlow - 1, 9);
    expect(wider.pull?.peak).toBeLessThan(-0.5);
  });
});

describe('the map over fins, depth and width', () => {
  const config = car();
  const pitches = [6, 8, 10, 12, 14, 16, 18, 20, 24, 28, 32].map((count) => 0.0254 / count);
  const map = conduct(studyCoreMap(config, { finPitches: pitches, depths: [0.12], widths: [1] }));
  if (map === undefined) throw new Error('no map');
  const at = (goal: string) => map.optima.find((optimum) => optimum.goal === goal);

  it('a core 120 mm deep has its best fin density inside, for air mass as for drive power', () => {
    expect(at('most air mass')?.atEdgeOf).toEqual([]);
    expect(at('least drive power')?.atEdgeOf).toEqual([]);
  });

  it('is too open to cool on one side and too dense to breathe on the other', () => {
    const verdicts = map.points.map(({ verdict }) => verdict);
    expect(verdicts.at(0)).toBe('too open to cool');
    expect(verdicts.at(-1)).toBe('too dense to breathe');
    const order = ['too open to cool', 'good', 'too dense to breathe'];
    const places = verdicts.map((verdict) => order.indexOf(verdict));
    expect(places).toEqual(places.toSorted());
    expect(places).toContain(1);
  });

  it('drop rises and peak falls with every fin added, so the coolest charge lies at the edge, and is named so', () => {
    const drops = map.points.map(({ airDrop }) => airDrop);
    const peaks = map.points.map(({ peak }) => peak);
    expect(drops).toEqual(drops.toSorted((a, b) => a - b));
    expect(peaks).toEqual(peaks.toSorted((a, b) => b - a));
    expect(at('lowest charge')?.atEdgeOf).toEqual(['finPitch']);
  });

  it('each point is the car with that core, as typed', () => {
    const typed = car({ finPitch: '20 fpi' });
    const [pull] = summarisePulls(toFirstPull(typed), 331);
    const point = map.points.find(({ finPitch }) => finPitch === 0.0254 / 20);
    expect(point?.peak).toBeCloseTo(pull.peak, 6);
    expect(point?.drivePower).toBeCloseTo(pull.atEnd.drivePower, 3);
    expect(point?.airDrop).toBeCloseTo(pull.atEnd.coreAirDrop, 4);
  });

  it('leaves out a core that cannot be, and names edges in every measure', () => {
    const lists = { finPitches: [1e-4, 0.0018], depths: [0.06, 0.12], widths: [1, 1.09] };
    const small = conduct(studyCoreMap(config, lists));
    expect(small?.points.map(({ finPitch }) => finPitch)).toEqual([0.0018, 0.0018, 0.0018, 0.0018]);
    expect(small?.optima.find(({ goal }) => goal === 'lowest charge')?.atEdgeOf).toEqual(['depth', 'width']);
  });

  it('goes from open to dense fins and over depths round the core where nothing is asked', () => {
    const { geometry } = config.core;
    if (geometry === undefined) throw new Error('no geometry');
    const { finPitches, depths } = coreMapLists(geometry);
    expect(Math.max(...finPitches)).toBeGreaterThan(geometry.shape.finPitch);
    expect(Math.min(...finPitches)).toBeLessThan(geometry.shape.finPitch);
    expect(depths).toContain(geometry.shape.depth);
  });
});

describe('the report of a run', () => {
  it('carries the marks of the core and what leaving out metal conduction can mean', () => {
    const config = car();
    const { findings } = reportRun(config, toFirstPull(config));
    const notes = findings.filter(({ rank }) => rank === 'note').map(({ text }) => text);
    expect(notes.join('\n')).toContain('core depth 120 mm, published 15.6 to 57.4 mm: extrapolated in depth, +-20 %');
    // k V/(L^2 C) by hand: 193 W/(m K), 0.174 L of metal, the shorter way 0.12 m, 0.2866 kg/s of air.
    const tubes = 5 * (0.003 * 0.12 - 0.0022 * 0.1192) * 0.2;
    const fins = ((6 * 0.2) / (0.0254 / 14)) * (0.0079 + 0.0254 / 14) * 1e-4 * 0.12;
    const share = (193 * (tubes + fins)) / (0.12 ** 2 * 0.2866 * 1006);
    expect(notes.join('\n')).toContain(`it would take ${(100 * share).toFixed(1)} % of the heat at most`);
  });
});
