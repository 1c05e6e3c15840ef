import { describe, expect, it } from 'vitest';
import { ALLOYS } from '../../../src/sim/correlations/alloys.ts';
import { conductanceAt } from '../../../src/sim/model/conductance.ts';
import { airDropTimesDensity, coolantDropAt } from '../../../src/sim/model/drop-laws.ts';
import type { CoreGeometryConfig } from '../../../src/sim/scenario/config/exchangers.ts';
import { coreLaws } from '../../../src/sim/scenario/core-laws.ts';
import { parseScenario } from '../../../src/sim/scenario/parse.ts';
import { exactEffectiveness } from '../../support/mason.ts';
import { WORKED_AIR, WORKED_COOLANT, WORKED_CORES } from '../../support/worked-cores.ts';
import { estateWith } from './estate.ts';
import { measuredConfig, withMeasures } from './geometry.ts';

const near = (found: number, expected: number, share: number): void =>
  expect(Math.abs(found / expected - 1), `${found} for ${expected}`).toBeLessThan(share);

/** The second worked core as a fabricator types it. */
const [, WORKED] = WORKED_CORES;
const WORKED_MEASURES = {
  coreGeometry: {
    width: 240,
    height: 108,
    depth: 60,
    fins: 'offset strip',
    finPitch: '1.5 mm',
    finHeight: 8,
    finThickness: 0.1,
    stripLength: '0.3 cm',
    tubes: 'plain',
    tubeHeight: 2,
    tubeWall: 0.3,
    coolantLayers: 10,
    portBore: 19,
    headerVolume: 0.1,
    alloy: '6061 annealed',
  },
  core: {},
};

/** The geometry of a configuration with the properties that the reference chain was worked out with. */
function withReferenceProperties(geometry: CoreGeometryConfig | undefined): CoreGeometryConfig {
  if (geometry === undefined) throw new Error('no geometry');
  const { massFlow: _, ...air } = WORKED_AIR;
  const { volumeFlow: __, ...coolant } = WORKED_COOLANT;
  return { ...geometry, air, coolant };
}

describe('a core typed by its measures, through the configuration, against the worked core', () => {
  const geometry = withReferenceProperties(measuredConfig(WORKED_MEASURES).core.geometry);

  it('has the shape and so the areas of the reference', () => {
    expect(geometry.shape).toMatchObject({ coolantLayers: 10, finLayers: 11, alloy: ALLOYS['6061 annealed'] });
    near(geometry.shape.finPitch, WORKED.shape.finPitch, 1e-12);
    near(geometry.shape.length, WORKED.shape.length, 1e-12);
    expect(geometry.shape.fins).toEqual({ kind: 'offset strip', stripLength: expect.closeTo(0.003, 12) });
  });

  it.each([
    ['at sampled flows', 1, 1e-8],
    ['between them', 1.07, 1e-3],
  ])('meets its conductances and drops %s', (_, aside, share) => {
    const { massFlow } = WORKED_AIR;
    const { volumeFlow } = WORKED_COOLANT;
    // The middle of thirteen is the flow of the reference, or lies aside of it.
    const around = (flow: number) => [(flow * aside) / 9, flow * aside * 9] as const;
    const laws = coreLaws({ ...geometry, airFlows: around(massFlow), coolantFlows: around(volumeFlow) });
    const air = conductanceAt(laws.airConductance, massFlow);
    const coolant = conductanceAt(laws.coolantConductance, volumeFlow * WORKED_COOLANT.density);
    near(air, WORKED.air.conductance, share);
    near(1 / (1 / air + 1 / coolant), WORKED.UA, share);

    const { densityIn, densityOut } = WORKED;
    const inverse = (1 / densityIn + 1 / densityOut) / 2;
    const cooling = (1 / densityOut - 1 / densityIn) / inverse;
    if (laws.airDrop.kind !== 'table') throw new Error(laws.airDrop.kind);
    const drop = airDropTimesDensity(laws.airDrop, massFlow) + laws.airDrop.acceleration * massFlow ** 2 * cooling;
    near(drop * inverse, WORKED.airDrop.total, share);
    // The reference leaves the headers out, which take 2 % here: they are in the test of the headers.
    const coolantDrop = coolantDropAt(laws.coolantDrop, volumeFlow);
    expect(coolantDrop / WORKED.coolantDrop.total).toBeGreaterThan(1);
    expect(coolantDrop / WORKED.coolantDrop.total).toBeLessThan(1.3);
  });

  it('has metal and coolant by hand', () => {
    const { core } = measuredConfig(WORKED_MEASURES);
    // Tubes: 10 of 2 x 60 mm outside, 1.4 x 59.4 mm inside, 240 mm long. Fins: 11 x 160 channels, 7.9 + 1.5 mm of
    // strip.
    const tubes = 10 * (0.002 * 0.06 - 0.0014 * 0.0594) * 0.24;
    const fins = 11 * 160 * 0.0094 * 0.0001 * 0.06;
    near(core.metalHeatCapacity, 2700 * 896 * (tubes + fins), 1e-9);
    near(core.coolantVolume, 10 * 0.0014 * 0.0594 * 0.24 + 2e-4, 1e-9);
  });
});

