import './drop-figure.css';
import { placeOn } from '../../figures/scales.tsx';
import type { DropPanel } from './drop-rows.ts';

const WIDTH = 380;
/** Names at the left of the bars, numbers at their right. */
const LEFT = 92;
const RIGHT = 78;
const ROW = 18;
const HEAD = 20;
const GAP = 10;

/** Four bars a figure: the car as it is, and what it would be without a drop, with twice it, and without a core. */
export function DropFigure({ panels }: { readonly panels: readonly DropPanel[] }) {
  const height = (bars: number) => HEAD + ROW * bars + GAP;
  const tops = panels.map((_, k) => panels.slice(0, k).reduce((sum, { bars }) => sum + height(bars.length), 0));
  const x = placeOn([0, 1], LEFT, WIDTH - RIGHT);
  return (
    <svg
      class="drop-figure"
      viewBox={`0 0 ${WIDTH} ${panels.reduce((sum, { bars }) => sum + height(bars.length), 0) - GAP}`}
      role="img"
      aria-label="Drive power, discharge and air of the four; the table has the numbers"
    >
      {panels.map(({ title, bars }, k) => (
        <g key={title} transform={`translate(0 ${tops[k]})`}>
          <text class="title" x={0} y={13}>
            {title}
          </text>
          {bars.map(({ name, share, value }, row) => {
            const y = HEAD + ROW * row;
            return (
              <g key={name}>
                <text x={LEFT - 6} y={y + 12} text-anchor="end">
                  {name}
                </text>
                <rect
                  class={row === 0 ? 'drop-bar own' : 'drop-bar'}
                  x={LEFT}
                  y={y + 2}
                  width={x(share) - LEFT}
                  height={ROW - 5}
                />
                <text x={x(share) + 5} y={y + 12}>
                  {value}
                </text>
              </g>
            );
          })}
        </g>
      ))}
    </svg>
  );
}
