import { type Config, readChargeTable } from '../../sim/index.ts';
import { fixed } from '../format.ts';

/** Said behind what the table does not reach to. */
const BEYOND = ' (table ends)';

/**
 * Changes of spark [deg of crank] and torque [%] that the shop's own table has for a pull's peak, as text.
 *
 * @param peak - charge temperature [K]
 */
export function byTable(
  table: NonNullable<Config['chargeTable']>,
  peak: number,
): { readonly spark: string; readonly torque: string } {
  const reading = readChargeTable(table, peak);
  if (reading === undefined) return { spark: '', torque: '' };
  const beyond = reading.isBeyond ? BEYOND : '';
  return {
    spark: `${fixed(reading.spark, 1)}${beyond}`,
    torque: `${fixed(100 * reading.torque, 1)}${beyond}`,
  };
}
