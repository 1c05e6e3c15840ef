import { moneyText, type UpgradeWay } from '../../../sim/index.ts';
import { acrossChart, Chart, Curve, pullTicks, upChart } from '../../figures/chart.tsx';
import { roundRange, ticksOn } from '../../figures/ticks.ts';
import { waySteps } from './way-steps.ts';

const MOST_TICKS = 5;

/** Most pulls that money buys: a stair, each step the cheapest way to more pulls. */
export function WaysFigure({ ways }: { readonly ways: readonly UpgradeWay[] }) {
  const { money: dearest, pulls: most } = ways[ways.length - 1];
  if (dearest === 0) return null;
  const money = roundRange(0, dearest, MOST_TICKS);
  const x = acrossChart(money);
  const y = upChart([0, most]);
  return (
    <Chart
      up={{ title: 'Pulls', ticks: pullTicks(most), place: y }}
      across={{
        title: 'Price, in the money of the file',
        ticks: ticksOn(money, MOST_TICKS),
        place: x,
        write: moneyText,
      }}
    >
      <Curve points={waySteps(ways, money[1]).map(([spent, pulls]) => ({ x: x(spent), y: y(pulls) }))} />
      {ways.map((way) => (
        <circle key={way.money} cx={x(way.money)} cy={y(way.pulls)} r={3.5} />
      ))}
    </Chart>
  );
}
