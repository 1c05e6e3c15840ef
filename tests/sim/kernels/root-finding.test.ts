import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { findRoot } from '../../../src/sim/kernels/root-finding.ts';

describe('a root with a closed form', () => {
  // Plastic number, golden ratio, Omega constant: OEIS A060006, A001622, A030178; the others by logarithm or square
  // root
  test.each([
    ['x^3 - x - 1', (x: number) => x ** 3 - x - 1, 0, 2, 1.324717957244746],
    ['x^2 - x - 1', (x: number) => x * x - x - 1, 1, 30, 1.618033988749895],
    ['x e^x - 1', (x: number) => x * Math.exp(x) - 1, 0, 1, 0.5671432904097838],
    ['falling', (x: number) => 2 - x * x, 0, 5, Math.SQRT2],
    ['below zero', (x: number) => Math.exp(x) - 0.001, -30, 0, -6.907755278982137],
    ['steep', (x: number) => Math.exp(x) - 1e5, -50, 50, 11.512925464970229],
    ['flat at the root', (x: number) => (x - 0.3) ** 9, 0, 1, 0.3],
    ['a step', (x: number) => (x < 0.3 ? -1 : 1), 0, 1, 0.3],
  ])('%s', (_, f, low, high, root) => {
    for (const guess of [undefined, 0.5 * (low + high), root, root * 1.01, root * 0.7, low, high, Number.NaN]) {
      expect(Math.abs(findRoot(f, low, high, 1e-12, guess) / root - 1), `from ${guess}`).toBeLessThan(2e-12);
    }
  });
});

test('keeps to the tolerance asked for', () => {
  for (const tolerance of [1e-3, 1e-6, 1e-9]) {
    const root = findRoot((x) => x ** 3 - x - 1, 0, 2, tolerance, 1.3);
    expect(Math.abs(root / 1.324717957244746 - 1)).toBeLessThan(tolerance);
  }
});

test('finds any root of a rising cubic from any guess', () => {
  const within = fc.double({ min: -10, max: 10, noNaN: true });
  fc.assert(
    fc.property(within, within, fc.double({ min: 0, max: 100, noNaN: true }), (root, guess, linear) => {
      const found = findRoot((x) => (x - root) ** 3 + (linear + 1e-3) * (x - root), -11, 11, 1e-12, guess);
      expect(Math.abs(found - root)).toBeLessThan(1e-12 * Math.abs(root) + 1e-14);
    }),
    { seed: 1, numRuns: 500 },
  );
});

describe('with a guess', () => {
  test('that is good to 1e-4 needs at most five calls, none of them at the ends', () => {
    const balance = (x: number) => 90 * (1 - x * x) - 40 * x ** 1.8;
    const root = findRoot(balance, 0, 1, 1e-12);
    for (const guess of [root * 1.0001, root * 0.9999]) {
      const asked: number[] = [];
      findRoot(
        (x) => {
          asked.push(x);
          return balance(x);
        },
        0,
        1,
        1e-12,
        guess,
      );
      expect(asked.length).toBeLessThanOrEqual(5);
      expect(asked).not.toContain(0);
      expect(asked).not.toContain(1);
    }
  });

  test('that is far off costs little more than none', () => {
    let calls = 0;
    const root = findRoot(
      (x) => {
        calls++;
        return 90 * (1 - x * x) - 40 * x ** 1.8;
      },
      0,
      1,
      1e-12,
      0.3,
    );
    expect(90 * (1 - root * root)).toBeCloseTo(40 * root ** 1.8, 9);
    expect(calls).toBeLessThanOrEqual(11);
  });

  test('that is the root needs one call', () => {
    let calls = 0;
    const f = (x: number) => {
      calls++;
      return x - 0.75;
    };
    expect(findRoot(f, 0, 1, 1e-12, 0.75)).toBe(0.75);
    expect(calls).toBe(1);
  });

  test('next to an end finds a root at that end', () => {
    expect(findRoot((x) => x - 1, 0, 1, 1e-12, 0.99999)).toBeCloseTo(1, 12);
    expect(findRoot((x) => x, 0, 1, 1e-12, 1e-5)).toBeCloseTo(0, 12);
  });

  test('takes values too small to multiply', () => {
    expect(findRoot((x) => 1e-200 * (x - 0.25), 0, 1, 1e-12, 0.9)).toBeCloseTo(0.25, 12);
  });
});

describe('answers NaN', () => {
  test('where both ends have one sign', () => {
    expect(findRoot((x) => x * x + 1, -1, 1, 1e-12)).toBeNaN();
    expect(findRoot((x) => x * x + 1, -1, 1, 1e-12, 0.5)).toBeNaN();
    expect(findRoot(() => 1, -1, 1, 1e-12, 0.5)).toBeNaN();
  });

  test('where the function is NaN', () => {
    expect(findRoot(() => Number.NaN, 0, 1, 1e-12)).toBeNaN();
    expect(findRoot(() => Number.NaN, 0, 1, 1e-12, 0.5)).toBeNaN();
    expect(findRoot((x) => (x > 0.2 && x < 0.8 ? Number.NaN : x - 0.5), 0, 1, 1e-12)).toBeNaN();
  });
});
