import { useRef } from 'preact/hooks';
import type { PullSummary } from '../../sim/index.ts';
import { LevelLines, placeOn, polylineOf } from '../figures/scales.tsx';
import { roundRange, ticksOn } from '../figures/ticks.ts';
import { useSize } from '../figures/use-size.ts';
import { degrees, fixed, named, scaleOf } from '../format.ts';
import { ROLE_NAMES } from '../state/cars.ts';
import type { UnitChoice } from '../state/display.ts';
import type { ShownRun } from '../time/runs.ts';
import { curveAround, stretchOf } from './pull-stretch.ts';

const HEIGHT = 220;
const TOP = 12;
const BOTTOM = 34;
const LEFT = 34;
const RIGHT = 8;
const USUAL_WIDTH = 760;
const MOST_TICKS = 5;

interface PullCurveProps {
  readonly runs: readonly ShownRun[];
  /** number of the pull that is shown */
  readonly pull: number;
  readonly units: UnitChoice;
}

/** Charge temperature through one pull, as it is and as a log shows it. */
export function PullCurve({ runs, pull, units }: PullCurveProps) {
  const host = useRef<HTMLDivElement>(null);
  const width = useSize(host).value.width || USUAL_WIDTH;
  const isPair = runs.length > 1;
  return (
    <figure>
      <figcaption>{named(`Charge temperature in pull ${pull}`, scaleOf('degC', units).unit)}</figcaption>
      <div ref={host}>
        <Drawing runs={runs} pull={pull} units={units} width={width} />
      </div>
      <p class="small">
        Solid: the charge itself. Dotted: what a log shows.{isPair && ' Thin is Before, thick is After.'} Shaded: wide
        open.
      </p>
    </figure>
  );
}

interface Curve {
  readonly which: ShownRun['which'];
  readonly summary: PullSummary;
  readonly charge: readonly [number, number][];
  readonly log: readonly [number, number][];
}

function Drawing({ runs, pull, units, width }: PullCurveProps & { readonly width: number }) {
  const curves = runs.flatMap(({ which, pulls, run }): Curve[] => {
    const summary = pulls.find((each) => each.pull === pull);
    if (summary === undefined || run.series === undefined) return [];
    const charge = curveAround(run.series, 'chargeTemperature', summary);
    return [{ which, summary, charge, log: curveAround(run.series, 'indicatedTemperature', summary) }];
  });
  if (curves.length === 0) return null;
  const { fromSi } = scaleOf('degC', units);
  const limit = runs[0].car.config.limit.chargeTemperature;
  const shown = [limit, ...curves.flatMap(({ charge, log }) => [...charge, ...log].map(([, kelvin]) => kelvin))].map(
    fromSi,
  );
  const range = roundRange(Math.min(...shown), Math.max(...shown), MOST_TICKS);
  const from = Math.min(...curves.map(({ summary }) => stretchOf(summary)[0]));
  const to = Math.max(...curves.map(({ summary }) => stretchOf(summary)[1]));
  const floor = HEIGHT - BOTTOM;
  const x = placeOn([from, to], LEFT, width - RIGHT);
  const y = placeOn(range, floor, TOP);
  const open = Math.max(...curves.map(({ summary }) => summary.duration));
  const path = (points: readonly [number, number][]) =>
    polylineOf(points.map(([time, kelvin]) => ({ x: x(time), y: y(fromSi(kelvin)) })));
  const said = curves.map(({ which, summary }) => {
    const [peak, log] = [summary.peak, summary.indicatedPeak].map((kelvin) => degrees(kelvin, units));
    return `${runs.length === 1 ? '' : `${ROLE_NAMES[which]}: `}peak ${peak}, a log shows ${log}.`;
  });
  return (
    <svg class="bars-drawing letter-drawing" viewBox={`0 0 ${width} ${HEIGHT}`} role="img" aria-label={said.join(' ')}>
      <rect class="open" x={x(0)} y={TOP} width={x(open) - x(0)} height={floor - TOP} />
      <LevelLines
        ticks={ticksOn(range, MOST_TICKS)}
        place={y}
        write={(tick) => fixed(tick, 0)}
        from={LEFT}
        to={width - RIGHT}
      />
      {ticksOn([from, to], 7).map((tick) => (
        <text key={tick} x={x(tick)} y={floor + 15} text-anchor="middle">
          {tick}
        </text>
      ))}
      <text x={(LEFT + width) / 2} y={floor + 30} text-anchor="middle">
        seconds into the pull
      </text>
      <line class="floor" x1={LEFT} x2={width - RIGHT} y1={floor} y2={floor} />
      <line class="limit" x1={LEFT} x2={width - RIGHT} y1={y(fromSi(limit))} y2={y(fromSi(limit))} />
      <text class="strong" x={width - RIGHT} y={y(fromSi(limit)) - 7} text-anchor="end">
        limit {degrees(limit, units)}
      </text>
      {/* Thin over thick: where both are alike, both are seen. */}
      {curves.toReversed().map(({ which, charge, log }) => (
        <g key={which} class={`curve ${which}`}>
          <polyline points={path(charge)} />
          <polyline class="log" points={path(log)} />
        </g>
      ))}
    </svg>
  );
}
