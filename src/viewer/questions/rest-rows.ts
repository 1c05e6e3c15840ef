import type { RestStudy } from '../../sim/index.ts';

/** The rests that count in the answer, shortest first: which it is, its length, the pulls with it. */
export function restRows(
  { pulls, now, countNow, needed, longest, countAtLongest }: RestStudy,
  write: (seconds: number) => string,
): string[][] {
  const rests = [
    { name: 'as in the cycle', length: now, count: countNow },
    ...(needed === undefined ? [] : [{ name: 'shortest that does', length: needed, count: pulls }]),
    { name: 'longest tried', length: longest, count: countAtLongest },
  ];
  return rests
    .toSorted((a, b) => a.length - b.length)
    .map(({ name, length, count }) => [name, write(length), `${count} of ${pulls}`]);
}