describe('what is typed stands over what the measures give', () => {
  const plain = measuredConfig(withMeasures()).core;

  it('an air conductance at its flow scales the whole curve, and says so', () => {
    const { airConductance, marks, geometry } = measuredConfig(
      withMeasures({}, { airConductance: 500, airConductanceAtFlow: 0.3 }),
    ).core;
    near(conductanceAt(airConductance, 0.3), 500, 5e-4);
    const factor = geometry?.factors.airConductance ?? Number.NaN;
    near(factor, 500 / conductanceAt(plain.airConductance, 0.3), 5e-4);
    near(conductanceAt(airConductance, 0.07), factor * conductanceAt(plain.airConductance, 0.07), 1e-9);
    expect(marks).toContainEqual(
      `Air conductance of the core as typed, ${Number(factor.toPrecision(4))} times what its measures give.`,
    );
    expect(plain.marks.join()).not.toContain('as typed');
  });

  it('a coolant conductance too', () => {
    const { coolantConductance } = measuredConfig(
      withMeasures({}, { coolantConductance: 1800, coolantConductanceAtFlow: 0.25 }),
    ).core;
    near(conductanceAt(coolantConductance, 0.25), 1800, 5e-4);
    const factor = 1800 / conductanceAt(plain.coolantConductance, 0.25);
    near(conductanceAt(coolantConductance, 0.4), factor * conductanceAt(plain.coolantConductance, 0.4), 5e-4);
  });

  it('a drop from the flow bench overrides the drop and keeps the exponent of the geometry', () => {
    const { airDrop } = measuredConfig(
      withMeasures({}, { airDrop: '3 inH2O', airDropAtFlow: 0.2, airDropAtDensity: 1.2 }),
    ).core;
    // NIST SP 811: 1 inH2O = 249.0889 Pa
    near(airDropTimesDensity(airDrop, 0.2) / 1.2, 3 * 249.0889, 5e-4);
    const exponent = (law: typeof airDrop) =>
      Math.log(airDropTimesDensity(law, 0.3) / airDropTimesDensity(law, 0.2)) / Math.log(1.5);
    near(exponent(airDrop), exponent(plain.airDrop), 1e-9);
    expect(exponent(airDrop)).not.toBeCloseTo(1.8, 2);
  });

  it('metal, coolant and the factor of the coolant drop', () => {
    const { metalHeatCapacity, coolantVolume, coolantDrop } = measuredConfig(
      withMeasures({}, { metalHeatCapacity: 2.6, coolantVolume: 0.8, coolantDropFactor: 30 }),
    ).core;
    expect(metalHeatCapacity).toBeCloseTo(2600, 9);
    expect(coolantVolume).toBeCloseTo(0.0008, 12);
    expect(coolantDropAt(coolantDrop, 13e-3 / 60)).toBeCloseTo(30 * 13 ** 1.8, 6);
  });

  it('one measured heat scales the air side so that the core gives just that heat', () => {
    const point = {
      measuredHeat: 18,
      measuredAirFlow: 0.25,
      measuredAirInlet: 120,
      measuredCoolantFlow: 20,
      measuredCoolantInlet: 35,
    };
    const { airConductance, coolantConductance, geometry } = measuredConfig(withMeasures({}, point)).core;
    if (geometry === undefined) throw new Error('no geometry');
    const { density, heatCapacity } = geometry.coolant;
    const flow = (20e-3 / 60) * density;
    const UA = 1 / (1 / conductanceAt(airConductance, 0.25) + 1 / conductanceAt(coolantConductance, flow));
    // Exact cross-flow, and the heat capacity of dry air at 50 degC, 1006 J/(kg K) (Lemmon et al., 2000).
    const rate = 0.25 * 1006;
    const heat = rate * 85 * exactEffectiveness(UA / rate, rate / (flow * heatCapacity));
    near(heat, 18e3, 1e-3);
    expect(geometry.factors.airConductance).not.toBeCloseTo(1, 2);
  });

  it('shows what follows among the values, at flows of its own', () => {
    const { scenario } = parseScenario(estateWith(withMeasures()));
    const core = scenario?.values.core;
    if (core === undefined) throw new Error('no scenario');
    near(core.airConductance, conductanceAt(plain.airConductance, core.airConductanceAtFlow), 1e-9);
    near(core.metalHeatCapacity, plain.metalHeatCapacity / 1e3, 1e-12);
    near(core.airDrop * 1e3 * core.airDropAtDensity, airDropTimesDensity(plain.airDrop, core.airDropAtFlow), 1e-9);
  });

  it.each([1, 0.5, 0.2])('shows the values of the whole core where %f of its face is open', (exposedShare) => {
    const { scenario } = parseScenario(estateWith(withMeasures({}, { exposedShare })));
    const shown = scenario?.values.core;
    if (shown === undefined) throw new Error('no scenario');
    near(shown.airConductance, conductanceAt(plain.airConductance, shown.airConductanceAtFlow), 1e-9);
    near(shown.coolantConductance, conductanceAt(plain.coolantConductance, shown.coolantConductanceAtFlow), 1e-9);
    const drop = airDropTimesDensity(plain.airDrop, shown.airDropAtFlow) / shown.airDropAtDensity;
    near(shown.airDrop * 1e3, drop, 1e-9);

    const { airConductance, airConductanceAtFlow, coolantConductance, coolantConductanceAtFlow } = shown;
    const { airDrop, airDropAtFlow, airDropAtDensity, metalHeatCapacity, coolantVolume } = shown;
    const typed = measuredConfig(
      withMeasures(
        {},
        {
          ...{ exposedShare, airConductance, airConductanceAtFlow, coolantConductance, coolantConductanceAtFlow },
          ...{ airDrop, airDropAtFlow, airDropAtDensity, metalHeatCapacity, coolantVolume },
        },
      ),
    ).core;
    const followed = measuredConfig(withMeasures({}, { exposedShare })).core;
    for (const flow of [0.05, 0.15, 0.3]) {
      near(conductanceAt(typed.airConductance, flow), conductanceAt(followed.airConductance, flow), 5e-4);
      near(conductanceAt(typed.coolantConductance, flow), conductanceAt(followed.coolantConductance, flow), 5e-4);
      near(airDropTimesDensity(typed.airDrop, flow), airDropTimesDensity(followed.airDrop, flow), 5e-4);
    }
    near(typed.metalHeatCapacity, followed.metalHeatCapacity, 1e-9);
    near(typed.coolantVolume, followed.coolantVolume, 1e-9);
  });

  it('a share of the face acts as a core as much narrower', () => {
    const half = measuredConfig(withMeasures({}, { exposedShare: 0.5 })).core;
    near(conductanceAt(half.airConductance, 0.1), 0.5 * conductanceAt(plain.airConductance, 0.2), 1e-3);
    near(airDropTimesDensity(half.airDrop, 0.1), airDropTimesDensity(plain.airDrop, 0.2), 1e-3);
    near(conductanceAt(half.coolantConductance, 0.2), 0.5 * conductanceAt(plain.coolantConductance, 0.2), 1e-9);
  });
});

