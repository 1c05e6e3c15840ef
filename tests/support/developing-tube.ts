import { markOf, type Ranged } from '../../src/sim/correlations/range-mark.ts';

/**
 * Mean Nusselt number of laminar flow in a round bore of uniform wall temperature, velocity and temperature developing
 * together: VDI Heat Atlas, 2nd ed., Springer, 2010, section G1, with Gz = Re Pr d/L.
 */
export function nusseltDevelopingTube(Gz: number, Pr: number): Ranged {
  const growing = (2 / (1 + 22 * Pr)) ** (1 / 6) * Math.sqrt(Gz);
  const sum = 3.66 ** 3 + 0.7 ** 3 + (1.615 * Math.cbrt(Gz) - 0.7) ** 3 + growing ** 3;
  return { value: Math.cbrt(sum), range: markOf([['Prandtl number [-]', Pr, 0.6, 1000]]) };
}
