import type { PlacedMark } from './gauge-marks.ts';

/** What the gauge showed as dots on the bars, what it would show in the model as ticks, and the miss of each. */
export function GaugeMarks({ marks }: { readonly marks: readonly PlacedMark[] }) {
  return (
    <g>
      {marks.map(({ pull, x, dot, radius, tick, miss }) => (
        <g key={pull} class="gauge-mark">
          {tick && <path class="ground" d={`M${x - tick.half} ${tick.y}h${2 * tick.half}`} />}
          {tick && <path class="model-tick" d={`M${x - tick.half} ${tick.y}h${2 * tick.half}`} />}
          <circle class="ground" cx={x} cy={dot} r={radius} />
          <circle class="gauge-dot" cx={x} cy={dot} r={radius} />
          {miss && (
            <text class="miss" x={miss.x} y={miss.y + 4}>
              {miss.text}
            </text>
          )}
        </g>
      ))}
    </g>
  );
}
