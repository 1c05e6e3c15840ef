import { describe, expect, it } from 'vitest';
import { logSpaced, readLogTable, sampleCurve, slopeOfLogTable } from '../../../src/sim/kernels/log-table.ts';

const X = [1, 2, 8];
const Y = [3, 12, 6];

describe('a curve by points, straight in logarithms', () => {
  it('gives each point back', () => {
    for (const [k, x] of X.entries()) expect(readLogTable(X, Y, x)).toBeCloseTo(Y[k], 13);
  });

  it('is the power law through two points between them, and runs on with it beyond', () => {
    // 3 to 12 while x doubles: a square; 12 to 6 while x grows fourfold: x^-1/2
    expect(readLogTable(X, Y, 1.5)).toBeCloseTo(3 * 1.5 ** 2, 12);
    expect(readLogTable(X, Y, 0.1)).toBeCloseTo(3 * 0.1 ** 2, 12);
    expect(readLogTable(X, Y, 4)).toBeCloseTo(12 / Math.sqrt(2), 12);
    expect(readLogTable(X, Y, 800)).toBeCloseTo(0.6, 12);
    expect(slopeOfLogTable(X, Y, 1.5)).toBeCloseTo(2, 13);
    expect(slopeOfLogTable(X, Y, 30)).toBeCloseTo(-0.5, 13);
  });
});

describe('points of a curve', () => {
  it('are thirteen where it is a power law', () => {
    const samples = sampleCurve(
      (x) => 5 * x ** 0.7,
      (y) => [y],
      [0.01, 3],
      1e-6,
    );
    expect(samples.map(({ x }) => x)).toEqual(logSpaced(0.01, 3, 13));
  });

  it('lie close where it has a kink, so that it is met there too', () => {
    const kinked = (x: number): number => (x < 0.2 ? x ** 0.3 : 0.2 ** 0.3 * (x / 0.2) ** 1.9);
    const samples = sampleCurve(kinked, (y) => [y], [0.01, 3], 1e-3);
    const [x, y] = [samples.map((sample) => sample.x), samples.map(({ found }) => found)];
    for (const at of logSpaced(0.01, 3, 997))
      expect(Math.abs(readLogTable(x, y, at) / kinked(at) - 1)).toBeLessThan(3e-3);
    expect(samples.length).toBeLessThan(30);
    expect(x).toEqual(x.toSorted((a, b) => a - b));
  });

  it('are as close as the worst of several numbers asks', () => {
    const samples = sampleCurve(
      (x) => [x, 1 + x] as const,
      (pair) => pair,
      [0.01, 3],
      1e-4,
    );
    expect(samples.length).toBeGreaterThan(13);
  });
});
