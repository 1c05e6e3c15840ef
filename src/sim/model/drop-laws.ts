import { readLogTable } from '../kernels/log-table.ts';
import { type AirDropLaw, COOLANT_DROP_EXPONENT, type CoolantDropLaw } from '../scenario/config/exchangers.ts';

/**
 * Air drop of the core times the mean density of the air in it, without the acceleration.
 *
 * @param law - test point with exponent, or a curve
 * @param flow - kg/s through the core, not below 0
 * @returns Pa kg/m3
 */
export function airDropTimesDensity(law: AirDropLaw, flow: number): number {
  if (law.kind === 'power') return law.drop * (flow / law.atFlow) ** law.exponent * law.atDensity;
  return flow === 0 || law.dropTimesDensity[0] === 0 ? 0 : readLogTable(law.flow, law.dropTimesDensity, flow);
}

/**
 * Coolant drop of a core or an exchanger.
 *
 * @param law - factor on flow^1.8, or a curve
 * @param flow - m3/s, not below 0
 * @returns Pa
 */
export function coolantDropAt(law: CoolantDropLaw, flow: number): number {
  if (law.kind === 'power') return law.factor * flow ** COOLANT_DROP_EXPONENT;
  return flow === 0 ? 0 : readLogTable(law.flow, law.drop, flow);
}
