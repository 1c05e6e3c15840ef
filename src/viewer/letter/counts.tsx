import { counted, countPulls, explainCount, type PullSummary } from '../../sim/index.ts';
import { capitalised, degrees, wordingIn } from '../format.ts';
import { ROLE_NAMES } from '../state/cars.ts';
import type { UnitChoice } from '../state/display.ts';
import { isPull } from '../time/phases.ts';
import type { ShownRun } from '../time/runs.ts';

interface CountsProps {
  readonly runs: readonly ShownRun[];
  /** of each run, as the letter calls it */
  readonly labels: readonly string[];
  readonly units: UnitChoice;
}

/** The figures to read from two metres, one for each car, with a box for every pull. */
export function Counts({ runs, labels, units }: CountsProps) {
  return (
    <section class={`letter-counts of-${runs.length}`} aria-label="Pulls that stay under the limit">
      {runs.map((run, k) => (
        <Count key={run.which} run={run} label={labels[k]} isAlone={runs.length === 1} units={units} />
      ))}
    </section>
  );
}

interface CountProps {
  readonly run: ShownRun;
  readonly label: string;
  readonly isAlone: boolean;
  readonly units: UnitChoice;
}

function Count({ run: { which, car, pulls, phases }, label, isAlone, units }: CountProps) {
  const planned = phases.filter(isPull);
  const limit = degrees(car.config.limit.chargeTemperature, units);
  const isWhole = pulls.length === planned.length;
  return (
    <section class={which} aria-label={isAlone ? 'Count' : ROLE_NAMES[which]}>
      <h2>
        <i class="swatch" aria-hidden="true" />
        {isAlone ? capitalised(label) : `${ROLE_NAMES[which]}: ${label}`}
      </h2>
      <p class="count">
        <b class="figure">{isWhole ? countPulls(pulls) : '\u2013'}</b>
        <span>
          of {counted(planned.length, 'pull')} in a row
          <br />
          at or under {limit}
        </span>
      </p>
      <Boxes pulls={pulls} of={planned.length} />
      {isWhole && <p class="said">{explainCount({ pulls }, wordingIn(units))}</p>}
    </section>
  );
}

const BOX = { width: 30, height: 14, gap: 6 };
const MOST_IN_A_ROW = 12;

/** A box for every pull: filled where it stays under the limit, hatched where it is over, dashed where it is not known. */
function Boxes({ pulls, of }: { readonly pulls: readonly PullSummary[]; readonly of: number }) {
  const rows = Math.ceil(of / MOST_IN_A_ROW);
  const columns = Math.min(of, MOST_IN_A_ROW);
  const [width, height] = [columns * (BOX.width + BOX.gap), rows * (BOX.height + BOX.gap)];
  return (
    <svg class="boxes" viewBox={`0 0 ${width} ${height}`} width={width} height={height} aria-hidden="true">
      {Array.from({ length: of }, (_, k) => {
        const kind = pulls[k] === undefined ? 'unknown' : pulls[k].margin < 0 ? 'over' : 'under';
        return (
          <rect
            key={k}
            class={kind}
            x={1 + (k % MOST_IN_A_ROW) * (BOX.width + BOX.gap)}
            y={1 + Math.floor(k / MOST_IN_A_ROW) * (BOX.height + BOX.gap)}
            width={BOX.width}
            height={BOX.height}
            rx="3"
          />
        );
      })}
    </svg>
  );
}
