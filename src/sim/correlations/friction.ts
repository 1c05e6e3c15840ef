import { requirePositive, requireWithin } from '../errors.ts';

/**
 * Darcy friction factor of a round bore at any Reynolds number, after Churchill.
 *
 *     f = 8 [ (8/Re)^12 + (A + B)^(-3/2) ]^(1/12)
 *     A = ( 2.457 ln( 1/((7/Re)^0.9 + 0.27 e/D) ) )^16,  B = (37530/Re)^16
 *
 * Range: Re > 0, 0 <= e/D <= 0.05. One smooth formula through laminar, transitional and turbulent flow: 64/Re below
 * about Re 2000, and above 4000 within 2 % (e/D to 0.001) or 3 % (rougher) of Colebrook's law. Between it dips just
 * after 2000 and rises to 3000, as the flow itself does, and the pressure drop still rises with every flow. Sources
 * differ most there; a blend of 64/Re and Colebrook moves the flow of a loop by a few per cent.
 *
 * @param Re - Reynolds number on the bore [-]
 * @param relativeRoughness - wall roughness over bore, e/D [-]
 * @returns Darcy friction factor [-], four times Fanning's
 * @throws {OutOfRangeError} when Re is not above 0 or relativeRoughness is outside the range above
 *
 * @example
 * frictionChurchill(10000, 0) // 0.0310021306526
 *
 * [1] S. W. Churchill, Friction-factor equation spans all fluid-flow regimes, Chem. Eng. 84(24), 1977, 91-92.
 */
export function frictionChurchill(Re: number, relativeRoughness: number): number {
  requirePositive('Reynolds number', Re);
  requireWithin('relative roughness', relativeRoughness, 0, 0.05);
  // Powers as products, roots and exp of log: half the time of `**`, in the innermost loop of the hydraulics.
  const power = Math.exp(0.9 * Math.log(7 / Re));
  const A = sixteenthPower(-2.457 * Math.log(power + 0.27 * relativeRoughness));
  const B = sixteenthPower(37530 / Re);
  const sum = A + B;
  const laminar = fourthPower(8 / Re);
  return 8 * Math.cbrt(Math.sqrt(Math.sqrt(laminar * laminar * laminar + 1 / (sum * Math.sqrt(sum)))));
}

function fourthPower(x: number): number {
  const x2 = x * x;
  return x2 * x2;
}

function sixteenthPower(x: number): number {
  return fourthPower(fourthPower(x));
}
