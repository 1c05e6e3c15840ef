import type { PullSummary } from './pull-summary.ts';

/** Less of the load than this counts as none left. */
const NONE_LEFT = 1e-3;

/**
 * How long the ice lasts, in words.
 *
 * @param pulls - every pull of a run
 * @param loaded - ice at the start [kg], 0 or more
 * @returns a sentence; '' where there is no ice or no pull
 *
 * @example
 * explainIce(pulls, 10) // 'The ice is gone by the end of pull 4.'
 */
export function explainIce(pulls: readonly PullSummary[], loaded: number): string {
  const last = pulls.at(-1);
  if (loaded === 0 || last === undefined) return '';
  const gone = pulls.find(({ atEnd }) => atEnd.iceMass < NONE_LEFT * loaded);
  if (gone !== undefined) return `The ice is gone by the end of pull ${gone.pull}.`;
  return `${((100 * last.atEnd.iceMass) / loaded).toFixed(0)} % of the ice is left after pull ${last.pull}.`;
}
