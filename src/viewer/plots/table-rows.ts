import { roundStep } from '../figures/ticks.ts';
import { clockTime, joined, seconds } from '../format.ts';
import { nameOf, type Phase } from '../time/phases.ts';
import type { View } from './view.ts';

/** A row of the table beside a plot. */
interface TableRow {
  /** s */
  readonly time: number;
  /** "8.0 s", "5:12.0, end of pull 1" */
  readonly name: string;
}

/** About this many rows for the pull itself, or for a stretch. */
const ROWS = 12;

/**
 * Times at which a table gives the numbers of a plot: of a pull every round step from its opening on, lift itself
 * always; of the whole run the end of each phase.
 */
export function tableRows(view: View, phases: readonly Phase[]): TableRow[] {
  const { from, to, pull, zero } = view;
  if (pull === undefined && view.name === 'whole run') {
    return phases
      .filter(({ end }) => end >= from && end <= to)
      .map((phase) => ({ time: phase.end, name: `${clockTime(phase.end)}, end of ${nameOf(phase)}` }));
  }
  const length = pull === undefined ? to - from : pull.end - pull.start;
  const step = roundStep(Math.max(0.1, length / ROWS));
  const rows: TableRow[] = [];
  for (let k = Math.ceil((from - zero) / step); zero + k * step <= to; k++) {
    const time = zero + k * step;
    const lift = pull?.end;
    if (lift !== undefined && time > lift && (rows.at(-1)?.time ?? lift) < lift) rows.push(rowAt(lift, zero));
    rows.push(rowAt(time, zero));
  }
  return rows;
}

const rowAt = (time: number, zero: number): TableRow => ({ time, name: joined(seconds(time - zero)) });
