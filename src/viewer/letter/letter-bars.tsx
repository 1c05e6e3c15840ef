import { useRef } from 'preact/hooks';
import { placeOn } from '../figures/scales.tsx';
import { useSize } from '../figures/use-size.ts';
import { degrees, fixed, named, scaleOf } from '../format.ts';
import { ROLE_NAMES } from '../state/cars.ts';
import type { UnitChoice } from '../state/display.ts';
import { barRange, barsThatMatter, layOutBars, numberPlace, outsideOf, writtenPulls } from '../time/bars.ts';
import { OneBar, Peak } from '../time/bars-view.tsx';
import { isPull } from '../time/phases.ts';
import { inHand, type ShownRun } from '../time/runs.ts';

const HEIGHT = 230;
const TOP = 26;
const NAMES = 24;
/** Room at the right for the limit's own words [px]. */
const RIGHT = 92;
const LEFT = 4;
const USUAL_WIDTH = 760;

interface LetterBarsProps {
  readonly runs: readonly ShownRun[];
  readonly units: UnitChoice;
}

/** Hottest charge air of every pull against the limit: Before outlined, After filled, hatched above the limit. */
export function LetterBars({ runs, units }: LetterBarsProps) {
  const host = useRef<HTMLDivElement>(null);
  const width = useSize(host).value.width || USUAL_WIDTH;
  const [base] = barRange(runs, units);
  const isOnAir = base >= outsideOf(runs);
  return (
    <figure>
      <figcaption>{named('Hottest charge air in each pull', scaleOf('degC', units).unit)}</figcaption>
      <div ref={host}>
        <Drawing runs={runs} units={units} width={width} />
      </div>
      <p class="small">
        The bars stand on {isOnAir ? 'the day’s air' : degrees(base, units, 0)}.
        {runs.length > 1 && ' Outlined is Before, filled is After.'} Hatched is over the limit.
      </p>
    </figure>
  );
}

function Drawing({ runs, units, width }: LetterBarsProps & { readonly width: number }) {
  const hand = inHand(runs);
  if (hand === undefined) return null;
  const range = barRange(runs, units);
  const floor = HEIGHT - NAMES;
  const y = placeOn(range, floor, TOP);
  const right = width - RIGHT;
  const evenly = runs.map(byNumber);
  const most = Math.max(1, ...evenly.map(({ phases }) => phases.length));
  const x = placeOn([0, most], LEFT, right);
  const { fromSi } = scaleOf('degC', units);
  const layout = layOutBars(evenly, { x, y, width: right - LEFT, wholeDigits: fixed(fromSi(range[1]), 0).length });
  const written = layout.labels === 'few' ? barsThatMatter(layout.bars, 0) : new Set(layout.bars);
  const isThin = layout.labels === 'few' && runs.length === 2;
  const word = layout.slot >= 48 ? 'Pull ' : '';
  const numbered = new Set(writtenPulls(layout, word === '' ? 24 : 48, 0));
  const limit = hand.car.config.limit.chargeTemperature;
  return (
    <svg
      class="bars-drawing letter-drawing"
      viewBox={`0 0 ${width} ${HEIGHT}`}
      role="img"
      aria-label={describe(runs, units)}
    >
      <line class="floor" x1={LEFT} x2={right} y1={floor} y2={floor} />
      {layout.bars.map((bar) => (
        <OneBar key={`${bar.which}${bar.pull}`} bar={bar} floor={floor} />
      ))}
      <line class="limit" x1={LEFT} x2={width} y1={y(limit)} y2={y(limit)} />
      <text class="strong" x={width} y={y(limit) - 7} text-anchor="end">
        limit {degrees(limit, units)}
      </text>
      {[...written].map((bar) => (
        <Peak
          key={`${bar.which}${bar.pull}`}
          bar={bar}
          floor={floor}
          digits={layout.labels === 'whole' ? 0 : 1}
          place={numberPlace(bar, isThin, LEFT, width)}
          lines={[y(limit)]}
          fromSi={fromSi}
        />
      ))}
      {layout.pulls
        .filter(({ pull }) => numbered.has(pull))
        .map(({ pull, x: middle }) => (
          <text key={pull} x={middle} y={floor + 17} text-anchor="middle">
            {word}
            {pull}
          </text>
        ))}
    </svg>
  );
}

/** A run with its pulls side by side in the order of their numbers, however far they lie apart in time. */
const byNumber = (run: ShownRun): ShownRun => ({
  ...run,
  phases: run.phases.filter(isPull).map((phase) => ({ ...phase, start: phase.pull - 1, end: phase.pull })),
});

function describe(runs: readonly ShownRun[], units: UnitChoice): string {
  return runs
    .map(({ which, pulls }) => {
      const peaks = pulls.map(({ peak }) => degrees(peak, units));
      return `${runs.length === 1 ? 'Peaks' : ROLE_NAMES[which]}: ${peaks.join(', ')}.`;
    })
    .join(' ');
}
