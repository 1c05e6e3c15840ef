import { type Config, firstPullOf, pullsOfCycle, WHY_NO_ANSWER } from '../sim/index.ts';

/** Pulls that an answer is asked for: as typed, else those of the cycle; and how long the first lasts [s]; prints why where there is none. */
export function wantedPulls(
  { cycle }: Config,
  typed: number | undefined,
): { pulls: number; length: number } | undefined {
  const first = firstPullOf(cycle);
  if (first === undefined) {
    console.error(WHY_NO_ANSWER.noPull);
    return undefined;
  }
  return { pulls: typed ?? pullsOfCycle(cycle), length: first.duration };
}
