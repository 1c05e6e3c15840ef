import { readLogTable } from '../kernels/log-table.ts';
import type { ConductanceLaw } from '../scenario/config/exchangers.ts';

/**
 * Conductance of one side of an exchanger at a mass flow.
 *
 *     power: UA = reference max[(m/atFlow)^exponent, floor]
 *     table: UA = max[curve(m), floor]
 *
 * @param law - test point with exponent, or a curve, and what free convection keeps
 * @param massFlow - kg/s, the sign does not matter
 * @returns W/K
 */
export function conductanceAt(law: ConductanceLaw, massFlow: number): number {
  if (law.kind === 'table') {
    return massFlow === 0 ? law.floor : Math.max(readLogTable(law.flow, law.value, Math.abs(massFlow)), law.floor);
  }
  const scale = massFlow === 0 ? 0 : (Math.abs(massFlow) / law.atFlow) ** law.exponent;
  return law.reference * Math.max(scale, law.floor);
}
