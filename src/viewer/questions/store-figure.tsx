import { type StoreStudy, storeSize } from '../../sim/index.ts';
import { briefly, scaleOf } from '../format.ts';
import type { UnitChoice } from '../state/display.ts';
import { roundRange, roundStep, ticksBetween } from '../time/ticks.ts';
import { LevelLines, placeOn } from './scales.tsx';

const WIDTH = 420;
const HEIGHT = 220;
const LEFT = 44;
const RIGHT = 14;
const TOP = 14;
const FOOT = 34;

/** Peak of the last pull against the size of the store; what is enough and the knee are marked. */
export function StoreFigure({ study, units }: { readonly study: StoreStudy; readonly units: UnitChoice }) {
  const { fromSi, unit } = scaleOf('degC', units);
  const points = study.points.filter(({ lastPeak }) => Number.isFinite(lastPeak));
  if (points.length < 2) return null;
  const peaks = points.map(({ lastPeak }) => fromSi(lastPeak));
  const [low, high] = roundRange(Math.min(...peaks), Math.max(...peaks), 5);
  const [least, most] = [points[0].size, points[points.length - 1].size];
  const x = placeOn([least, most], LEFT, WIDTH - RIGHT);
  const y = placeOn([low, high], HEIGHT - FOOT, TOP);
  const line = points.map(({ size }, k) => `${x(size).toFixed(1)},${y(peaks[k]).toFixed(1)}`).join(' ');
  const marks = [
    ...(study.smallest === undefined ? [] : [{ size: study.smallest, name: 'enough' }]),
    ...(study.knee === undefined ? [] : [{ size: study.knee, name: 'knee' }]),
  ];
  return (
    <svg
      class="store-figure"
      viewBox={`0 0 ${WIDTH} ${HEIGHT}`}
      role="img"
      aria-label={`Peak of pull ${study.pulls} against size; the table beside it has the numbers`}
    >
      <LevelLines
        ticks={ticksBetween(low, high, roundStep((high - low) / 5))}
        place={y}
        write={briefly}
        from={LEFT}
        to={WIDTH - RIGHT}
      />
      {marks.map(({ size, name }) => (
        <g key={name}>
          <line class="mark" x1={x(size)} x2={x(size)} y1={TOP} y2={HEIGHT - FOOT} />
          <text x={x(size)} y={name === 'knee' ? TOP - 4 : HEIGHT - FOOT + 14} text-anchor="middle">
            {name} {storeSize(study.kind, size)}
          </text>
        </g>
      ))}
      <polyline class="curve" points={line} />
      {points.map(({ size }, k) => (
        <circle key={size} class="point" cx={x(size)} cy={y(peaks[k])} r={3} />
      ))}
      <text x={LEFT - 6} y={HEIGHT - 6} text-anchor="end">
        {unit}
      </text>
      <text x={WIDTH - RIGHT} y={HEIGHT - 6} text-anchor="end">
        {study.kind === 'tank' ? 'litres in the tank' : 'kilograms of ice'}, {storeSize(study.kind, least)} to{' '}
        {storeSize(study.kind, most)}
      </text>
    </svg>
  );
}
