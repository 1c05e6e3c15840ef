import { describe, expect, test } from 'vitest';
import { ALLOYS } from '../../../src/sim/correlations/alloys.ts';
import { airFilm, airPressureDrop } from '../../../src/sim/correlations/core-air-side.ts';
import { coolantFilm, coolantPressureDrop } from '../../../src/sim/correlations/core-coolant-side.ts';
import { type CoreShape, coreGeometry } from '../../../src/sim/correlations/core-geometry.ts';
import { exactEffectiveness } from '../../support/mason.ts';

/**
 * Two whole cores from geometry to effectiveness and both pressure drops. Every input is invented; every number was
 * computed from the laws named in the docstrings in 30-digit arithmetic, and a second time in double precision with the
 * open library fluids 1.0.22, areas by counting walls and the effectiveness by Bessel functions (1.7e-15 apart).
 */
const SHAPE: CoreShape = {
  depth: 0.06,
  length: 0.24,
  coolantLayers: 10,
  finLayers: 11,
  rows: 1,
  passes: 1,
  tubeHeight: 0.002,
  tubeWall: 0.0003,
  tubes: { kind: 'plain' },
  finHeight: 0.008,
  finPitch: 0.002,
  finThickness: 0.0001,
  fins: { kind: 'plain' },
  headerVolume: 0.0001,
  portBore: 0.019,
  alloy: ALLOYS['6061 annealed'],
};
const AIR = { massFlow: 0.25, heatCapacity: 1009, viscosity: 2.08e-5, conductivity: 0.03 };
const COOLANT = {
  volumeFlow: 0.015 / 60,
  density: 1060,
  heatCapacity: 3350,
  viscosity: 0.0022,
  conductivity: 0.395,
};

const CORES = [
  {
    name: 'plain fins of pitch 2.0 mm',
    shape: { ...SHAPE, finPitch: 0.002 },
    geometry: {
      stackHeight: 0.108,
      'air.faceArea': 0.02592,
      'air.channelWidth': 0.0019,
      'air.channelHeight': 0.0079,
      'air.freeArea': 0.0198132,
      'air.areaRatio': 0.7643981481,
      'air.area': 1.55232,
      'air.finArea': 1.25136,
      'air.hydraulicDiameter': 0.003063265306,
      'coolant.flowArea': 0.0008316,
      'coolant.area': 0.29184,
      'coolant.hydraulicDiameter': 0.002735526316,
      'metal.wallResistance': 5.787037037e-6,
    },
    air: {
      massVelocity: 12.61785073,
      reynoldsNumber: 1858.260787,
      heatTransferCoefficient: 69.72962232,
      finEfficiency: 0.9624265778,
      surfaceEfficiency: 0.9697112209,
      conductance: 104.9641485,
      colburn: 0.004316147314,
      friction: 0.02073550298,
    },
    airDrop: {
      entrance: 26.32272338,
      acceleration: -5.289575519,
      friction: 70.82560805,
      exit: -15.22650253,
      total: 76.63225338,
    },
    coolant: {
      velocity: 0.3006253006,
      reynoldsNumber: 396.2320574,
      nusseltNumber: 10.02841287,
      heatTransferCoefficient: 1448.066158,
      friction: 0.06059556187,
      conductance: 422.6036276,
    },
    coolantDrop: { friction: 1018.586881, ends: 71.84857924, ports: 618.0917964, total: 1708.527257 },
    UA: 84.03973611,
    effectiveness: 0.2723350693,
    airOutlet: 370.0015191,
    densityIn: 1.772205844,
    densityOut: 1.883080722,
  },
  {
    name: 'offset strips of 3 mm, pitch 1.5 mm',
    shape: { ...SHAPE, finPitch: 0.0015, fins: { kind: 'offset strip', stripLength: 0.003 } as const },
    geometry: {
      stackHeight: 0.108,
      'air.faceArea': 0.02592,
      'air.channelWidth': 0.0014,
      'air.channelHeight': 0.0079,
      'air.freeArea': 0.0194656,
      'air.areaRatio': 0.7509876543,
      'air.area': 2.024704,
      'air.finArea': 1.724096,
      'air.hydraulicDiameter': 0.002307371349,
      'coolant.flowArea': 0.0008316,
      'coolant.area': 0.29184,
      'coolant.hydraulicDiameter': 0.002735526316,
      'metal.wallResistance': 5.787037037e-6,
    },
    air: {
      massVelocity: 12.84316949,
      reynoldsNumber: 1424.709678,
      heatTransferCoefficient: 215.8581509,
      finEfficiency: 0.8907853344,
      surfaceEfficiency: 0.9070004464,
      conductance: 396.4035125,
      colburn: 0.01312685143,
      friction: 0.04845767829,
    },
    airDrop: {
      entrance: 28.59758342,
      acceleration: -10.37295955,
      friction: 221.4907325,
      exit: -15.46559992,
      total: 224.2497564,
    },
    coolant: {
      velocity: 0.3006253006,
      reynoldsNumber: 396.2320574,
      nusseltNumber: 10.02841287,
      heatTransferCoefficient: 1448.066158,
      friction: 0.06059556187,
      conductance: 422.6036276,
    },
    coolantDrop: { friction: 1018.586881, ends: 71.84857924, ports: 618.0917964, total: 1708.527257 },
    UA: 204.3004199,
    effectiveness: 0.5154799469,
    airOutlet: 349.3342045,
    densityIn: 1.772205844,
    densityOut: 1.994487567,
  },
];

