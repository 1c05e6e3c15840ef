import { describe, expect, it } from 'vitest';
import { fitLine } from '../../../src/sim/kernels/least-squares.ts';

describe('the best straight line', () => {
  it('is that of a published example', () => {
    // F. J. Anscombe, The American Statistician 27(1), 1973, first set: y = 3.00 + 0.500 x.
    const x = [10, 8, 13, 9, 11, 14, 6, 4, 12, 7, 5];
    const y = [8.04, 6.95, 7.58, 8.81, 8.33, 9.96, 7.24, 4.26, 10.84, 4.82, 5.68];
    const [level, slope] = fitLine(
      x.map((each) => [each]),
      y,
    );
    expect(level).toBeCloseTo(3.0, 2);
    expect(slope).toBeCloseTo(0.5, 3);
  });

  it('finds a plane again', () => {
    const points = [
      [0, 1, 0],
      [0, 0, 1],
      [1, 1, 0],
      [1, 0, 0.5],
      [0.5, 0.5, 0.2],
      [0, 1, 1],
    ];
    const fit = fitLine(
      points,
      points.map(([a, b, c]) => 4 - 2 * a + 3 * b + 0.5 * c),
    );
    for (const [k, value] of [4, -2, 3, 0.5].entries()) expect(fit[k]).toBeCloseTo(value, 12);
  });

  it('lies as near as can be: what is left is square to every column', () => {
    const points = [0, 1, 2, 3, 4, 5].map((n) => [n / 5, (n % 3) / 2]);
    const values = [1, 4, 2, 7, 1, 3];
    const [level, a, b] = fitLine(points, values);
    const rest = points.map(([x, y], row) => values[row] - level - a * x - b * y);
    for (const column of [points.map(() => 1), points.map(([x]) => x), points.map(([, y]) => y)]) {
      expect(column.reduce((sum, each, row) => sum + each * rest[row], 0)).toBeCloseTo(0, 12);
    }
  });
});
