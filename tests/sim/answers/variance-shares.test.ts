import { describe, expect, it } from 'vitest';
import { varianceShares } from '../../../src/sim/answers/variance-shares.ts';
import { quasiRandom } from '../../../src/sim/kernels/quasi-random.ts';

const sampleOf = (dimensions: number, runs: number): number[][] => {
  const points = quasiRandom(dimensions, 3);
  return Array.from({ length: runs }, (_, n) => points(n));
};

describe('shares of the spread', () => {
  it('are the known ones of a straight-line model: squares of the slopes over their sum', () => {
    const points = sampleOf(3, 20);
    const { shares, unexplained } = varianceShares(
      points,
      points.map(([a, b, c]) => 7 + 4 * a - 2 * b + c),
    );
    for (const [k, share] of [16 / 21, 4 / 21, 1 / 21].entries()) expect(shares[k]).toBeCloseTo(share, 10);
    expect(unexplained).toBeCloseTo(0, 10);
  });

  it('leave open what is curved: x^2 has a variance of 4/45, its straight line 1/12 of it', () => {
    const points = sampleOf(2, 1000);
    const { shares, unexplained } = varianceShares(
      points,
      points.map(([x]) => x * x),
    );
    expect(shares[0]).toBeCloseTo(45 / 48, 2);
    expect(shares[1]).toBeCloseTo(0, 3);
    expect(unexplained).toBeCloseTo(3 / 48, 2);
  });

  it('leave open what two inputs only do together: of (x - 1/2)(y - 1/2) a straight line explains nothing', () => {
    const points = sampleOf(2, 1000);
    const { unexplained } = varianceShares(
      points,
      points.map(([x, y]) => (x - 0.5) * (y - 0.5)),
    );
    expect(unexplained).toBeGreaterThan(0.98);
  });

  it('are nothing where nothing varies', () => {
    const points = sampleOf(2, 10);
    expect(
      varianceShares(
        points,
        points.map(() => 5),
      ),
    ).toEqual({ shares: [0, 0], unexplained: 0 });
  });
});
