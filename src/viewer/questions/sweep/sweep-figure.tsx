import type { SweepResult } from '../../../sim/index.ts';
import { acrossChart, CHART, Chart, Curve, Limit, pullTicks, UprightMark, upChart } from '../../figures/chart.tsx';
import { roundRange, ticksOn } from '../../figures/ticks.ts';
import type { ShownFigure, SweptNumber } from './sweep-shows.ts';

interface SweepFigureProps {
  readonly side: SweptNumber;
  readonly results: readonly SweepResult[];
  readonly figure: ShownFigure;
  readonly upTitle: string;
  /** in the unit of the page; absent where it is no line */
  readonly limit?: number | undefined;
}

/** One figure of the car against one of its numbers. */
export function SweepFigure({ side, results, figure, upTitle, limit }: SweepFigureProps) {
  const { path, title, fromFile } = side;
  const own = fromFile(side.own);
  const points = results.map((result) => ({ at: fromFile(Number(result.changes[path])), up: figure.read(result) }));
  const heights = [...points.flatMap(({ up }) => up ?? []), ...(limit === undefined ? [] : [limit])];
  if (heights.length === 0) return <p>None of these cars has this figure.</p>;
  const isCount = figure.unit === '';
  const [low, high] = isCount
    ? [0, Math.max(1, ...heights)]
    : roundRange(Math.min(...heights), Math.max(...heights), 5);
  const places = points.map(({ at }) => at);
  const ends = [Math.min(...places), Math.max(...places)] as const;
  const x = acrossChart(ends);
  const y = upChart([low, high]);
  return (
    <Chart
      up={{
        title: upTitle,
        ticks: isCount ? pullTicks(high) : ticksOn([low, high], 5),
        place: y,
      }}
      across={{ title, ticks: ticksOn(ends, 5), place: x }}
    >
      {limit !== undefined && <Limit at={y(limit)} />}
      {own >= ends[0] && own <= ends[1] && (
        <>
          <UprightMark x={x(own)} />
          <text x={x(own)} y={CHART.top - 4} text-anchor="middle">
            this car
          </text>
        </>
      )}
      {stretches(points).map((stretch) => (
        <Curve key={stretch[0].at} points={stretch.map(({ at, up }) => ({ x: x(at), y: y(up) }))} />
      ))}
      {points.map(({ at, up }) => up !== undefined && <circle key={at} class="point" cx={x(at)} cy={y(up)} r={3} />)}
    </Chart>
  );
}

interface Point {
  readonly at: number;
  readonly up: number;
}

/** Points that follow one another without a gap: a line across a car that has no answer would promise one. */
export function stretches(points: readonly { readonly at: number; readonly up: number | undefined }[]): Point[][] {
  const found: Point[][] = [[]];
  for (const { at, up } of points) {
    if (up === undefined) found.push([]);
    else found[found.length - 1].push({ at, up });
  }
  return found.filter(({ length }) => length > 0);
}
