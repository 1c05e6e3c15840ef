import { describe, expect, it } from 'vitest';
import { indicatedWork } from '../../../src/sim/correlations/indicated-work.ts';
import { OutOfRangeError } from '../../../src/sim/errors.ts';

/** Area of the indicator diagram by the trapezoid rule, p1 V = 1: closed compression to V/v, then delivery at PR. */
function areaOf(volumeRatio: number, pressureRatio: number): number {
  const steps = 20000;
  const last = 1 / volumeRatio;
  let closed = 0;
  for (let k = 0; k < steps; k++) {
    const [from, to] = [k, k + 1].map((n) => 1 + ((last - 1) * n) / steps);
    closed += 0.5 * (from ** -1.4 + to ** -1.4) * (from - to);
  }
  return closed + pressureRatio * last - 1;
}

describe('the work of a displacement machine', () => {
  it.each([
    [1, 1.8],
    [1.3, 1],
    [1.3, 1.8],
    [1.5, 2.4],
  ])('of volume ratio %f at pressure ratio %f is the area of its diagram, times (g - 1)/g', (v, ratio) => {
    expect(indicatedWork(v, ratio, 1.4)).toBeCloseTo((2 / 7) * areaOf(v, ratio), 7);
  });

  it('is isentropic where the built-in compression meets the discharge, and more on either side', () => {
    const matched = 1.3 ** 1.4;
    expect(indicatedWork(1.3, matched, 1.4)).toBeCloseTo(matched ** (2 / 7) - 1, 12);
    for (const ratio of [1.1, 1.3, 1.6, 2.2])
      expect(indicatedWork(1.3, ratio, 1.4)).toBeGreaterThan(ratio ** (2 / 7) - 1);
  });

  it('is refused below a volume ratio of 1 and without pressure', () => {
    expect(() => indicatedWork(0.9, 1.5, 1.4)).toThrow(OutOfRangeError);
    expect(() => indicatedWork(1.2, 0, 1.4)).toThrow(OutOfRangeError);
  });
});
