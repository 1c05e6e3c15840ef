import { describe, expect, it } from 'vitest';
import type { DayStudy } from '../../../../src/sim/index.ts';
import { withDayAndEdge } from '../../../../src/viewer/questions/day/day-figure.tsx';

/** Eight pulls up to 290 K, two at 295, none at 300; that day is the one at 297 K. */
function study(changes: Partial<DayStudy> = {}): DayStudy {
  const day = { temperature: 297, count: 1, pullsRun: 8 } as DayStudy['day'];
  return {
    limit: 331,
    typed: day,
    day,
    pulls: 8,
    hottest: { kind: 'found', temperature: 292, beyond: { kind: 'limit', pull: 6 } },
    curve: [
      { temperature: 290, count: 8 },
      { temperature: 295, count: 2 },
      { temperature: 300, count: 0 },
    ],
    typedStart: {},
    ...changes,
  };
}
const drawn = (changes: Partial<DayStudy> = {}) =>
  withDayAndEdge(study(changes)).map(({ temperature, count }) => [Number(temperature.toFixed(1)), count]);

describe('the curve of pulls against the temperature outside', () => {
  it('goes through that day and falls where the hottest day ends', () => {
    expect(drawn()).toEqual([
      [290, 8],
      [292, 8],
      [292.1, 5],
      [295, 2],
      [297, 1],
      [300, 0],
    ]);
  });

  it('counts no more pulls than are asked about, and leaves out a session that has fewer', () => {
    const day = { temperature: 297, count: 7, pullsRun: 8 } as DayStudy['day'];
    expect(drawn({ pulls: 3, day, hottest: { kind: 'too few pulls', pulls: 3 } })).toContainEqual([297, 3]);
    expect(drawn({ pulls: 12 })).not.toContainEqual([297, 1]);
  });

  it('has no edge where a stop ends the pulls, but its hottest day', () => {
    const hottest = { kind: 'found', temperature: 292, beyond: { kind: 'stopped', reason: ['boils'] } } as const;
    expect(drawn({ hottest }).map(([at]) => at)).toEqual([290, 292, 295, 297, 300]);
  });
});
