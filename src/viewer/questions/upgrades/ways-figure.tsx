import { moneyText, type UpgradeWay } from '../../../sim/index.ts';
import { LevelLines, placeOn, UprightLines } from '../../figures/scales.tsx';
import { roundRange, roundStep, ticksBetween } from '../../figures/ticks.ts';
import { waySteps } from './way-steps.ts';

const WIDTH = 380;
const HEIGHT = 190;
const LEFT = 30;
const RIGHT = 24;
const TOP = 12;
const FOOT = 36;
const MOST_TICKS = 5;

/** Most pulls that money buys: a stair, each step the cheapest way to more pulls. */
export function WaysFigure({ ways }: { readonly ways: readonly UpgradeWay[] }) {
  const [dearest, most] = [ways[ways.length - 1].money, ways[ways.length - 1].pulls];
  if (dearest === 0) return null;
  const money = roundRange(0, dearest, MOST_TICKS);
  const pullStep = Math.max(1, Math.ceil(roundStep(most / MOST_TICKS)));
  const pulls: readonly [number, number] = [0, pullStep * Math.ceil(most / pullStep)];
  const x = placeOn(money, LEFT, WIDTH - RIGHT);
  const y = placeOn(pulls, HEIGHT - FOOT, TOP);
  return (
    <svg
      class="ways-figure"
      viewBox={`0 0 ${WIDTH} ${HEIGHT}`}
      role="img"
      aria-label="Pulls under the limit against money; the table has the numbers"
    >
      <LevelLines ticks={ticksBetween(...pulls, pullStep)} place={y} write={String} from={LEFT} to={WIDTH - RIGHT} />
      <UprightLines
        ticks={ticksBetween(...money, roundStep((money[1] - money[0]) / MOST_TICKS))}
        place={x}
        write={moneyText}
        from={HEIGHT - FOOT}
        to={TOP}
      />
      <polyline
        class="curve"
        points={waySteps(ways, money[1])
          .map(([spent, count]) => `${x(spent).toFixed(1)},${y(count).toFixed(1)}`)
          .join(' ')}
      />
      {ways.map((way) => (
        <circle key={way.money} cx={x(way.money)} cy={y(way.pulls)} r={3.5} />
      ))}
      <text x={2} y={HEIGHT - 6}>
        pulls
      </text>
      <text x={WIDTH - RIGHT} y={HEIGHT - 6} text-anchor="end">
        price, in the money of the file
      </text>
    </svg>
  );
}
