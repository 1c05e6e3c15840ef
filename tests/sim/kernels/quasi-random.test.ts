import { describe, expect, it } from 'vitest';
import { quasiRandom } from '../../../src/sim/kernels/quasi-random.ts';

/** Steps as published: the golden ratio's in one dimension, then Roberts 2018 for two and three. */
const PUBLISHED = [
  [0.6180339887498949],
  [0.7548776662466927, 0.5698402909980532],
  [0.8191725133961645, 0.6710436067037893, 0.5497004779019703],
];

const around = (value: number): number => ((value % 1) + 1) % 1;

describe('quasi-random points', () => {
  it.each(PUBLISHED.map((steps) => [steps.length, steps] as const))(
    'step as published in %d dimensions',
    (d, steps) => {
      const points = quasiRandom(d, 5);
      for (const n of [0, 1, 77]) {
        const [here, next] = [points(n), points(n + 1)];
        for (const [axis, step] of steps.entries()) expect(around(next[axis] - here[axis])).toBeCloseTo(step, 11);
      }
    },
  );

  it('fill every axis evenly: of 64 points, 2 to 6 in each sixteenth', () => {
    const points = quasiRandom(6, 1);
    for (let axis = 0; axis < 6; axis++) {
      const counts = new Array(16).fill(0);
      for (let n = 0; n < 64; n++) counts[Math.floor(16 * points(n)[axis])]++;
      expect(Math.max(...counts), `axis ${axis}`).toBeLessThanOrEqual(6);
      expect(Math.min(...counts), `axis ${axis}`).toBeGreaterThanOrEqual(2);
    }
  });

  it('are the same for the same seed, shifted as a whole by another', () => {
    const [one, same, other] = [quasiRandom(3, 7), quasiRandom(3, 7), quasiRandom(3, 8)];
    expect(one(40)).toEqual(same(40));
    expect(new Set(one(0)).size).toBe(3);
    const shifts = [0, 9, 40].map((n) => one(n).map((value, axis) => around(other(n)[axis] - value)));
    for (const shift of shifts) {
      for (const [axis, value] of shift.entries()) expect(value).toBeCloseTo(shifts[0][axis], 9);
    }
    for (const value of shifts[0]) expect(Math.min(value, 1 - value)).toBeGreaterThan(1e-3);
  });
});
