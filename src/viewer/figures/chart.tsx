import type { ComponentChildren } from 'preact';
import { LevelLines, placeOn, UprightLines } from './scales.tsx';
import { roundStep, ticksBetween, tickWriter } from './ticks.ts';

/** Paper of a chart [px]: its size, and how far the axes stand from its edges. */
export const CHART = { width: 420, height: 250, left: 44, right: 14, top: 26, foot: 40 } as const;
const BOTTOM = CHART.height - CHART.foot;
const RIGHT = CHART.width - CHART.right;
/** Marks at the ends of the axis across do not stand on its corners. */
const INSIDE = 6;

/** Places values of a range across a chart. */
export const acrossChart = (range: readonly [number, number]) => placeOn(range, CHART.left + INSIDE, RIGHT - INSIDE);

/** Places values of a range up a chart. */
export const upChart = (range: readonly [number, number]) => placeOn(range, BOTTOM, CHART.top);

/** Whole numbers from nothing to so many pulls, few enough to be read. */
export const pullTicks = (pulls: number): number[] => ticksBetween(0, pulls, Math.max(1, roundStep(pulls / 5)));

interface Axis {
  /** with its unit */
  readonly title: string;
  readonly ticks: readonly number[];
  readonly place: (value: number) => number;
}

interface ChartProps {
  readonly up: Axis;
  readonly across: Axis;
  /** what lies on the axes */
  readonly children: ComponentChildren;
}

/** Two axes with their lines and titles; the numbers of what lies on them stand in a table beside it. */
export function Chart({ up, across, children }: ChartProps) {
  return (
    <svg
      class="chart"
      viewBox={`0 0 ${CHART.width} ${CHART.height}`}
      role="img"
      aria-label={`${up.title} against ${across.title}; the table beside it has the numbers`}
    >
      <LevelLines ticks={up.ticks} place={up.place} write={tickWriter(up.ticks)} from={CHART.left} to={RIGHT} />
      <UprightLines
        ticks={across.ticks}
        place={across.place}
        write={tickWriter(across.ticks)}
        from={BOTTOM}
        to={CHART.top}
      />
      {children}
      <text x={0} y={12}>
        {up.title}
      </text>
      <text x={RIGHT} y={CHART.height - 6} text-anchor="end">
        {across.title}
      </text>
    </svg>
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
export function Curve({ points }: { readonly points: readonly { readonly x: number; readonly y: number }[] }) {
  return <polyline class="curve" points={points.map(({ x, y }) => `${x.toFixed(1)},${y.toFixed(1)}`).join(' ')} />;
}
