import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { nextStepAfterAccepted, nextStepAfterRefused } from '../../../src/sim/solver/step-control.ts';

const accepted = fc.double({ min: 0, max: 1, noNaN: true });
const step = fc.double({ min: 1e-6, max: 100, noNaN: true });

describe('after an accepted step', () => {
  test('the next is at least a fifth and at most four times as long', () => {
    fc.assert(
      fc.property(step, accepted, accepted, (h, error, before) => {
        const next = nextStepAfterAccepted(h, error, before) / h;
        expect(next).toBeGreaterThanOrEqual(0.2);
        expect(next).toBeLessThanOrEqual(4);
      }),
    );
  });

  test('a larger error never makes the next step longer', () => {
    fc.assert(
      fc.property(accepted, accepted, accepted, (a, b, before) => {
        const [low, high] = [Math.min(a, b), Math.max(a, b)];
        expect(nextStepAfterAccepted(1, high, before)).toBeLessThanOrEqual(nextStepAfterAccepted(1, low, before));
      }),
    );
  });

  test('an error that has grown makes a shorter step than one that has fallen', () => {
    expect(nextStepAfterAccepted(1, 0.5, 0.1)).toBeLessThan(nextStepAfterAccepted(1, 0.5, 0.9));
  });

  test('no error at all makes the longest', () => {
    expect(nextStepAfterAccepted(2, 0, 1)).toBe(8);
  });

  // Local error goes with the third power of the step: where it stays put, so must the step.
  test('settles where the error is the third power of the step', () => {
    let h = 0.01;
    let before = 1;
    for (let n = 0; n < 60; n++) {
      const error = h ** 3;
      [h, before] = [nextStepAfterAccepted(h, error, before), error];
    }
    expect(nextStepAfterAccepted(h, h ** 3, before) / h).toBeCloseTo(1, 6);
    expect(h ** 3).toBeLessThan(1);
    expect(h ** 3).toBeGreaterThan(0.2);
  });
});

describe('after a refused step', () => {
  test.each([1.01, 3, 8, 100])('of error %f the next would do if the error is the third power of the step', (error) => {
    const next = nextStepAfterRefused(1, error);
    expect(next).toBeGreaterThanOrEqual(0.2);
    expect(next).toBeLessThan(1);
    expect(error * next ** 3).toBeLessThan(1);
  });

  test.each([Number.NaN, Number.POSITIVE_INFINITY, 1e9])('of error %f the next is a fifth', (error) => {
    expect(nextStepAfterRefused(10, error)).toBe(2);
  });
});
