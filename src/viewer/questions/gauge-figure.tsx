import type { CarAgreement } from '../../sim/index.ts';
import { LevelLines, placeOn } from '../figures/scales.tsx';
import { roundRange, roundStep, ticksBetween } from '../figures/ticks.ts';
import { briefly, scaleOf, signedDifference } from '../format.ts';
import type { UnitChoice } from '../state/display.ts';

const [WIDTH, HEIGHT] = [420, 220];
const [LEFT, RIGHT, TOP, FOOT] = [44, 14, 22, 34];
/** Above so many pulls the misses are only in the table. */
const MOST_WRITTEN = 9;
const WIDEST_BAR = 34;

interface GaugeFigureProps {
  readonly agreement: CarAgreement;
  /** where bars stand on, at most [K]: the air outside */
  readonly floor: number;
  readonly units: UnitChoice;
}

/** The model's indicated temperature as bars, what the gauge showed as dots, and the miss of each in numbers. */
export function GaugeFigure({ agreement: { pulls }, floor, units }: GaugeFigureProps) {
  const { fromSi, unit } = scaleOf('degC', units);
  const all = pulls.flatMap(({ model, indicated }) => [fromSi(model), fromSi(indicated)]);
  const [low, high] = roundRange(Math.min(fromSi(floor), ...all), Math.max(...all), 5);
  const y = placeOn([low, high], HEIGHT - FOOT, TOP);
  const slot = (WIDTH - LEFT - RIGHT) / pulls.length;
  const bar = Math.min(WIDEST_BAR, 0.6 * slot);
  return (
    <svg
      class="gauge-figure"
      viewBox={`0 0 ${WIDTH} ${HEIGHT}`}
      role="img"
      aria-label="What the gauge showed against the model, pull by pull; the table beside it has the numbers"
    >
      <LevelLines
        ticks={ticksBetween(low, high, roundStep((high - low) / 5))}
        place={y}
        write={briefly}
        from={LEFT}
        to={WIDTH - RIGHT}
      />
      {pulls.map(({ pull, model, indicated, miss }, k) => {
        const x = LEFT + (k + 0.5) * slot;
        const [atModel, atGauge] = [y(fromSi(model)), y(fromSi(indicated))];
        return (
          <g key={pull}>
            <rect class="model-bar" x={x - bar / 2} y={atModel} width={bar} height={y(low) - atModel} />
            <circle class="gauge-dot" cx={x} cy={atGauge} r={Math.min(5, 0.3 * slot)} />
            {pulls.length <= MOST_WRITTEN && (
              <text x={x} y={Math.min(atModel, atGauge) - 8} text-anchor="middle">
                {signedDifference(miss, units)}
              </text>
            )}
            {(pulls.length <= 2 * MOST_WRITTEN || k === 0 || k === pulls.length - 1) && (
              <text x={x} y={HEIGHT - FOOT + 14} text-anchor="middle">
                {pull}
              </text>
            )}
          </g>
        );
      })}
      <text x={LEFT - 6} y={HEIGHT - 6} text-anchor="end">
        {unit}
      </text>
      <text x={WIDTH - RIGHT} y={HEIGHT - 6} text-anchor="end">
        bars: model, dots: gauge, by pull
      </text>
    </svg>
  );
}
