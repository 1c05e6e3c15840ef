import type { CarAgreement } from '../../../sim/index.ts';
import { Axes, acrossPaper, type Paper, upPaper } from '../../figures/axes.tsx';
import { roundRange, ticksOn } from '../../figures/ticks.ts';
import { briefly, scaleOf, signedDifference } from '../../format.ts';
import type { UnitChoice } from '../../state/display.ts';

const PAPER: Paper = { width: 420, height: 220, left: 44, right: 14, top: 22, foot: 34 };
const MOST_TICKS = 5;
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
  const range = roundRange(Math.min(fromSi(floor), ...all), Math.max(...all), MOST_TICKS);
  const y = upPaper(PAPER, range);
  const x = acrossPaper(PAPER, [0, pulls.length]);
  const slot = x(1) - x(0);
  const bar = Math.min(WIDEST_BAR, 0.6 * slot);
  return (
    <Axes
      class="gauge-figure"
      paper={PAPER}
      label="What the gauge showed against the model, pull by pull; the table beside it has the numbers"
      up={{ ticks: ticksOn(range, MOST_TICKS), place: y, write: briefly }}
      across={{ title: 'By pull. Bars: model, dots: gauge, numbers: model less gauge', ticks: [], place: x }}
    >
      {pulls.map(({ pull, model, indicated, miss }, k) => {
        const middle = x(k + 0.5);
        const [atModel, atGauge] = [y(fromSi(model)), y(fromSi(indicated))];
        return (
          <g key={pull}>
            <rect class="model-bar" x={middle - bar / 2} y={atModel} width={bar} height={y(range[0]) - atModel} />
            <circle class="gauge-dot" cx={middle} cy={atGauge} r={Math.min(5, 0.3 * slot)} />
            {pulls.length <= MOST_WRITTEN && (
              <text x={middle} y={Math.min(atModel, atGauge) - 8} text-anchor="middle">
                {signedDifference(miss, units)}
              </text>
            )}
            {(pulls.length <= 2 * MOST_WRITTEN || k === 0 || k === pulls.length - 1) && (
              <text x={middle} y={y(range[0]) + 14} text-anchor="middle">
                {pull}
              </text>
            )}
          </g>
        );
      })}
      <text x={PAPER.left - 6} y={PAPER.height - 6} text-anchor="end">
        {unit}
      </text>
    </Axes>
  );
}
