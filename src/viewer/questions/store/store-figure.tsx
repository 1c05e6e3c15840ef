import { type StoreStudy, storeSize } from '../../../sim/index.ts';
import { acrossChart, Chart, Curve, Limit, UprightMark, upChart } from '../../figures/chart.tsx';
import { roundRange, ticksOn } from '../../figures/ticks.ts';
import { named, scaleOf } from '../../format.ts';
import type { UnitChoice } from '../../state/display.ts';

/** Peaks that move by less are drawn as hardly moving, in the unit of the page. */
const LEAST_SPAN = 5;

interface StoreFigureProps {
  readonly study: StoreStudy;
  /** charge temperature limit [K] */
  readonly limit: number;
  readonly units: UnitChoice;
}

/** Peak of the last pull against the size of the store; what is enough, and where the curve bends, are marked. */
export function StoreFigure({ study, limit, units }: StoreFigureProps) {
  const { kind, pulls, smallest, knee } = study;
  const { fromSi, unit } = scaleOf('degC', units);
  const points = study.points.filter(({ lastPeak }) => Number.isFinite(lastPeak));
  if (points.length < 2) return null;
  const inSize = (size: number) => (kind === 'tank' ? 1000 * size : size);
  const heights = [...points.map(({ lastPeak }) => fromSi(lastPeak)), fromSi(limit)];
  const [lowest, highest] = [Math.min(...heights), Math.max(...heights)];
  const range = roundRange(lowest, Math.max(highest, lowest + LEAST_SPAN), 5);
  const ends = [inSize(points[0].size), inSize(points[points.length - 1].size)] as const;
  const [x, y] = [acrossChart(ends), upChart(range)];
  const places = points.map(({ size, lastPeak }) => ({ x: x(inSize(size)), y: y(fromSi(lastPeak)) }));
  return (
    <figure>
      <Chart
        up={{
          title: named(`Peak of pull ${pulls}`, unit),
          ticks: ticksOn(range, 5),
          place: y,
        }}
        across={{
          title: kind === 'tank' ? 'Coolant in the tank, L' : 'Ice, kg',
          ticks: ticksOn(ends, 6),
          place: x,
        }}
      >
        <Limit at={y(fromSi(limit))} />
        {smallest !== undefined && <UprightMark x={x(inSize(smallest))} />}
        {knee !== undefined && <UprightMark x={x(inSize(knee))} isFaint />}
        <Curve points={places} />
        {places.map((place) => (
          <circle key={place.x} class="point" cx={place.x} cy={place.y} r={3} />
        ))}
      </Chart>
      <figcaption class="small">
        {smallest !== undefined &&
          `Dashed: ${storeSize(kind, smallest)}, the least that makes ${pulls === 1 ? 'the pull' : `all ${pulls}`}. `}
        {knee !== undefined && `Dotted: ${storeSize(kind, knee)}, past which each step more buys less.`}
      </figcaption>
    </figure>
  );
}