describe('coolant over the layers', () => {
  const sheetsWith = (changes: Readonly<Record<string, unknown>>) =>
    measuredConfig(withMeasures({ headerVolume: 0.05, ...changes })).core.layout.sheets;
  const sum = (values: readonly number[]): number => values.reduce((all, each) => all + each, 0);

  it('is even in one group', () => {
    expect(sheetsWith({})).toEqual([{ layers: 1, flow: 1 }]);
  });

  it('falls from the ports on where they are at one end, and rises to the far end where they are opposite', () => {
    const [U, Z] = ['same end', 'opposite ends'].map((portsAt) => sheetsWith({ sheets: 4, portsAt }));
    for (const sheets of [U, Z]) {
      expect(sum(sheets.map(({ layers }) => layers))).toBeCloseTo(1, 12);
      expect(sum(sheets.map(({ flow }) => flow))).toBeCloseTo(1, 9);
    }
    const flows = (sheets: typeof U) => sheets.map(({ flow }) => flow);
    expect(flows(U)).toEqual(flows(U).toSorted((a, b) => b - a));
    expect(flows(Z)).toEqual(flows(Z).toSorted((a, b) => a - b));
    // The published rule that Z-headers spread more than U-headers: Bajura and Jones, 1976.
    const spread = (sheets: typeof U) => Math.max(...flows(sheets)) - Math.min(...flows(sheets));
    expect(spread(Z)).toBeGreaterThan(1.2 * spread(U));
  });

  it('becomes even as the headers grow', () => {
    const flows = sheetsWith({ sheets: 4, portsAt: 'opposite ends', headerVolume: 5 }).map(({ flow }) => flow);
    for (const flow of flows) near(flow, 0.25, 2e-3);
  });
});

describe('marks of a core by its measures', () => {
  it('say what lies beyond the data of its laws, and nothing for one that lies inside', () => {
    const { marks } = measuredConfig(withMeasures()).core;
    expect(marks).toContainEqual(
      'Air side of the core: core depth 80 mm, published 15.6 to 57.4 mm: extrapolated in depth, +-20 %.',
    );
    expect(marks).toContainEqual(
      'Coolant side of the core: turbulators over plain tube, no published law; taken as 2.5 times the plain tube.',
    );
    expect(marks.join('\n')).toMatch(/louvre Reynolds number \S+ at the lowest flow, published 100 to 3000/);
    const inside = measuredConfig(withMeasures({ depth: 50, tubes: 'plain' })).core.marks;
    expect(inside.filter((mark) => !mark.includes('Reynolds'))).toEqual([]);
  });
});
