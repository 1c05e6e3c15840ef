import type { PhaseSpan, TimeSeries } from '../results/time-series.ts';
import { pullsIn } from '../scenario/config/cycle.ts';
import type { Config } from '../scenario/config.ts';
import type { RunOptions } from '../simulate.ts';
import { summarisePulls } from './pull-summary.ts';

/** A repeated block has settled when its peaks change by less than this from block to block [K]; own choice. */
const SETTLED_WITHIN = 0.01;

/** Where a run may end before its cycle does: plain data, so that a run can be handed to another thread. */
export type RunEnd =
  /** with pull `pull`, counted from 1 */
  | { readonly kind: 'pull'; readonly pull: number }
  /** with the first pull over the limit, or with pull `pulls` */
  | { readonly kind: 'limit'; readonly pulls: number }
  /** with phase `phase`, counted from 1 */
  | { readonly kind: 'phase'; readonly phase: number }
  /** with the block whose pulls peak where they did in the block before */
  | { readonly kind: 'settled' };

/** The end of a run as a run asks for it, at the end of each phase; good for one run. */
export function continueUntil(end: RunEnd, config: Config): NonNullable<RunOptions['continueAfter']> {
  const limit = config.limit.chargeTemperature;
  let seen = 0;
  switch (end.kind) {
    case 'pull':
      return ({ kind }) => {
        if (kind === 'pull') seen++;
        return seen < end.pull;
      };
    case 'phase':
      return () => ++seen < end.phase;
    case 'limit':
      return (phase, columns) => {
        if (!isWholePull(phase)) return true;
        seen++;
        return lastOf(columns, phase, limit).margin >= 0 && seen < end.pulls;
      };
    case 'settled': {
      const peaks: number[] = [];
      return (phase, columns) => {
        if (phase.block === 0 || !isWholePull(phase)) return true;
        peaks.push(lastOf(columns, phase, limit).peak);
        return !hasSettled(peaks, pullsIn(config.cycle.block));
      };
    }
  }
}

const isWholePull = ({ kind, isWhole }: PhaseSpan): boolean => kind === 'pull' && isWhole;

const lastOf = (columns: TimeSeries['columns'], phase: PhaseSpan, limit: number) =>
  summarisePulls({ columns, phases: [phase] }, limit)[0];

/** Whether the last of some blocks is whole and each of its pulls peaks where it did in the block before. */
export function hasSettled(peaks: readonly number[], perBlock: number): boolean {
  if (peaks.length < 2 * perBlock || peaks.length % perBlock !== 0) return false;
  const before = peaks.slice(-2 * perBlock, -perBlock);
  return peaks.slice(-perBlock).every((peak, k) => Math.abs(peak - before[k]) < SETTLED_WITHIN);
}
