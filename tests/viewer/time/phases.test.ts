import { describe, expect, it } from 'vitest';
import type { Config, PullSummary } from '../../../src/sim/index.ts';
import {
  describeClock,
  describeTime,
  phaseAt,
  plannedPhases,
  startTime,
  stepByPull,
} from '../../../src/viewer/time/phases.ts';
import { minutePhases } from './hand-made.ts';

const phase = (name: string, kind: string, duration: number) => ({ name, kind, duration });

describe('phases of a drive cycle', () => {
  it('stand one behind the other, pulls counted through', () => {
    const cycle = {
      before: [phase('warm-up', 'idle', 60)],
      block: [phase('pull', 'pull', 12), phase('rest', 'idle', 48)],
      repeats: 2,
      after: [phase('soak', 'hot soak', 300)],
    } as unknown as Config['cycle'];
    expect(plannedPhases(cycle)).toEqual([
      { name: 'warm-up', kind: 'idle', start: 0, end: 60, pull: 0 },
      { name: 'pull', kind: 'pull', start: 60, end: 72, pull: 1 },
      { name: 'rest', kind: 'idle', start: 72, end: 120, pull: 1 },
      { name: 'pull', kind: 'pull', start: 120, end: 132, pull: 2 },
      { name: 'rest', kind: 'idle', start: 132, end: 180, pull: 2 },
      { name: 'soak', kind: 'hot soak', start: 180, end: 480, pull: 2 },
    ]);
  });

  const phases = minutePhases(3);

  it('gives a joint to the phase that ends there', () => {
    expect(phaseAt(phases, 72)).toMatchObject({ kind: 'pull', pull: 1 });
    expect(phaseAt(phases, 72.1)).toMatchObject({ name: 'rest', pull: 1 });
    expect(phaseAt(phases, 9999)).toMatchObject({ name: 'rest', pull: 3 });
    expect(phaseAt([], 3)).toBeUndefined();
  });

  it('says where a time stands', () => {
    expect(describeTime(phases, 72)).toBe('pull 1, 12.0\u00a0s in');
    expect(describeTime(phases, 8)).toBe('warm-up, 8.0\u00a0s in');
    expect(describeTime(phases, 130)).toBe('pull 2, 10.0\u00a0s in');
    expect(describeTime(phases, 140)).toBe('rest after pull 2, 8.0\u00a0s in');
    expect(describeClock(phases, 72)).toBe('1:12.0, pull 1, 12.0\u00a0s in');
  });

  it.each([
    [0, 1, 72],
    [72, 1, 132],
    [71.9, 1, 72],
    [200, 1, 240],
    [132, -1, 72],
    [100, -1, 72],
    [72, -1, 0],
  ] as const)('steps by pulls from %s s (%s) to %s s', (time, direction, to) => {
    expect(stepByPull(phases, time, direction)).toBe(to);
  });

  it('starts the clock at the end of the pull that decides', () => {
    const pulls = [
      { pull: 1, start: 60, duration: 12, peak: 330, margin: 1 },
      { pull: 2, start: 120, duration: 12, peak: 333, margin: -2 },
      { pull: 3, start: 180, duration: 12, peak: 340, margin: -9 },
    ] as unknown as PullSummary[];
    expect(startTime(pulls)).toBe(132);
    expect(startTime([])).toBe(0);
  });
});
