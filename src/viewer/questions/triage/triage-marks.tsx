import './triage-figure.css';
import type { ComponentChild } from 'preact';
import type { Triage } from '../../../sim/index.ts';
import type { Spot } from '../../figures/scales.tsx';

interface CauseMarkProps extends Spot {
  readonly triage: Triage;
  /** which of the causes, nearest first */
  readonly cause: number;
  /** degrees clockwise from the right to where it lies; absent where it is not beyond the edge */
  readonly turn?: number;
}

/** A cause: filled where it leads, a diamond where the car is healthy, an arrow where it is beyond the edge. */
export function CauseMark({ triage: { candidates, leading }, cause, x, y, turn }: CauseMarkProps) {
  const look = cause < leading.length ? 'cause-mark leading' : 'cause-mark';
  if (turn !== undefined) {
    return <path class={`${look} beyond`} d="M-6 0H6M1-5L6 0L1 5" transform={`translate(${x} ${y}) rotate(${turn})`} />;
  }
  return candidates[cause].cause === 'healthy' ? (
    <path class={look} d="M0-6.5L6.5 0L0 6.5L-6.5 0Z" transform={`translate(${x} ${y})`} />
  ) : (
    <circle class={look} cx={x} cy={y} r={5} />
  );
}

/** The reading: a cross. */
export const ReadingMark = ({ x, y }: Spot) => (
  <path class="reading-mark" d="M-6.5 0H6.5M0-6.5V6.5" transform={`translate(${x} ${y})`} />
);

/** Marks as they stand before the rows of the table, with the number of each cause. */
export const rowMarks = (triage: Triage) => [
  <RowMark key="measured">
    <ReadingMark x={8} y={8} />
  </RowMark>,
  ...triage.candidates.map(({ cause }, k) => (
    <RowMark key={cause} number={k + 1}>
      <CauseMark triage={triage} cause={k} x={8} y={8} />
    </RowMark>
  )),
];

function RowMark({ number, children }: { readonly number?: number; readonly children: ComponentChild }) {
  return (
    <span class="row-mark">
      <svg viewBox="0 0 16 16" aria-hidden="true">
        {children}
      </svg>
      {number !== undefined && `${number}.`}
    </span>
  );
}
