import { requirePositive, requireWithin } from '../errors.ts';

/** The most transfer units that are computed; no exchanger has so many. */
export const MOST_UNITS = 100;
/** The terms fall off like the tail of a Poisson distribution of mean NTU. */
const MOST_TERMS = 400;

/**
 * Effectiveness of a single-pass cross-flow exchanger, both fluids unmixed.
 *
 *     eps = 1/(Cr NTU) sum over n >= 0 of P(n, NTU) P(n, Cr NTU),  P(n, x) = 1 - e^-x sum over m <= n of x^m/m!
 *
 * Range: 0 < NTU <= 100, 0 < Cr <= 1; to rounding. Both fluids unmixed is also what the cells of the model come to.
 *
 * @param NTU - conductance over the smaller heat capacity rate [-]
 * @param Cr - smaller over larger heat capacity rate [-]
 * @returns heat over the most that could pass [-]
 * @throws {OutOfRangeError} when NTU or Cr is outside the range above
 *
 * @example
 * effectivenessCrossflow(5.445544554, 0.3451811346) // 0.948590
 *
 * [1] J. L. Mason, Heat transfer in crossflow, Proc. 2nd U.S. National Congress of Applied Mechanics, 1955, 801-803.
 */
export function effectivenessCrossflow(NTU: number, Cr: number): number {
  requireWithin('transfer units', NTU, 0, MOST_UNITS);
  requirePositive('transfer units', NTU);
  requireWithin('ratio of heat capacity rates', Cr, 0, 1);
  requirePositive('ratio of heat capacity rates', Cr);
  // Tails from their sums: what is left after the terms so far.
  let [termA, termB] = [Math.exp(-NTU), Math.exp(-Cr * NTU)];
  let [tailA, tailB] = [-Math.expm1(-NTU), -Math.expm1(-Cr * NTU)];
  let sum = tailA * tailB;
  for (let n = 1; n < MOST_TERMS; n++) {
    termA *= NTU / n;
    termB *= (Cr * NTU) / n;
    tailA -= termA;
    tailB -= termB;
    if (tailA < 1e-17 || tailB < 1e-17) break;
    sum += tailA * tailB;
  }
  return sum / (Cr * NTU);
}

/**
 * Effectiveness of a single-pass cross-flow exchanger, both fluids unmixed, of any conductance.
 *
 *     eps(NTU, Cr),  NTU = UA/C_min up to 100,  Cr = C_min/C_max
 *
 * Range: any UA, C1 and C2 above 0. Beyond 100 transfer units, which no exchanger has, it is the effectiveness at 100:
 * at most 6 % short of 1, where both rates are equal.
 *
 * @param conductance - UA, from fluid to fluid [W/K]
 * @param rate - C1, heat capacity rate of one fluid [W/K]
 * @param otherRate - C2, of the other [W/K]
 * @returns heat over the most that could pass [-]
 * @throws {OutOfRangeError} when one of them is not above 0
 *
 * @example
 * effectivenessOfConductance(55000, 29260, 10100) // 0.948590
 *
 * [1] J. L. Mason, Heat transfer in crossflow, Proc. 2nd U.S. National Congress of Applied Mechanics, 1955, 801-803.
 */
export function effectivenessOfConductance(conductance: number, rate: number, otherRate: number): number {
  const smaller = Math.min(rate, otherRate);
  return effectivenessCrossflow(Math.min(MOST_UNITS, conductance / smaller), smaller / Math.max(rate, otherRate));
}
