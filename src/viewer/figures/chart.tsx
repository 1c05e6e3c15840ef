import type { ComponentChildren } from 'preact';
import { Axes, type Axis, acrossPaper, upPaper } from './axes.tsx';
import { polylineOf, type Spot } from './scales.tsx';
import { roundStep, ticksBetween } from './ticks.ts';

/** Paper of a chart. */
export const CHART = { width: 420, height: 250, left: 44, right: 14, top: 26, foot: 40 } as const;
const BOTTOM = CHART.height - CHART.foot;
const RIGHT = CHART.width - CHART.right;
/** Marks at the ends of the axis across do not stand on its corners. */
const INSIDE = 6;

/** Places values of a range across a chart. */
export const acrossChart = (range: readonly [number, number]) => acrossPaper(CHART, range, INSIDE);

/** Places values of a range up a chart. */
export const upChart = (range: readonly [number, number]) => upPaper(CHART, range);

/** Whole numbers from nothing to so many pulls, few enough to be read. */
export const pullTicks = (pulls: number): number[] => ticksBetween(0, pulls, Math.max(1, roundStep(pulls / 5)));

type TitledAxis = Axis & { readonly title: string };

interface ChartProps {
  readonly up: TitledAxis;
  readonly across: TitledAxis;
  /** what lies on the axes */
  readonly children: ComponentChildren;
}

/** One quantity against another, on the paper of a chart; the numbers of what lies on it stand in a table beside it. */
export function Chart({ up, across, children }: ChartProps) {
  const label = `${up.title} against ${across.title}; the table beside it has the numbers`;
  return (
    <Axes paper={CHART} label={label} class="chart" up={up} across={across}>
      {children}
    </Axes>
  );
}

/** The limit over the whole width, at its place up the chart. */
export function Limit({ at }: { readonly at: number }) {
  return (
    <>
      <line class="limit" x1={CHART.left} x2={RIGHT} y1={at} y2={at} />
      <text class="strong" x={RIGHT} y={at - 5} text-anchor="end">
        limit
      </text>
    </>
  );
}

/** An upright line over the whole height: dashed, or faint and dotted. */
export function UprightMark({ x, isFaint }: { readonly x: number; readonly isFaint?: true }) {
  return <line class={isFaint ? 'mark faint' : 'mark'} x1={x} x2={x} y1={CHART.top} y2={BOTTOM} />;
}

/** A curve through places on the chart. */
export function Curve({ points }: { readonly points: readonly Spot[] }) {
  return <polyline class="curve" points={polylineOf(points)} />;
}
