import type { ConductanceLaw } from '../scenario/config.ts';

/**
 * Conductance of one side of an exchanger at a mass flow, scaled from a test point.
 *
 *     UA = reference max[(m/atFlow)^exponent, floor]
 *
 * @param law - test point, exponent and the share that free convection keeps
 * @param massFlow - kg/s, the sign does not matter
 * @returns W/K
 */
export function conductanceAt(law: ConductanceLaw, massFlow: number): number {
  const scale = massFlow === 0 ? 0 : (Math.abs(massFlow) / law.atFlow) ** law.exponent;
  return law.reference * Math.max(scale, law.floor);
}
