import { type StoreStudy, storeSize } from '../../sim/index.ts';
import { scaleOf } from '../format.ts';
import type { UnitChoice } from '../state/display.ts';
import { roundRange } from '../time/ticks.ts';
import { type Frame, placed, ValueAxis } from './axes.tsx';

const FRAME: Frame = { width: 420, height: 220, left: 44, right: 14, top: 14, foot: 34 };

/** Peak of the last pull against the size of the store; what is enough and the knee are marked. */
export function StoreFigure({ study, units }: { readonly study: StoreStudy; readonly units: UnitChoice }) {
  const { fromSi, unit } = scaleOf('degC', units);
  const { width, height, left, right, top, foot } = FRAME;
  const points = study.points.filter(({ lastPeak }) => Number.isFinite(lastPeak));
  if (points.length < 2) return null;
  const peaks = points.map(({ lastPeak }) => fromSi(lastPeak));
  const [low, high] = roundRange(Math.min(...peaks), Math.max(...peaks), 5);
  const [least, most] = [points[0].size, points[points.length - 1].size];
  const x = placed(least, most, left, width - right);
  const y = placed(low, high, height - foot, top);
  const line = points.map(({ size }, k) => `${x(size).toFixed(1)},${y(peaks[k]).toFixed(1)}`).join(' ');
  const marks = [
    ...(study.smallest === undefined ? [] : [{ size: study.smallest, name: 'enough' }]),
    ...(study.knee === undefined ? [] : [{ size: study.knee, name: 'knee' }]),
  ];
  return (
    <svg
      class="store-figure"
      viewBox={`0 0 ${width} ${height}`}
      role="img"
      aria-label={`Peak of pull ${study.pulls} against size; the table beside it has the numbers`}
    >
      <ValueAxis low={low} high={high} y={y} frame={FRAME} />
      {marks.map(({ size, name }) => (
        <g key={name}>
          <line class="mark" x1={x(size)} x2={x(size)} y1={top} y2={height - foot} />
          <text x={x(size)} y={height - foot + 14} text-anchor="middle">
            {name} {storeSize(study.kind, size)}
          </text>
        </g>
      ))}
      <polyline class="curve" points={line} />
      {points.map(({ size }, k) => (
        <circle key={size} class="point" cx={x(size)} cy={y(peaks[k])} r={3} />
      ))}
      <text x={left - 6} y={height - 6} text-anchor="end">
        {unit}
      </text>
      <text x={width - right} y={height - 6} text-anchor="end">
        {study.kind === 'tank' ? 'litres in the tank' : 'kilograms of ice'}, {storeSize(study.kind, least)} to{' '}
        {storeSize(study.kind, most)}
      </text>
    </svg>
  );
}
