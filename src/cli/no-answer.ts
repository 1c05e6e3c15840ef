import { type Config, firstPullOf, isPartLoad, isPumped, phasesOf, pullsOfCycle } from '../sim/index.ts';
import { EXIT } from './exit-codes.ts';

/**
 * Says why there is no answer.
 *
 * @param isInFile - whether the file has what it takes, so that it is the run that did not come to it
 * @returns the exit code
 */
export function noAnswer(why: string, isInFile: boolean): number {
  console.error(why);
  return isInFile ? EXIT.stopped : EXIT.nothingToAnswer;
}

export const hasPull = ({ cycle }: Config): boolean => pullsOfCycle(cycle) > 0;

/** Whether a pump is on in the first pull. */
export function hasPumpedPull({ cycle }: Config): boolean {
  const first = firstPullOf(cycle);
  return first !== undefined && isPumped(first);
}

export const hasPartLoad = ({ cycle }: Config): boolean => phasesOf(cycle).some(({ kind }) => isPartLoad(kind));

/** Whether one of the first pulls has a part-load phase somewhere before it. */
export function hasPartLoadBeforePull({ cycle }: Config, firstPulls: number): boolean {
  const { before, block, repeats, after } = cycle;
  const repeated = Array.from({ length: Math.min(repeats, firstPulls) }, () => block).flat();
  const kinds = [...before, ...repeated, ...after].map(({ kind }) => kind);
  const pulls = kinds.flatMap((kind, k) => (kind === 'pull' ? [k] : []));
  return pulls.slice(0, firstPulls).some((pull) => kinds.slice(0, pull).some(isPartLoad));
}
