import type { OperatingPoint } from '../../sim/index.ts';
import { type Axis, acrossPaper, type Paper, upPaper } from '../figures/axes.tsx';
import { roundRange, ticksOn } from '../figures/ticks.ts';
import { named, scaleOf } from '../format.ts';
import type { UnitChoice } from '../state/display.ts';

type Point = readonly [x: number, y: number];

/** Above the axes is room for words. */
export const PAPER: Paper = { width: 360, height: 274, left: 40, right: 12, top: 76, foot: 34 };
const MOST_TICKS = 4;

/** Axes that hold several operating points, in the units shown. */
export interface CurveAxes {
  readonly flow: Axis;
  readonly pressure: Axis;
}

/** One pair of axes for all that are to be compared. */
export function axesFor(points: readonly OperatingPoint[], units: UnitChoice): CurveAxes {
  const flows = scaleOf('L/min', units);
  const pressures = scaleOf('kPa', units);
  const mostFlow = ({ rating, curves: { flow, pump } }: OperatingPoint): number =>
    Math.max(rating, ...flow.filter((_, k) => k === 0 || pump[k - 1] > 0));
  const across = roundRange(0, flows.fromSi(Math.max(...points.map(mostFlow))), MOST_TICKS);
  const up = roundRange(0, pressures.fromSi(Math.max(...points.flatMap(({ curves }) => curves.pump))), MOST_TICKS);
  return {
    flow: {
      title: named('Coolant flow', flows.unit),
      ticks: ticksOn(across, MOST_TICKS),
      place: acrossPaper(PAPER, across),
    },
    pressure: { ticks: ticksOn(up, MOST_TICKS), place: upPaper(PAPER, up) },
  };
}

/** Curves and marks of one operating point on the paper. */
export interface CurvesView {
  readonly pump: readonly Point[];
  readonly loop: readonly Point[];
  readonly crossing: Point;
  /** free flow on the label, on the axis of flow */
  readonly rating: Point;
  /** a straight line between the pump's two figures, and where it would meet the loop */
  readonly straight?: { readonly line: readonly [Point, Point]; readonly crossing: Point };
}

export function curvesView(point: OperatingPoint, axes: CurveAxes, units: UnitChoice): CurvesView {
  const flows = scaleOf('L/min', units);
  const pressures = scaleOf('kPa', units);
  const highest = pressures.toSi(axes.pressure.ticks[axes.pressure.ticks.length - 1]);
  const at = (flow: number, pressure: number): Point => [
    axes.flow.place(flows.fromSi(flow)),
    axes.pressure.place(pressures.fromSi(pressure)),
  ];
  const drawn = (pressure: readonly number[]): Point[] =>
    within(point.curves.flow, pressure, highest).map(([flow, height]) => at(flow, height));
  const { flow, pump, loop } = point.curves;
  const { straightLineFlow } = point;
  const [first, last] = [pump[0], flow[flow.length - 1]];
  return {
    pump: drawn(pump),
    loop: drawn(loop),
    crossing: at(point.flow, point.pressure),
    rating: at(point.rating, 0),
    ...(straightLineFlow !== undefined && {
      straight: {
        line: [at(0, first), at(last, 0)],
        crossing: at(straightLineFlow, first * (1 - straightLineFlow / last)),
      },
    }),
  };
}

/** Whether two operating points come to the same drawing. */
export const areDrawnAlike = (
  one: OperatingPoint,
  other: OperatingPoint,
  axes: CurveAxes,
  units: UnitChoice,
): boolean => JSON.stringify(curvesView(one, axes, units)) === JSON.stringify(curvesView(other, axes, units));

/** A curve as far as it stays between no pressure and the highest that is drawn, its last point on that edge. */
function within(flow: readonly number[], pressure: readonly number[], highest: number): Point[] {
  const points: Point[] = [];
  for (let k = 0; k < flow.length; k++) {
    const edge = pressure[k] > highest ? highest : pressure[k] < 0 ? 0 : undefined;
    if (edge === undefined) points.push([flow[k], pressure[k]]);
    else if (k === 0) return [];
    else {
      const share = (edge - pressure[k - 1]) / (pressure[k] - pressure[k - 1]);
      return [...points, [flow[k - 1] + share * (flow[k] - flow[k - 1]), edge]];
    }
  }
  return points;
}
