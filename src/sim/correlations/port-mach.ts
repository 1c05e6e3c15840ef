import { requirePositive, requireWithin } from '../errors.ts';

/**
 * Mach number of air in a passage, from the mass that goes through it.
 *
 *     M = m/(rho A a) = m/(A p) sqrt( R T/g )
 *
 * Temperature and pressure are those of the stream in the passage. Those of a wide room before it are a little higher:
 * at M 0.3 by 1.8 and 6.4 %, which makes M come out 5 % too low there. A result of 1 or more says that the passage
 * cannot take this flow.
 *
 * Range: flow from 0; perfect gas, one velocity over the passage.
 *
 * @param massFlow - through the passage [kg/s]
 * @param area - free area of the passage [m2]
 * @param temperature - of the air [K]
 * @param pressure - absolute [Pa]
 * @param gasConstant - of the air [J/(kg K)]
 * @param heatCapacityRatio - g, of the air [-]
 * @returns Mach number [-]
 * @throws {OutOfRangeError} when massFlow is below 0 or another is not above 0
 *
 * @example
 * portMach(0.3, 0.002, 400, 180000, 287.05, 1.4) // 0.2386511
 *
 * [1] NACA Report 1135, Equations, Tables, and Charts for Compressible Flow, 1953.
 */
export function portMach(
  massFlow: number,
  area: number,
  temperature: number,
  pressure: number,
  gasConstant: number,
  heatCapacityRatio: number,
): number {
  requireWithin('mass flow', massFlow, 0, Number.POSITIVE_INFINITY);
  requirePositive('area', area);
  requirePositive('temperature', temperature);
  requirePositive('pressure', pressure);
  requirePositive('gas constant', gasConstant);
  requirePositive('ratio of heat capacities', heatCapacityRatio);
  return (massFlow / (area * pressure)) * Math.sqrt((gasConstant * temperature) / heatCapacityRatio);
}

/**
 * What a gauge in the wall of a passage reads too little: full less static pressure, over the static.
 *
 *     q/p = ( 1 + (g - 1)/2 M^2 )^( g/(g - 1) ) - 1
 *
 * Range: M from 0 to 1; perfect gas, no loss.
 *
 * @param mach - Mach number [-]
 * @param heatCapacityRatio - g, of the air [-]
 * @returns dynamic pressure over static pressure [-]
 * @throws {OutOfRangeError} when mach is outside 0 to 1 or g is not above 1
 *
 * @example
 * dynamicPressureShare(0.3, 1.4) // 0.0644
 *
 * [1] NACA Report 1135, Equations, Tables, and Charts for Compressible Flow, 1953, equation 44.
 */
export function dynamicPressureShare(mach: number, heatCapacityRatio: number): number {
  requireWithin('Mach number', mach, 0, 1);
  requirePositive('ratio of heat capacities less 1', heatCapacityRatio - 1);
  const g = heatCapacityRatio;
  return (1 + ((g - 1) / 2) * mach * mach) ** (g / (g - 1)) - 1;
}
