import { describe, expect, it } from 'vitest';
import { coolantFilm, coolantSplit } from '../../../src/sim/correlations/core-coolant-side.ts';
import {
  accelerationOf,
  airPoint,
  coolantPoint,
  standingConductance,
} from '../../../src/sim/correlations/core-curves.ts';
import { coreGeometry } from '../../../src/sim/correlations/core-geometry.ts';
import {
  effectivenessCrossflow,
  effectivenessOfConductance,
} from '../../../src/sim/correlations/crossflow-effectiveness.ts';
import { exactEffectiveness } from '../../support/mason.ts';
import { WORKED_AIR, WORKED_COOLANT, WORKED_CORES, WORKED_SHAPE } from '../../support/worked-cores.ts';

const near = (found: number, expected: number, share: number): void =>
  expect(Math.abs(found / expected - 1), `${found} for ${expected}`).toBeLessThan(share);

describe.each(WORKED_CORES)('the curves of a core with $name', (worked) => {
  const geometry = coreGeometry(worked.shape);
  const air = airPoint(geometry, WORKED_AIR);

  it('meet conductance and whole air drop of the reference chain', () => {
    near(air.conductance, worked.air.conductance, 1e-8);
    const { densityIn, densityOut } = worked;
    // At one pressure density goes with 1/T: mean of the inverse, and (T_out - T_in)/T_mean, from the two densities.
    const inverse = (1 / densityIn + 1 / densityOut) / 2;
    const cooling = (1 / densityOut - 1 / densityIn) / inverse;
    const acceleration = accelerationOf(geometry) * WORKED_AIR.massFlow ** 2 * cooling;
    near((air.dropTimesDensity + acceleration) * inverse, worked.airDrop.total, 1e-8);
  });

  it('meet the whole resistance of the reference chain with the wall on the coolant side', () => {
    const coolant = coolantPoint(geometry, WORKED_COOLANT, 'U');
    near(1 / (1 / air.conductance + 1 / coolant.conductance), worked.UA, 1e-8);
    near(coolant.drop.total - coolant.drop.headers, worked.coolantDrop.total, 1e-8);
  });
});

describe('standing coolant', () => {
  it('keeps the Nusselt number 7.541 of parallel plates (VDI Heat Atlas, section G2), whatever turbulators do in flow', () => {
    const plain = coreGeometry(WORKED_SHAPE);
    const tubes = {
      kind: 'turbulated',
      heatTransferFactor: 3,
      frictionFactor: 5,
      exponent: 0.6,
      atReynolds: 500,
    } as const;
    const film = (7.541 * WORKED_COOLANT.conductivity * plain.coolant.area) / plain.coolant.hydraulicDiameter;
    const whole = 1 / (1 / film + plain.metal.wallResistance);
    near(standingConductance(plain, WORKED_COOLANT), whole, 2e-3);
    near(standingConductance(coreGeometry({ ...WORKED_SHAPE, tubes }), WORKED_COOLANT), whole, 2e-3);
  });
});

describe('coolant over two layers', () => {
  it('splits as the momentum balance of a U-header does in closed form', () => {
    // Two layers, ports at one end: (a + b)(2 x - 1) = H/2 with a and b the drops of the whole flow through one layer
    // and H its dynamic head in the header (Bajura and Jones, 1976, with the coefficients 1 and 2).
    const geometry = coreGeometry({ ...WORKED_SHAPE, coolantLayers: 2, finLayers: 3, headerVolume: 4e-6 });
    const film = coolantFilm(geometry, WORKED_COOLANT);
    const { friction, ends } = coolantPoint(geometry, WORKED_COOLANT, 'U').drop.tubes;
    const head = (WORKED_COOLANT.density * (WORKED_COOLANT.volumeFlow / geometry.coolant.headerArea) ** 2) / 2;
    const [first] = coolantSplit(geometry, WORKED_COOLANT, film, 'U').shares;
    near(first, 0.5 + head / 4 / (2 * friction + 4 * ends), 1e-9);
    expect(first).toBeGreaterThan(0.51);
  });
});

describe('cross-flow, both fluids unmixed', () => {
  it.each([
    [0.05, 0.3],
    [1, 1],
    [5.445544554, 0.3451811346],
    [18, 0.9],
  ])('NTU %d, Cr %d as by the terms summed from the small end', (NTU, Cr) => {
    near(effectivenessCrossflow(NTU, Cr), exactEffectiveness(NTU, Cr), 1e-12);
  });

  it('meets the printed example of 0.948590 (Som, Introduction to Heat Transfer, 10.7, exact)', () => {
    expect(effectivenessCrossflow(55000 / 10100, 10100 / 29260)).toBeCloseTo(0.94859, 6);
  });

  it('follows from a conductance and two rates in either order', () => {
    expect(effectivenessOfConductance(55000, 10100, 29260)).toBeCloseTo(0.94859, 6);
    expect(effectivenessOfConductance(55000, 29260, 10100)).toBeCloseTo(0.94859, 6);
  });

  it('grows no more past 100 transfer units, where equal rates leave 1/sqrt(pi NTU)', () => {
    // The exact sum is the mean of the smaller of two Poisson counts of mean NTU, over NTU; many counts are normal.
    near(1 - effectivenessOfConductance(1e9, 1e3, 1e3), 1 / Math.sqrt(100 * Math.PI), 2e-3);
    expect(effectivenessOfConductance(1e9, 1e3, 1e3)).toBe(effectivenessOfConductance(1e5, 1e3, 1e3));
  });
});
