import type { Config } from '../scenario/config.ts';

/** What the shop's own table says at one charge temperature. */
export interface ChargeTableReading {
  /** change of spark advance, degrees of crank; negative is retard */
  readonly spark: number;
  /** share */
  readonly torque: number;
  /** this temperature is beyond either end of the table: the row there is held */
  readonly isBeyond: boolean;
}

/**
 * Spark and torque by the user's own table, straight lines between its rows, its ends held beyond them. Absent
 * without a table: there is no universal figure to put in its place.
 *
 * @param chargeTemperature - K
 */
export function readChargeTable(
  table: Config['chargeTable'],
  chargeTemperature: number,
): ChargeTableReading | undefined {
  if (table === undefined || table.length === 0) return undefined;
  const last = table[table.length - 1];
  const isBeyond = chargeTemperature < table[0].chargeTemperature || chargeTemperature > last.chargeTemperature;
  const above = table.findIndex((row) => row.chargeTemperature >= chargeTemperature);
  if (above === 0) return { spark: table[0].spark, torque: table[0].torque, isBeyond };
  if (above < 0) return { spark: last.spark, torque: last.torque, isBeyond };
  const [from, to] = [table[above - 1], table[above]];
  const share = (chargeTemperature - from.chargeTemperature) / (to.chargeTemperature - from.chargeTemperature);
  return {
    spark: from.spark + share * (to.spark - from.spark),
    torque: from.torque + share * (to.torque - from.torque),
    isBeyond,
  };
}
