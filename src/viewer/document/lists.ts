import { isList, type JsonObject, type JsonValue } from '../../sim/index.ts';
import { valueAt } from '../state/cars.ts';
import type { Changes } from '../state/session.ts';

/** Items of a list of the file; one without its brackets is a list of one. */
export function itemsAt(document: JsonObject, list: string): readonly JsonValue[] {
  const items = valueAt(document, list);
  if (items === undefined) return [];
  return isList(items) ? items : [items];
}

/** One item more, the same as that at `index`, right behind it. */
export function itemAdded(document: JsonObject, list: string, index: number): Changes {
  const items = itemsAt(document, list);
  return { [list]: items.toSpliced(index + 1, 0, items[index]) };
}

/** The list without the item at `index`. */
export function itemRemoved(document: JsonObject, list: string, index: number): Changes {
  return { [list]: itemsAt(document, list).toSpliced(index, 1) };
}

/** The group of a pump in the file. */
export type PumpKey = 'pump' | 'secondPump';

/** A point of a pump curve, in file units. */
export interface Point {
  readonly flow: number;
  readonly pressure: number;
}

/** One item more, halfway from that at `index` to the next; from the last, halfway back to the one before. */
export function halfwayAdded<Key extends string>(
  document: JsonObject,
  list: string,
  items: readonly Readonly<Record<Key, number>>[],
  index: number,
): Changes {
  const first = Math.min(index, items.length - 2);
  const [from, to] = [items[first], items[first + 1]];
  const between = Object.fromEntries((Object.keys(from) as Key[]).map((key) => [key, (from[key] + to[key]) / 2]));
  return { [list]: itemsAt(document, list).toSpliced(first + 1, 0, between) };
}

/** The same air at both ends of the core, to start from. */
export const EVEN_AIR = [
  { place: 0, speed: 1 },
  { place: 1, speed: 1 },
];

/** The parabola through shut-off pressure and free flow as points, in file units. */
export function curveFromParabola(pump: PumpKey, shutOffPressure: number, freeFlow: number): Changes {
  const points = [0, 0.25, 0.5, 0.75, 1].map((share) => ({
    flow: Number((share * freeFlow).toPrecision(4)),
    pressure: Number(((1 - share ** 2) * shutOffPressure).toPrecision(4)),
  }));
  return { [`${pump}.curve`]: points, [`${pump}.shutOffPressure`]: undefined, [`${pump}.freeFlow`]: undefined };
}

/** The two figures that a curve by points begins and ends with; its ends are run on straight where they must be. */
export function parabolaFromCurve(pump: PumpKey, points: readonly Point[]): Changes {
  const [first, second] = points;
  const [last, before] = [points[points.length - 1], points[points.length - 2]];
  const along = (a: typeof first, b: typeof first) => (b.flow - a.flow) / (a.pressure - b.pressure);
  const shutOff = first.pressure + first.flow / along(first, second);
  const freeFlow = last.flow + last.pressure * along(before, last);
  return {
    [`${pump}.curve`]: undefined,
    [`${pump}.shutOffPressure`]: Number(shutOff.toPrecision(4)),
    [`${pump}.freeFlow`]: Number(freeFlow.toPrecision(4)),
  };
}

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
