import { useRef } from 'preact/hooks';
import type { ComparedCar } from '../../../../workers/questions.ts';
import type { Comparison } from '../../../sim/index.ts';
import { Axes, acrossPaper, upPaper } from '../../figures/axes.tsx';
import { polylineOf } from '../../figures/scales.tsx';
import { roundRange, ticksBetween, ticksOn, timeStep } from '../../figures/ticks.ts';
import { useSize } from '../../figures/use-size.ts';
import { briefly, clockTime, named, onScreen, scaleOf } from '../../format.ts';
import type { UnitChoice } from '../../state/display.ts';
import { thinned } from './thinned.ts';

/** The picture of the charge, and below it that of the differences on the same time axis. */
const CHARGE = { height: 270, left: 44, right: 20, top: 18, foot: 12 };
const DIFFERENCE = { ...CHARGE, height: 160, top: 22, foot: 34 };
/** Until the page has told how wide it is. */
const USUAL_WIDTH = 640;
/** Room that a time on the axis takes, with what parts it from the next. */
const ROOM_FOR_TIME = 70;
/** Stretches of a trace, of which two points each are drawn. */
const STRETCHES = 200;

/** The line of a car as it stands beside its name. */
export const LineSample = ({ line }: { readonly line: number }) => (
  <svg class="line-sample" viewBox="0 0 36 10" aria-hidden="true">
    <line class={`car-line car-${line}`} x1={1} x2={35} y1={5} y2={5} />
  </svg>
);

interface CompareFigureProps {
  readonly cars: readonly Pick<ComparedCar, 'name' | 'line' | 'config'>[];
  readonly comparison: Comparison;
  readonly units: UnitChoice;
}

/** Charge temperature of all cars over time with the limit, and below it each of the others less the first. */
export function CompareFigure({ cars, comparison: { time, charge }, units }: CompareFigureProps) {
  const host = useRef<HTMLElement>(null);
  const width = useSize(host).value.width || USUAL_WIDTH;
  const [above, below] = [
    { ...CHARGE, width },
    { ...DIFFERENCE, width },
  ];
  const { fromSi, unit } = scaleOf('degC', units);
  const { fromSi: differenceFromSi, unit: differenceUnit } = scaleOf('K', units);
  const end = time[time.length - 1];
  const x = acrossPaper(above, [0, end]);
  const traces = charge.map((values) => thinned(time, values.map(fromSi), STRETCHES));
  const changes = charge.slice(1).map((values) =>
    thinned(
      time,
      values.map((value, k) => differenceFromSi(value - charge[0][k])),
      STRETCHES,
    ),
  );
  const limits = [...new Set(cars.map(({ config }) => fromSi(config.limit.chargeTemperature)))];
  const charges = rangeOf([...traces.flatMap((points) => points.map(([, value]) => value)), ...limits], 6);
  const differences = rangeOf([0, ...changes.flatMap((points) => points.map(([, value]) => value))], 4);
  const [y, yDifference] = [upPaper(above, charges), upPaper(below, differences)];
  const line = (points: (typeof traces)[number], place: (value: number) => number): string =>
    polylineOf(points.map(([at, value]) => ({ x: x(at), y: place(value) })));
  return (
    <figure class="compare-figure" ref={host}>
      <Axes
        paper={above}
        label="Charge temperature of the cars over time; the table has the peaks"
        up={{ ticks: ticksOn(charges, 5), place: y, write: briefly }}
      >
        {limits.map((limit) => (
          <g key={limit}>
            <line class="mark" x1={above.left} x2={above.width - above.right} y1={y(limit)} y2={y(limit)} />
            <text class="strong" x={above.left + 6} y={y(limit) - 5}>
              Limit
            </text>
          </g>
        ))}
        {traces.map((points, k) => (
          <polyline key={cars[k].name} class={`car-line car-${cars[k].line}`} points={line(points, y)} />
        ))}
        <text x={above.left} y={11}>
          {named('Charge temperature', unit)}
        </text>
      </Axes>
      <Axes
        paper={below}
        label={`Charge temperature less that of ${cars[0].name}; the table has the differences of the peaks`}
        up={{ ticks: ticksOn(differences, 4), place: yDifference, write: briefly }}
        across={{
          title: 'Minutes and seconds from the start',
          ticks: ticksBetween(0, end, timeStep((ROOM_FOR_TIME / width) * end)),
          place: x,
          write: (at) => clockTime(at, 0),
        }}
      >
        <line class="zero" x1={below.left} x2={below.width - below.right} y1={yDifference(0)} y2={yDifference(0)} />
        {changes.map((points, k) => (
          <polyline
            key={cars[k + 1].name}
            class={`car-line car-${cars[k + 1].line}`}
            points={line(points, yDifference)}
          />
        ))}
        <text x={below.left} y={11}>
          {named(`Less ${onScreen(cars[0].name)}`, differenceUnit)}
        </text>
      </Axes>
      <ul class="line-names">
        {cars.map(({ name, line: each }) => (
          <li key={name}>
            <LineSample line={each} /> {onScreen(name)}
          </li>
        ))}
      </ul>
    </figure>
  );
}

const rangeOf = (values: readonly number[], most: number): readonly [number, number] =>
  roundRange(
    values.reduce((low, value) => Math.min(low, value)),
    values.reduce((high, value) => Math.max(high, value)),
    most,
  );