/** Every named number of `expected` against the same name, or path of names, in `actual`. */
function expectEvery(actual: object, expected: Readonly<Record<string, number>>): void {
  for (const [path, value] of Object.entries(expected)) {
    const found = path.split('.').reduce((whole: unknown, key) => (whole as Record<string, unknown>)[key], actual);
    expect(Math.abs(Number(found) / value - 1), `${path} ${found}`).toBeLessThan(1e-8);
  }
}

describe.each(CORES)('core with $name', (core) => {
  const geometry = coreGeometry(core.shape);
  const air = airFilm(geometry, AIR);
  const coolant = coolantFilm(geometry, COOLANT);

  test('has the areas and diameters', () => expectEvery(geometry, core.geometry));

  test('has the air film, inside its published range', () => {
    expectEvery(air, core.air);
    expect(air.range).toBe('inside');
  });

  test('has the coolant film, laminar', () => {
    expectEvery(coolant, core.coolant);
    expect(coolant.regime).toBe('laminar');
    expect(coolant.range).toBe('inside');
  });

  test('has the conductance and effectiveness of the whole', () => {
    const UA = 1 / (1 / air.conductance + geometry.metal.wallResistance + 1 / coolant.conductance);
    const airRate = AIR.massFlow * AIR.heatCapacity;
    const coolantRate = COOLANT.volumeFlow * COOLANT.density * COOLANT.heatCapacity;
    const effectiveness = exactEffectiveness(UA / airRate, airRate / coolantRate);
    const airOutlet = 393.15 - effectiveness * (393.15 - 308.15);
    const { UA: ofReference, effectiveness: share, airOutlet: outlet } = core;
    expectEvery({ UA, effectiveness, airOutlet }, { UA: ofReference, effectiveness: share, airOutlet: outlet });
  });

  test('has the four parts of the air drop', () => {
    expectEvery(airPressureDrop(geometry, air, core.densityIn, core.densityOut), core.airDrop);
  });

  test('has the parts of the coolant drop', () => {
    const drop = coolantPressureDrop(geometry, COOLANT, coolant, 'U');
    // The reference leaves the headers out.
    expectEvery({ ...drop.tubes, ports: drop.ports, total: drop.total - drop.headers }, core.coolantDrop);
    expect(drop.total).toBeGreaterThan(core.coolantDrop.total);
  });
});
