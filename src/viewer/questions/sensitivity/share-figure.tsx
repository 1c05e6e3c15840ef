import type { RankedInput } from '../../../sim/index.ts';
import { fixed } from '../../format.ts';

const WIDTH = 420;
const ROW = 32;
const BAR = 10;
/** Room for the number behind the longest bar. */
const NUMBER = 48;

/** What share of the spread goes with each input, the largest first; all of the spread would be the whole width. */
export function ShareFigure({ ranking }: { readonly ranking: readonly RankedInput[] }) {
  return (
    <svg
      class="share-figure"
      viewBox={`0 0 ${WIDTH} ${ROW * ranking.length}`}
      role="img"
      aria-label="Share of the spread by input; the table beside it has the numbers"
    >
      {ranking.map(({ input, share }, k) => (
        <g key={input.name}>
          <text x={0} y={k * ROW + 12}>
            {input.name}
          </text>
          <rect class="share-ground" x={0} y={k * ROW + 17} width={WIDTH - NUMBER} height={BAR} />
          <rect class="model-bar" x={0} y={k * ROW + 17} width={share * (WIDTH - NUMBER)} height={BAR} />
          <text x={WIDTH} y={k * ROW + 26} text-anchor="end">
            {fixed(100 * share, 1)} %
          </text>
        </g>
      ))}
    </svg>
  );
}
