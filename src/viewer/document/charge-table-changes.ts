import type { JsonObject } from '../../sim/index.ts';
import type { Changes } from '../state/session.ts';
import { itemsAt } from './lists.ts';

/** A row of the charge table, in file units. */
export interface TableRow {
  readonly chargeTemperature: number;
  readonly spark: number;
  readonly torque: number;
}

/** How far a row behind the last one is proposed [K]. */
const BEYOND = 20;

/** One row more, halfway from that at `index` to the next; behind the last, on with its values. */
export function rowAdded(document: JsonObject, rows: readonly TableRow[], index: number): Changes {
  const [from, to] = [rows[index], rows[index + 1]];
  const between = (key: keyof TableRow): number => Number(((from[key] + to[key]) / 2).toPrecision(6));
  const row: TableRow =
    to === undefined
      ? { ...from, chargeTemperature: from.chargeTemperature + BEYOND }
      : { chargeTemperature: between('chargeTemperature'), spark: between('spark'), torque: between('torque') };
  return { chargeTable: itemsAt(document, 'chargeTable').toSpliced(index + 1, 0, { ...row }) };
}

/** A table to fill in: it claims nothing until a number is typed. */
export function tableStarted(limit: number): Changes {
  return {
    chargeTable: [limit, limit + BEYOND].map((chargeTemperature) => ({ chargeTemperature, spark: 0, torque: 0 })),
  };
}
