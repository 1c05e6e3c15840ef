import type { RestStudy } from '../../../sim/index.ts';
import { acrossChart, Chart, Curve, pullTicks, UprightMark, upChart } from '../../figures/chart.tsx';

/** Seconds at which a line stands, as far as they are on the axis. */
const SECONDS = [1, 3, 10, 30, 100, 300, 1000, 3000, 10000];
/** Half the width of the mark of the cycle's own rest [px]. */
const HALF = 5;

/** Pulls against the rest between them, on an axis of equal ratios: rests from seconds to half an hour all have room. */
export function RestFigure({ study: { pulls, now, needed, curve } }: { readonly study: RestStudy }) {
  const [shortest, longest] = [curve[0].rest, curve[curve.length - 1].rest];
  const place = acrossChart([Math.log(shortest), Math.log(longest)]);
  const x = (seconds: number) => place(Math.log(seconds));
  const y = upChart([0, pulls]);
  const points = [...curve, ...(needed === undefined ? [] : [{ rest: needed, count: pulls }])].sort(
    (a, b) => a.rest - b.rest,
  );
  return (
    <figure class="rest-figure">
      <Chart
        up={{ title: 'Pulls', ticks: pullTicks(pulls), place: y }}
        across={{
          title: 'Rest between pulls, s',
          ticks: SECONDS.filter((seconds) => seconds >= shortest && seconds <= longest),
          place: x,
        }}
      >
        {needed !== undefined && <UprightMark x={x(needed)} />}
        <Curve points={points.map(({ rest, count }) => ({ x: x(rest), y: y(count) }))} />
        {curve.map(({ rest, count }) =>
          rest === now ? (
            <rect key={rest} class="own" x={x(rest) - HALF} y={y(count) - HALF} width={2 * HALF} height={2 * HALF} />
          ) : (
            <circle key={rest} class="point" cx={x(rest)} cy={y(count)} r={2.5} />
          ),
        )}
      </Chart>
      <figcaption class="small">
        Square: the rest of the cycle.{needed !== undefined && ' Dashed: the shortest that does.'}
      </figcaption>
    </figure>
  );
}
