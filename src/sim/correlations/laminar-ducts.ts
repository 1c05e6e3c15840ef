import { requirePositive, requireWithin } from '../errors.ts';
import { markOf, type Ranged } from './range-mark.ts';

/**
 * Friction of developed laminar flow in a rectangular duct, polynomial of Shah and London.
 *
 *     f Re = 24 (1 - 1.3553 a + 1.9467 a^2 - 1.7012 a^3 + 0.9564 a^4 - 0.2537 a^5)
 *
 * Range: 0 <= a <= 1, which is every rectangle; within 0.06 % of the exact series.
 *
 * @param aspect - short side over long side, a [-]
 * @returns Fanning friction factor times Reynolds number, both on the hydraulic diameter [-]
 * @throws {OutOfRangeError} when aspect is outside the range above
 *
 * @example
 * frictionLaminarRectangle(0.5) // 15.557325
 *
 * [1] R. K. Shah, A. L. London, Laminar Flow Forced Convection in Ducts, Academic Press, 1978, table 42.
 */
export function frictionLaminarRectangle(aspect: number): number {
  requireWithin('short side over long side', aspect, 0, 1);
  const a = aspect;
  return 24 * (1 + a * (-1.3553 + a * (1.9467 + a * (-1.7012 + a * (0.9564 + a * -0.2537)))));
}

/**
 * Nusselt number of developed laminar flow in a rectangular duct of uniform wall temperature, after Shah and London.
 *
 *     Nu = 7.541 (1 - 2.610 a + 4.970 a^2 - 5.119 a^3 + 2.702 a^4 - 0.548 a^5)
 *
 * Range: 0 <= a <= 1, which is every rectangle; within 0.25 % of the exact values.
 *
 * @param aspect - short side over long side, a [-]
 * @returns Nusselt number on the hydraulic diameter [-]
 * @throws {OutOfRangeError} when aspect is outside the range above
 *
 * @example
 * nusseltLaminarRectangle(0.25) // 4.435315738
 *
 * [1] R. K. Shah, A. L. London, Laminar Flow Forced Convection in Ducts, Academic Press, 1978, table 42.
 */
export function nusseltLaminarRectangle(aspect: number): number {
  requireWithin('short side over long side', aspect, 0, 1);
  const a = aspect;
  return 7.541 * (1 + a * (-2.61 + a * (4.97 + a * (-5.119 + a * (2.702 + a * -0.548)))));
}

/** What Shah's formula of developing friction needs of a duct. */
export interface DevelopingDuct {
  /** Fanning friction factor times Reynolds number of developed flow [-] */
  readonly developed: number;
  /** extra head of the whole inlet, K at infinite length [-] */
  readonly extraHead: number;
  /** fitted constant C [-] */
  readonly constant: number;
}

/**
 * Apparent friction of laminar flow that develops from a flat profile, after Shah.
 *
 *     f Re = 3.44/sqrt(x) + ( K/(4 x) + (f Re)dev - 3.44/sqrt(x) )/( 1 + C/x^2 )
 *
 * It holds the friction and the momentum that the growing profile takes, as a mean over the length: the inlet adds
 * nothing more than the loss coefficient of a flat profile.
 *
 * Range: x > 0, laminar. Published K and C: round bore 1.25 and 0.000212, parallel plates 0.674 and 0.000029, square
 * 1.43 and 0.00029, rectangle 1:2 1.28 and 0.00021, 1:5 0.931 and 0.000076.
 *
 * @param length - length over hydraulic diameter and Reynolds number, x [-]
 * @param duct - developed friction and the two constants [-]
 * @returns apparent Fanning friction factor times Reynolds number [-]
 * @throws {OutOfRangeError} when length is not above 0
 *
 * @example
 * frictionDeveloping(0.01, { developed: 24, extraHead: 0.674, constant: 0.000029 }) // 39.4
 *
 * [1] R. K. Shah, A correlation for laminar hydrodynamic entry length solutions for circular and noncircular ducts,
 *     J. Fluids Eng. 100, 1978, 177-179.
 */
export function frictionDeveloping(length: number, duct: DevelopingDuct): number {
  requirePositive('dimensionless length of a duct', length);
  const entry = 3.44 / Math.sqrt(length);
  return entry + (duct.extraHead / (4 * length) + duct.developed - entry) / (1 + duct.constant / length ** 2);
}

