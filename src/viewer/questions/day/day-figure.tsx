import './day-figure.css';
import type { DayStudy } from '../../../sim/index.ts';
import { acrossChart, Chart, Curve, pullTicks, UprightMark, upChart } from '../../figures/chart.tsx';
import { ticksOn } from '../../figures/ticks.ts';
import { degrees, named, scaleOf } from '../../format.ts';
import type { UnitChoice } from '../../state/display.ts';

/** Half the width of a mark and of the cross-bars of a band. */
const HALF = 5;

interface DayFigureProps {
  readonly study: DayStudy;
  readonly units: UnitChoice;
}

/** Pulls against the temperature outside, with both days on it and the hottest on which all are made. */
export function DayFigure({ study, units }: DayFigureProps) {
  const { curve, pulls, hottest, typed, day } = study;
  const { fromSi, unit } = scaleOf('degC', units);
  if (curve.length < 2) return null;
  const ends = [fromSi(curve[0].temperature), fromSi(curve[curve.length - 1].temperature)] as const;
  const x = acrossChart(ends);
  const y = upChart([0, pulls]);
  return (
    <figure class="day-figure">
      <Chart
        up={{ title: 'Pulls', ticks: pullTicks(pulls), place: y }}
        across={{
          title: named('Outside', unit),
          ticks: ticksOn(ends, 6),
          place: x,
        }}
      >
        <Curve
          points={withDayAndEdge(study).map(({ temperature: at, count }) => ({ x: x(fromSi(at)), y: y(count) }))}
        />
        {curve.map(({ temperature: at, count }) => (
          <circle key={at} class="point" cx={x(fromSi(at))} cy={y(count)} r={2.5} />
        ))}
        {hottest.kind === 'found' && <UprightMark x={x(fromSi(hottest.temperature))} />}
        <DayMark which="typed" day={typed} pulls={pulls} x={x(fromSi(typed.temperature))} y={y} />
        <DayMark which="there" day={day} pulls={pulls} x={x(fromSi(day.temperature))} y={y} />
      </Chart>
      <figcaption class="small">
        Square: as typed. Dot: that day. The bars through them are 5{'\u00a0'}% less and 5{'\u00a0'}% more core
        conductance.
        {hottest.kind === 'found' &&
          ` Dashed: ${degrees(hottest.temperature, units)}, the hottest day with ${pulls === 1 ? 'the pull' : `all ${pulls}`}.`}
      </figcaption>
    </figure>
  );
}

/** The curve with that day on it, and its edge: all pulls on the hottest day, what is left of them a tenth above it. */
export function withDayAndEdge({ curve, day, hottest, pulls }: DayStudy): DayStudy['curve'] {
  const points = [...curve];
  if (day.pullsRun >= pulls) points.push({ temperature: day.temperature, count: Math.min(day.count, pulls) });
  if (hottest.kind === 'found') {
    const { temperature: edge, beyond } = hottest;
    points.push({ temperature: edge, count: pulls });
    if (beyond.kind === 'limit') points.push({ temperature: edge + 0.1, count: beyond.pull - 1 });
  }
  return points.sort((a, b) => a.temperature - b.temperature);
}

interface DayMarkProps {
  readonly which: 'typed' | 'there';
  readonly day: DayStudy['day'];
  readonly pulls: number;
  readonly x: number;
  readonly y: (count: number) => number;
}

/** One of the two days with its band; a session of fewer pulls than were asked about has no place here. */
function DayMark({ which, day: { count, pullsRun, lower, higher }, pulls, x, y }: DayMarkProps) {
  if (pullsRun < pulls) return null;
  const at = (made: number) => y(Math.min(made, pulls));
  return (
    <g class={`day-mark ${which}`}>
      <line x1={x} x2={x} y1={at(lower.count)} y2={at(higher.count)} />
      {[lower, higher].map((end, k) => (
        <line key={k} x1={x - HALF} x2={x + HALF} y1={at(end.count)} y2={at(end.count)} />
      ))}
      {which === 'typed' ? (
        <rect class="own" x={x - HALF} y={at(count) - HALF} width={2 * HALF} height={2 * HALF} />
      ) : (
        <circle cx={x} cy={at(count)} r={HALF - 1} />
      )}
    </g>
  );
}
