import { requirePositive, requireWithin } from '../errors.ts';
import { markOf, type Ranged } from './range-mark.ts';

/** (2/(1 + 22 Pr))^(1/6) Gz^(1/2), the part of the growing velocity profile in the formulas of the VDI Heat Atlas. */
function growingProfile(Gz: number, Pr: number): number {
  return (2 / (1 + 22 * Pr)) ** (1 / 6) * Math.sqrt(Gz);
}

/**
 * Mean Nusselt number of laminar flow in a flat passage with two walls of uniform temperature, velocity and temperature
 * developing together, after Gnielinski in the VDI Heat Atlas.
 *
 *     Nu^3 = 7.541^3 + (1.841 Gz^(1/3))^3 + [ (2/(1 + 22 Pr))^(1/6) Gz^(1/2) ]^3
 *
 * Range: laminar (Re < 2200, not checked here), 0.1 < Pr < 1000. Parallel plates: a flat tube of finite width has less
 * once the profile is developed (by 5 % at a gap of one fiftieth of the width, 14 % at one sixteenth). Without its last
 * term within 3.7 % of the exact plate solution.
 *
 * @param Gz - Graetz number, Re Pr times hydraulic diameter over length [-]
 * @param Pr - Prandtl number [-]
 * @returns Nusselt number on the hydraulic diameter (twice the gap), with its mark [-]
 * @throws {OutOfRangeError} when Gz or Pr is not above 0
 *
 * @example
 * nusseltDevelopingGap(100, 20).value // 10.38542638
 *
 * [1] VDI Heat Atlas, 2nd ed., Springer, 2010, section G2.
 */
export function nusseltDevelopingGap(Gz: number, Pr: number): Ranged {
  requirePositive('Graetz number', Gz);
  requirePositive('Prandtl number', Pr);
  const sum = 7.541 ** 3 + 1.841 ** 3 * Gz + growingProfile(Gz, Pr) ** 3;
  return { value: Math.cbrt(sum), range: markOf([['Prandtl number [-]', Pr, 0.1, 1000]]) };
}

/**
 * Mean Nusselt number of laminar flow in a rectangular duct at any Prandtl number, velocity and temperature developing
 * together, after Muzychka and Yovanovich: for the ports of a multi-port tube.
 *
 *     z = L/(sqrtA Re_sqrtA Pr),  e = short side over long side
 *     f Re = 12/( sqrt(e) (1 + e) (1 - 192 e/pi^5 tanh(pi/(2 e))) ),  on sqrtA
 *     long = ( (1.5 x 0.409 (f Re/z)^(1/3))^5 + (3.24 f Re/(8 sqrt(pi) e^(1/10)))^5 )^(1/5)
 *     short = 2 F/sqrt(z),  F = 0.564/(1 + (1.664 Pr^(1/6))^(9/2))^(2/9)
 *     Nu = (short^m + long^m)^(1/m),  m = 2.27 + 1.65 Pr^(1/3)
 *
 * Range: 0.1 <= e <= 1, Pr 0.1 to 1000, laminar (Re <= 2300 on the hydraulic diameter, not checked here); the authors
 * find 15 % against the data. For coolant it lies within 7.5 % of a numerical solution with developed velocity while
 * the length is at most 0.1, and 8 to 13 % high in longer, developed ducts; for air up to 18 % above the fit to
 * Wibulswas.
 *
 * @param aspect - short side over long side, e [-]
 * @param length - length over hydraulic diameter, Reynolds and Prandtl number, as in the other laws here [-]
 * @param Pr - Prandtl number [-]
 * @returns Nusselt number on the hydraulic diameter, with its mark [-]
 * @throws {OutOfRangeError} when aspect is not within 0 to 1 and above 0, or length or Pr not above 0
 *
 * @example
 * nusseltDevelopingPort(1, 0.01, 1000).value // 6.9156
 *
 * [1] Y. S. Muzychka, M. M. Yovanovich, Laminar forced convection heat transfer in the combined entry region of
 *     non-circular ducts, J. Heat Transfer 126, 2004, 54-61.
 */
export function nusseltDevelopingPort(aspect: number, length: number, Pr: number): Ranged {
  requirePositive('short side over long side', aspect);
  requireWithin('short side over long side', aspect, 0, 1);
  requirePositive('dimensionless length of a duct', length);
  requirePositive('Prandtl number', Pr);
  const e = aspect;
  // Dh = sqrtA 2 sqrt(e)/(1 + e); Re and length scale with it, so z goes with its square.
  const scale = (2 * Math.sqrt(e)) / (1 + e);
  const z = length * scale ** 2;
  const friction = 12 / (Math.sqrt(e) * (1 + e) * (1 - ((192 * e) / Math.PI ** 5) * Math.tanh(Math.PI / (2 * e))));
  const developed = (3.24 * friction) / (8 * Math.sqrt(Math.PI) * e ** 0.1);
  const long = ((1.5 * 0.409 * Math.cbrt(friction / z)) ** 5 + developed ** 5) ** 0.2;
  const short = (2 * 0.564) / ((1 + (1.664 * Pr ** (1 / 6)) ** 4.5) ** (2 / 9) * Math.sqrt(z));
  const m = 2.27 + 1.65 * Math.cbrt(Pr);
  return {
    value: long * (1 + (short / long) ** m) ** (1 / m) * scale,
    range: markOf([
      ['short side over long side [-]', e, 0.1, 1],
      ['Prandtl number [-]', Pr, 0.1, 1000],
    ]),
  };
}