/**
 * Mean Nusselt number of laminar flow in a rectangular duct, velocity and temperature developing together: a fit to the
 * tables of Wibulswas, uniform wall temperature.
 *
 *     Nu = Nu_dev + R A x^-B
 *     A = 0.0357122 + 0.460756236 a - 0.314865737 a^2
 *     B = 0.801105912 - 0.419264242 a + 0.293641181 a^2 (a >= 0.167),  0.940362 - 1.20213174 a below
 *     R = 0.6847 + 0.3153 (Pr/0.72)^-1.26544559 (Pr > 0.72),  1.68 - 0.68 (Pr/0.72)^0.32 below
 *
 * Range: x >= 0.01, 0 <= a <= 1, Pr 0.1 to 10; good to about 3 %, and meant for air: at Pr without bound it falls up
 * to 12 % below the exact solution with developed velocity.
 *
 * @param aspect - short side over long side, a [-]
 * @param length - length over hydraulic diameter, Reynolds and Prandtl number, x [-]
 * @param Pr - Prandtl number [-]
 * @returns Nusselt number on the hydraulic diameter, with its mark [-]
 * @throws {OutOfRangeError} when aspect is outside 0 to 1, or length or Pr not above 0
 *
 * @example
 * nusseltDevelopingRectangle(0.25, 0.02, 0.7).value // 6.5970654
 *
 * [1] P. Wibulswas, Laminar flow heat transfer in non-circular ducts, thesis, London, 1966; fit of G. F. Nellis,
 *     S. A. Klein, Heat Transfer, Cambridge, 2009.
 */
export function nusseltDevelopingRectangle(aspect: number, length: number, Pr: number): Ranged {
  requirePositive('dimensionless length of a duct', length);
  requirePositive('Prandtl number', Pr);
  const a = aspect;
  const A = 0.0357122 + 0.460756236 * a - 0.314865737 * a * a;
  const B = a >= 0.167 ? 0.801105912 - 0.419264242 * a + 0.293641181 * a * a : 0.940362 - 1.20213174 * a;
  const ratio = Pr / 0.72;
  const R = ratio > 1 ? 0.6847 + 0.3153 * ratio ** -1.26544559 : 1.68 - 0.68 * ratio ** 0.32;
  return {
    value: nusseltLaminarRectangle(a) + R * A * length ** -B,
    range: markOf([
      ['length over Dh Re Pr [-]', length, 0.01, Number.POSITIVE_INFINITY],
      ['Prandtl number [-]', Pr, 0.1, 10],
    ]),
  };
}

/** Shah's K and C by short side over long side; the first is of parallel plates. */
const ENTRY_OF_RECTANGLES = [
  { aspect: 0, extraHead: 0.674, constant: 0.000029 },
  { aspect: 0.2, extraHead: 0.931, constant: 0.000076 },
  { aspect: 0.5, extraHead: 1.28, constant: 0.00021 },
  { aspect: 1, extraHead: 1.43, constant: 0.00029 },
];

/**
 * What frictionDeveloping needs of a rectangular duct: the polynomial of developed friction, K and C by straight lines
 * between the four published shapes.
 *
 * Range: 0 <= a <= 1, which is every rectangle.
 *
 * @param aspect - short side over long side, a [-]
 * @returns developed friction and the two constants [-]
 * @throws {OutOfRangeError} when aspect is outside the range above
 *
 * @example
 * developingRectangle(0.5).extraHead // 1.28
 *
 * [1] R. K. Shah, A. L. London, Laminar Flow Forced Convection in Ducts, Academic Press, 1978.
 */
export function developingRectangle(aspect: number): DevelopingDuct {
  const developed = frictionLaminarRectangle(aspect);
  const above = Math.max(
    1,
    ENTRY_OF_RECTANGLES.findIndex((shape) => shape.aspect >= aspect),
  );
  const low = ENTRY_OF_RECTANGLES[above - 1];
  const high = ENTRY_OF_RECTANGLES[above];
  const share = (aspect - low.aspect) / (high.aspect - low.aspect);
  return {
    developed,
    extraHead: low.extraHead + share * (high.extraHead - low.extraHead),
    constant: low.constant + share * (high.constant - low.constant),
  };
}
