import './triage-figure.css';
import type { Triage } from '../../../sim/index.ts';
import { Axes } from '../../figures/axes.tsx';
import { named, scaleOf } from '../../format.ts';
import type { UnitChoice } from '../../state/display.ts';
import { PAPER, triageLayout } from './triage-layout.ts';
import { CauseMark, ReadingMark } from './triage-marks.tsx';

interface FigureProps {
  readonly triage: Triage;
  readonly units: UnitChoice;
}

/** The plane of the two readings: what was measured with its doubt, and each cause under the number of its row. */
export function TriageFigure({ triage, units }: FigureProps) {
  const { unit } = scaleOf('K', units);
  const { across, up, ring, marks, numbers, said, isCrowded } = triageLayout(triage, units);
  const leads = triage.leading.length;
  return (
    <figure class="triage-figure">
      <Axes
        paper={PAPER}
        label="Charge less coolant against coolant rise, as measured and with each cause; the table beside it has the numbers"
        up={{ ...up, title: named('Charge less coolant at the end of the pull', unit) }}
        across={{ ...across, title: named('Coolant rise through the core', unit) }}
      >
        <ellipse class="doubt" cx={ring.x} cy={ring.y} rx={ring.width / 2} ry={ring.height / 2} />
        {numbers.map(
          ({ text, leader }) =>
            leader && (
              <line key={text} class="leader" x1={leader.from.x} y1={leader.from.y} x2={leader.to.x} y2={leader.to.y} />
            ),
        )}
        {paintOrder(triage).map((k) => (
          <CauseMark key={k} triage={triage} cause={k} {...marks[k]} />
        ))}
        <ReadingMark x={ring.x} y={ring.y} />
        {numbers.map(({ group, text, x, y }) => (
          <text key={text} class="number" x={x} y={y + 4} text-anchor="middle">
            {group.map((k, place) => (
              <tspan key={k} class={k < leads ? 'strong' : ''}>
                {place > 0 && ', '}
                {k + 1}
              </tspan>
            ))}
          </text>
        ))}
        <text x={said.x} y={said.y + 4} text-anchor="middle">
          {said.text}
        </text>
      </Axes>
      <figcaption class="small">
        Numbers as in the table. The ring is what the readings may be off by.{' '}
        {leads > 1 ? 'Filled marks are too near to tell apart' : 'The filled mark is the nearest cause'}; the diamond is
        a healthy car.
        {marks.some(({ turn }) => turn !== undefined) && ' An arrow points to a cause beyond the edge.'}
        {isCrowded && ' The readings lie so far out that the ring and the gaps between causes come out small.'}
      </figcaption>
    </figure>
  );
}

/** What lies on top comes last: the healthy car, before it the nearest causes. */
const paintOrder = ({ candidates }: Triage): number[] => {
  const isHealthy = (k: number) => Number(candidates[k].cause === 'healthy');
  return candidates.map((_, k) => k).sort((a, b) => isHealthy(a) - isHealthy(b) || b - a);
};
