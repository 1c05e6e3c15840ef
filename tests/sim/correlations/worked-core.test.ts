import { describe, expect, test } from 'vitest';
import { airFilm, airPressureDrop } from '../../../src/sim/correlations/core-air-side.ts';
import { coolantFilm, coolantPressureDrop } from '../../../src/sim/correlations/core-coolant-side.ts';
import { coreGeometry } from '../../../src/sim/correlations/core-geometry.ts';
import { exactEffectiveness } from '../../support/mason.ts';
import { WORKED_AIR as AIR, WORKED_COOLANT as COOLANT, WORKED_CORES as CORES } from '../../support/worked-cores.ts';

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
