import { useComputed } from '@preact/signals';
import type { OperatingPoint } from '../../sim/index.ts';
import type { PageProps } from '../page.tsx';
import type { Car } from '../state/cars.ts';
import { columnAt, momentAt } from '../state/clock.ts';
import { lineWords, type Moment, partName, partReading, percent, phasesPast } from './readings.ts';
import { layOutLoop, type Scheme } from './scheme.ts';

interface SchemeProps extends PageProps {
  readonly car: Car;
  readonly point: OperatingPoint;
  /** of the panel; 0 as long as that is not known */
  readonly width: number;
}

/** The loop drawn from its order: a ring of boxes, two ways beside each other where it divides. */
export function SchemeFigure({ car, point, width, session, clock, display }: SchemeProps) {
  const moment = useComputed((): Moment => {
    const { series, of } = session.inHandRun.value;
    if (series === undefined || of !== car || series.rowCount === 0) return { at: () => undefined, phase: undefined };
    const found = momentAt(series, clock.shown.value);
    return { at: (name) => columnAt(series, name, found), phase: found.phase?.name };
  });
  const { config } = car;
  const units = display.units.value;
  const past = phasesPast(config);
  const readingOf = (part: Parameters<typeof partReading>[0]) => partReading(part, config, point, moment.value, units);
  const shares = point.shares.map((first) => [percent(first), percent(1 - first)] as const);
  const valve = past.length === 0 ? undefined : `Valve leads the coolant past the exchangers in ${past.join(', ')}.`;
  const scheme = width === 0 ? undefined : layOutLoop(config.loop, width, past.length > 0);
  return (
    <figure class={scheme?.isUpright === true ? 'loop-scheme upright' : 'loop-scheme'}>
      {scheme && (
        <svg width={scheme.width} height={scheme.height} aria-hidden="true">
          <Strokes scheme={scheme} />
          {scheme.boxes.map(({ part, x, y, width: wide }) => {
            const [telling, aside] = readingOf(part);
            const middle = x + wide / 2;
            return (
              <g key={part} text-anchor="middle">
                <text x={middle} y={y + 17}>
                  {partName(part)}
                </text>
                <text class="telling" x={middle} y={y + 34}>
                  {telling}
                </text>
                <text class="aside" x={middle} y={y + 50}>
                  {aside}
                </text>
              </g>
            );
          })}
          {scheme.lines.map(({ after, label }) => {
            const [length, bore] = lineWords(config, after, units);
            const [x, anchor] = scheme.isUpright ? [label.x, 'start'] : [label.x + label.width / 2, 'middle'];
            return (
              <g key={after} class="aside" text-anchor={anchor}>
                <text x={x} y={label.y + 9}>
                  {length}
                </text>
                <text x={x} y={label.y + 24}>
                  {bore}
                </text>
              </g>
            );
          })}
          {scheme.ways.map(({ pair, way, label }) => (
            <text
              key={`${pair} ${way}`}
              class="share"
              x={scheme.isUpright ? label.x : label.x + label.width / 2}
              y={label.y + 11}
              text-anchor={scheme.isUpright ? 'start' : 'middle'}
            >
              {shares[pair][way]}
            </text>
          ))}
        </svg>
      )}
      {valve && <figcaption class="small">{valve}</figcaption>}
      <LoopInWords config={config} units={units} readingOf={readingOf} shares={shares} />
    </figure>
  );
}

/** Lines, ways and boxes without their words; an arrow at the end of each line. */
function Strokes({ scheme: { lines, ways, boxes } }: { readonly scheme: Scheme }) {
  return (
    <>
      {[...lines, ...ways].map(({ points }) => (
        <g key={path(points)}>
          <path class="line" d={path(points)} />
          <Arrow points={points} />
        </g>
      ))}
      {boxes.map(({ part, pastIt, x, y, width, height }) => (
        <g key={part}>
          {pastIt && <path class="past" d={path(pastIt)} />}
          <rect class="box" x={x} y={y} width={width} height={height} rx="3" />
        </g>
      ))}
    </>
  );
}

const path = (points: readonly (readonly [number, number])[]): string =>
  `M${points.map((point) => point.join(' ')).join('L')}`;

/** A head on the last stretch of a line, where it comes in. */
function Arrow({ points }: Pick<Scheme['lines'][number], 'points'>) {
  const [from, to] = points.slice(-2);
  const turn = (Math.atan2(to[1] - from[1], to[0] - from[0]) * 180) / Math.PI;
  return <path class="head" d="M0 0L-8 -4.5V4.5Z" transform={`translate(${to[0]} ${to[1]}) rotate(${turn})`} />;
}

interface WordsProps {
  readonly config: Car['config'];
  readonly units: Parameters<typeof lineWords>[2];
  readonly readingOf: (part: Parameters<typeof partReading>[0]) => readonly [string, string];
  readonly shares: readonly (readonly [string, string])[];
}

/** The same ring as a list in flow order, for screen readers. */
function LoopInWords({ config, units, readingOf, shares }: WordsProps) {
  const { loop } = config;
  const items = [...loop.slice(-1), ...loop.slice(0, -1)];
  const onFrom = (place: Parameters<typeof lineWords>[1]): string => {
    const [length = 'then straight on', bore] = lineWords(config, place, units);
    return bore === undefined ? length : `then ${length} of line, ${bore} inside`;
  };
  const partWords = (part: Parameters<typeof partReading>[0]): string =>
    `${partName(part)}: ${readingOf(part)
      .filter((words) => words !== '')
      .join(', ')}; ${onFrom(part)}`;
  let pairs = 0;
  return (
    <ol class="spoken" aria-label="The loop in flow order">
      {items.map((item) => {
        if (typeof item === 'string') return <li key={item}>{partWords(item)}</li>;
        const pair = pairs++;
        return (
          <li key={`pair ${pair}`}>
            Two ways beside each other, {onFrom(pair === 0 ? 'ways' : 'secondWays')}
            <ul>
              {item.map((way, side) => (
                <li key={way.join(' ')}>
                  {shares[pair][side]} of the flow: {way.map(partWords).join('; ')}
                </li>
              ))}
            </ul>
          </li>
        );
      })}
    </ol>
  );
}
