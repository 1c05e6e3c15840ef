import type { RestStudy } from '../../sim/index.ts';
import { briefly } from '../format.ts';
import { roundStep, ticksBetween } from '../time/ticks.ts';
import { LevelLines, placeOn, UprightLines } from './scales.tsx';

const [WIDTH, HEIGHT] = [420, 250];
const [LEFT, RIGHT, TOP, FOOT] = [30, 20, 26, 40];
/** Seconds at which a line stands, as far as they are on the axis. */
const SECONDS = [1, 3, 10, 30, 100, 300, 1000, 3000, 10000];

/** Pulls against the rest between them, on an axis of equal ratios: rests from seconds to half an hour all have room. */
export function RestFigure({ study: { pulls, now, needed, curve } }: { readonly study: RestStudy }) {
  const [shortest, longest] = [curve[0].rest, curve[curve.length - 1].rest];
  const place = placeOn([Math.log(shortest), Math.log(longest)], LEFT + 5, WIDTH - RIGHT);
  const x = (seconds: number) => place(Math.log(seconds));
  const y = placeOn([0, pulls], HEIGHT - FOOT, TOP);
  const points = [...curve, ...(needed === undefined ? [] : [{ rest: needed, count: pulls }])].sort(
    (a, b) => a.rest - b.rest,
  );
  return (
    <figure class="rest-figure">
      <svg
        viewBox={`0 0 ${WIDTH} ${HEIGHT}`}
        role="img"
        aria-label="Pulls that stay under the limit against the rest between them; the table beside it has the numbers"
      >
        <LevelLines
          ticks={ticksBetween(0, pulls, Math.max(1, roundStep(pulls / 5)))}
          place={y}
          write={briefly}
          from={LEFT}
          to={WIDTH - RIGHT}
        />
        <UprightLines
          ticks={SECONDS.filter((seconds) => seconds >= shortest && seconds <= longest)}
          place={x}
          write={String}
          from={HEIGHT - FOOT}
          to={TOP}
        />
        {needed !== undefined && <line class="mark" x1={x(needed)} x2={x(needed)} y1={TOP} y2={HEIGHT - FOOT} />}
        <polyline
          class="curve"
          points={points.map(({ rest, count }) => `${x(rest).toFixed(1)},${y(count).toFixed(1)}`).join(' ')}
        />
        {curve.map(({ rest, count }) =>
          rest === now ? (
            <rect key={rest} class="own" x={x(rest) - 5} y={y(count) - 5} width={10} height={10} />
          ) : (
            <circle key={rest} class="point" cx={x(rest)} cy={y(count)} r={2.5} />
          ),
        )}
        <text x={0} y={12}>
          Pulls
        </text>
        <text x={WIDTH - RIGHT} y={HEIGHT - 6} text-anchor="end">
          Rest between pulls, s
        </text>
      </svg>
      <figcaption class="small">
        Square: the rest of the cycle.{needed !== undefined && ' Dashed: the shortest that does.'}
      </figcaption>
    </figure>
  );
}
