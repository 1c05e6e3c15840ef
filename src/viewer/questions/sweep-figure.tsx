import type { SweepResult } from '../../sim/index.ts';
import { briefly } from '../format.ts';
import { roundRange, roundStep, ticksBetween } from '../time/ticks.ts';
import { LevelLines, placeOn, UprightLines } from './scales.tsx';
import type { ShownFigure, SweptNumber } from './sweep-shows.ts';

const [WIDTH, HEIGHT] = [420, 250];
const [LEFT, RIGHT, TOP, FOOT] = [44, 14, 26, 40];

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
  const [low, high] =
    figure.unit === '' ? [0, Math.max(1, ...heights)] : roundRange(Math.min(...heights), Math.max(...heights), 5);
  const places = points.map(({ at }) => at);
  const ends = [Math.min(...places), Math.max(...places)] as const;
  const x = placeOn(ends, LEFT + 6, WIDTH - RIGHT - 6);
  const y = placeOn([low, high], HEIGHT - FOOT, TOP);
  const step = roundStep((high - low) / 5);
  return (
    <svg
      class="sweep-figure"
      viewBox={`0 0 ${WIDTH} ${HEIGHT}`}
      role="img"
      aria-label={`${upTitle} against ${title}; the table beside it has the numbers`}
    >
      <LevelLines
        ticks={ticksBetween(low, high, figure.unit === '' ? Math.max(1, step) : step)}
        place={y}
        write={briefly}
        from={LEFT}
        to={WIDTH - RIGHT}
      />
      <UprightLines
        ticks={ticksBetween(...ends, roundStep((ends[1] - ends[0]) / 5))}
        place={x}
        write={briefly}
        from={HEIGHT - FOOT}
        to={TOP}
      />
      {limit !== undefined && (
        <>
          <line class="limit" x1={LEFT} x2={WIDTH - RIGHT} y1={y(limit)} y2={y(limit)} />
          <text class="strong" x={WIDTH - RIGHT} y={y(limit) - 5} text-anchor="end">
            limit {briefly(limit)}
          </text>
        </>
      )}
      {own >= ends[0] && own <= ends[1] && (
        <>
          <line class="mark" x1={x(own)} x2={x(own)} y1={TOP} y2={HEIGHT - FOOT} />
          <text x={x(own)} y={TOP - 4} text-anchor="middle">
            this car
          </text>
        </>
      )}
      {stretches(points).map((stretch) => (
        <polyline
          key={stretch[0].at}
          class="curve"
          points={stretch.map(({ at, up }) => `${x(at).toFixed(1)},${y(up).toFixed(1)}`).join(' ')}
        />
      ))}
      {points.map(({ at, up }) => up !== undefined && <circle key={at} class="point" cx={x(at)} cy={y(up)} r={3} />)}
      <text x={0} y={12}>
        {upTitle}
      </text>
      <text x={WIDTH - RIGHT} y={HEIGHT - 6} text-anchor="end">
        {title}
      </text>
    </svg>
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
