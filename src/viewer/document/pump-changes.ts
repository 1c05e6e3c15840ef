import type { Changes } from '../state/session.ts';

/** The group of a pump in the file. */
export type PumpKey = 'pump' | 'secondPump';

/** A point of a pump curve, in file units. */
export interface Point {
  readonly flow: number;
  readonly pressure: number;
}

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
