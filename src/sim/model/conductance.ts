import { readLogTable } from '../kernels/log-table.ts';
import type { ConductanceLaw } from '../scenario/config.ts';

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

/** The same side with `factor` times the conductance at every flow. */
export function scaledConductance(law: ConductanceLaw, factor: number): ConductanceLaw {
  if (law.kind === 'power') return { ...law, reference: factor * law.reference };
  return { ...law, value: law.value.map((value) => factor * value), floor: factor * law.floor };
}

/** `count` such sides beside each other, the flow shared: count times the conductance at count times the flow. */
export function conductanceSideBySide(law: ConductanceLaw, count: number): ConductanceLaw {
  const scaled = scaledConductance(law, count);
  if (scaled.kind === 'power') return { ...scaled, atFlow: count * scaled.atFlow };
  return { ...scaled, flow: scaled.flow.map((flow) => count * flow) };
}
