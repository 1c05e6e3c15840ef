import { type GaugeReading, toSi } from '../../sim/index.ts';

/** What the car's own gauge showed at the end of the pulls, as typed. */
export interface Gauge {
  /** degC, pull by pull; null where nobody read */
  readonly byPull: readonly (number | null)[];
  /** what the last figure is worth [K] */
  readonly step: number;
}

export const NOTHING_READ: Gauge = { byPull: [], step: 1 };

/**
 * The gauge with another reading of one pull.
 *
 * @param place - of the pull, counted from 0
 * @param reading - degC; null takes it away
 */
export function withReading({ byPull, step }: Gauge, place: number, reading: number | null): Gauge {
  const length = Math.max(byPull.length, place + 1);
  return { byPull: Array.from({ length }, (_, k) => (k === place ? reading : (byPull[k] ?? null))), step };
}

/** The readings there are, in kelvin. */
export const readingsOf = ({ byPull }: Gauge): GaugeReading[] =>
  byPull.flatMap((reading, k) => (reading === null ? [] : [{ pull: k + 1, indicated: toSi(reading, 'degC') }]));
