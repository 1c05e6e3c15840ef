import type { RestStudy } from '../../../sim/index.ts';

/** The rests of the answer, shortest first: its length, the pulls with it, and what it is where it is more than tried. */
export function restRows({ pulls, now, needed, curve }: RestStudy, write: (seconds: number) => string): string[][] {
  const tried = curve.map(({ rest, count }) => ({ rest, count, name: rest === now ? 'as in the cycle' : '' }));
  const rests = needed === undefined ? tried : [...tried, { rest: needed, count: pulls, name: 'shortest that does' }];
  return rests
    .toSorted((a, b) => a.rest - b.rest)
    .map(({ rest, count, name }) => [write(rest), `${count} of ${pulls}`, name]);
}
