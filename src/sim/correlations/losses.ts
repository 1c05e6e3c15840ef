import { requirePositive, requireWithin } from '../errors.ts';

/**
 * Loss coefficient of a smooth 90 degree bend of round bore, after Rennels and Hudson.
 *
 *     K = f (pi/2) R/D + (0.10 + 2.4 f) sin 45 + 6.6 f ( sqrt(sin 45) + sin 45 ) / (R/D)^2
 *
 * On the velocity head in the bore of the bend. The friction along the bend is in it, so its length is not counted a
 * second time.
 *
 * Range: R/D 1 to 20, 0 < f <= 0.1; turbulent flow. In laminar flow a bend costs more than this.
 *
 * @param radiusRatio - radius of the centre line over bore, R/D [-]
 * @param friction - Darcy friction factor in the bore [-]
 * @returns loss coefficient on the bore of the bend [-]
 * @throws {OutOfRangeError} when radiusRatio or friction is outside the range above
 *
 * @example
 * bendLossRennels(1.5, 0.02) // 0.2425918809
 *
 * [1] D. C. Rennels, H. M. Hudson, Pipe Flow: A Practical and Comprehensive Guide, Wiley, 2012, chapter 15.
 */
export function bendLossRennels(radiusRatio: number, friction: number): number {
  requireWithin('bend radius over bore', radiusRatio, 1, 20);
  requirePositive('Darcy friction factor', friction);
  requireWithin('Darcy friction factor', friction, 0, 0.1);
  const sine = Math.SQRT1_2;
  const along = friction * (Math.PI / 2) * radiusRatio;
  return along + (0.1 + 2.4 * friction) * sine + (6.6 * friction * (Math.sqrt(sine) + sine)) / radiusRatio ** 2;
}

/**
 * Loss coefficient of a sudden expansion between round bores, after Borda and Carnot.
 *
 *     K = ( (D/d)^2 - 1 )^2
 *
 * On the velocity head in the LARGER bore D, which is the one entered; (1 - (d/D)^2)^2 is the same loss on the smaller.
 * It is a loss of total pressure: the static pressure rises across it.
 *
 * Range: d <= D; turbulent flow in the smaller bore (Re above about 3500).
 *
 * @param bore - smaller bore d, before the change [m]
 * @param nextBore - larger bore D, after the change [m]
 * @returns loss coefficient on the larger bore [-]
 * @throws {OutOfRangeError} when bore is not above 0 or nextBore is below bore
 *
 * @example
 * expansionLossBordaCarnot(0.016, 0.032) // 9
 *
 * [1] J.-C. Borda, 1766, and L. Carnot, 1803: momentum balance over a sudden enlargement.
 */
export function expansionLossBordaCarnot(bore: number, nextBore: number): number {
  requirePositive('bore before an expansion', bore);
  requireWithin('bore after an expansion', nextBore, bore, Number.POSITIVE_INFINITY);
  return ((nextBore / bore) ** 2 - 1) ** 2;
}

/**
 * Loss coefficient of a sudden contraction between round bores, after Rennels and Hudson.
 *
 *     K = 0.0696 (1 - b^5) L^2 + (L - 1)^2,  L = 1 + 0.622 (1 - 0.215 b^2 - 0.785 b^5),  b = d/D
 *
 * On the velocity head in the SMALLER bore d, which is the one entered.
 *
 * Range: d <= D; turbulent flow. Other published rules lie up to 0.12 lower over the bores of a coolant line.
 *
 * @param bore - larger bore D, before the change [m]
 * @param nextBore - smaller bore d, after the change [m]
 * @returns loss coefficient on the smaller bore [-]
 * @throws {OutOfRangeError} when nextBore is not above 0 or bore is below nextBore
 *
 * @example
 * contractionLossRennels(0.019, 0.012) // 0.4145376083
 *
 * [1] D. C. Rennels, H. M. Hudson, Pipe Flow: A Practical and Comprehensive Guide, Wiley, 2012, chapter 10.
 */
export function contractionLossRennels(bore: number, nextBore: number): number {
  requirePositive('bore after a contraction', nextBore);
  requireWithin('bore before a contraction', bore, nextBore, Number.POSITIVE_INFINITY);
  const b = nextBore / bore;
  const b5 = b ** 5;
  const L = 1 + 0.622 * (1 - 0.215 * b * b - 0.785 * b5);
  return 0.0696 * (1 - b5) * L * L + (L - 1) ** 2;
}
