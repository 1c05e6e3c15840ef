import type { PhaseSpan, TimeSeries } from '../results/time-series.ts';
import type { Config } from '../scenario/config.ts';
import type { PullSummary } from './pull-summary.ts';
import type { Wording } from './wording.ts';

/** stop: do not go on with this run; check: look at it before trusting or building; note: good to know. */
export const FINDING_RANKS = ['stop', 'check', 'note'] as const;
export type FindingRank = (typeof FINDING_RANKS)[number];

/** Something that a run tells besides its answer. Plain data. */
export interface Finding {
  readonly rank: FindingRank;
  /** the same for every run: what a program may look for */
  readonly kind: FindingKind;
  /** what, how much, where or when, and what to do; whole sentences */
  readonly text: string;
  /** s, where it happens at one time */
  readonly time?: number;
  /** part of the car */
  readonly place?: 'air' | 'compressor' | 'core' | 'coolant' | 'pump' | 'loop' | 'tank';
}

export type FindingKind =
  | 'run stopped'
  | 'energy not closed'
  | 'coolant near boiling'
  | 'coolant near freezing'
  | 'condensation'
  | 'condensation left out'
  | 'target pressure lost'
  | 'ice gone'
  | 'ice left'
  | 'ice forms'
  | 'fast air port'
  | 'outside charge table'
  | 'pump off'
  | 'pump may cavitate'
  | 'pump held shut'
  | 'measured flow differs'
  | 'tank level'
  | 'heat while waiting'
  | 'core mark'
  | 'metal conduction';

/** What findings are made from. */
export interface RunView {
  readonly config: Config;
  readonly series: TimeSeries;
  readonly pulls: readonly PullSummary[];
  readonly wording: Wording;
}

/** As little of a run as it takes to say when something happened. */
interface PhasesView extends Pick<RunView, 'wording'> {
  readonly series: Pick<TimeSeries, 'phases'>;
}

/** Looks for one thing in a run; none where there is nothing to tell. */
export type FindingSource = (run: RunView) => readonly Finding[];

/** Row at which `score` is highest, NaN passed over; undefined where no row has one. */
export function highestRow(rowCount: number, score: (row: number) => number): number | undefined {
  let best: number | undefined;
  let highest = Number.NEGATIVE_INFINITY;
  for (let row = 0; row < rowCount; row++) {
    const value = score(row);
    if (value > highest) {
      highest = value;
      best = row;
    }
  }
  return best;
}

/** "at 312.0 s (pull 3)": a time of the run with what was driven then. */
export function whenAt({ series, wording }: PhasesView, time: number): string {
  // Of two phases that meet, the later; where that one could not begin, none.
  const isIn = ({ start, end, isWhole }: PhaseSpan) => start <= time && (time < end || !isWhole);
  return said(wording, time, series.phases, series.phases.find(isIn));
}

/** As {@link whenAt} for a recorded row: where two phases meet, the row knows which of them it ends or begins. */
export function whenAtRow({ series, wording }: RunView, row: number): string {
  const phase = series.phases.find(({ lastRow }) => row <= lastRow);
  return said(wording, series.columns.time[row], series.phases, phase);
}

function said(wording: Wording, time: number, phases: readonly PhaseSpan[], phase: PhaseSpan | undefined): string {
  const at = `at ${wording.time(time)}`;
  if (phase === undefined) return at;
  if (phase.kind !== 'pull') return `${at} (${phase.name})`;
  const pulls = phases.filter(({ kind }) => kind === 'pull');
  return `${at} (pull ${pulls.indexOf(phase) + 1})`;
}
