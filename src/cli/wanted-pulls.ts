import { type Config, phasesOf } from '../sim/index.ts';

/** Pulls that an answer is asked for: as typed, else those of the cycle; and how long the first lasts [s]. */
export function pullsOf({ cycle }: Config, typed: number | undefined): { pulls: number; length: number } | undefined {
  const pullsIn = (phases: Config['cycle']['block']) => phases.filter(({ kind }) => kind === 'pull');
  const all = pullsIn(phasesOf(cycle));
  if (all.length === 0) {
    console.error('The cycle has no pull: there is nothing to count.');
    return undefined;
  }
  const inCycle = all.length + (cycle.repeats - 1) * pullsIn(cycle.block).length;
  return { pulls: typed ?? inCycle, length: all[0].duration };
}
