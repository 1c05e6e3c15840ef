import { describe, expect, it } from 'vitest';
import { roundRange, roundStep, ticksBetween, tickWriter, timeStep } from '../../../src/viewer/figures/ticks.ts';

describe('round numbers of an axis', () => {
  it.each([
    [1, 1],
    [1.2, 2],
    [2.1, 2.5],
    [3, 5],
    [7, 10],
    [0.03, 0.05],
    [120, 200],
  ])('takes %s up to a step of %s', (least, step) => expect(roundStep(least)).toBeCloseTo(step, 12));

  it('puts ticks on multiples, ends included', () => {
    expect(ticksBetween(25, 75, 10)).toEqual([30, 40, 50, 60, 70]);
    expect(ticksBetween(20, 60, 20)).toEqual([20, 40, 60]);
  });

  it.each([
    [0, 13.2, [0, 20]],
    [31, 48.7, [30, 50]],
    [26, 55, [20, 60]],
    [0, 175, [0, 200]],
    [-3, 4, [-5, 5]],
    [2, 21, [0, 40]],
  ])('holds %s to %s between %s in at most two steps', (low, high, range) => {
    expect(roundRange(low, high, 2)).toEqual(range);
  });

  it('gives a line that never moves a range of its own', () => {
    const [low, high] = roundRange(5, 5, 2);
    expect(low).toBeLessThanOrEqual(5);
    expect(high).toBeGreaterThan(low);
  });
});

describe('a tick', () => {
  it.each([
    [[150, 155, 160], 155, '155'],
    [[152, 152.5, 153], 152.5, '152.5'],
    [[0, 0.25, 0.5], 0.25, '0.25'],
    [[-0.2, 0, 0.2], 0, '0.0'],
    [[4], 4, '4'],
  ])('of %j is written as far as it tells it from the next', (ticks, tick, expected) => {
    expect(tickWriter(ticks)(tick)).toBe(expected);
  });
});

describe('the step of a time axis', () => {
  // Never 1:40 or 16:40, as round hundreds of seconds would be.
  it.each([
    [4.5, 5],
    [11, 15],
    [59, 60],
    [65, 120],
    [250, 300],
    [900, 1200],
    [1500, 1800],
    [3000, 3600],
  ])('that needs %d s of room is %d s', (least, step) => {
    expect(timeStep(least)).toBe(step);
  });
});
