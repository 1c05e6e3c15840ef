import { describe, expect, test } from 'vitest';
import { Secant } from '../../../src/sim/kernels/secant.ts';

/** Fixed point of F(x) = 3 + slope x is 3/(1 - slope). */
const straight = (slope: number) => (x: number) => 3 + slope * x;
const fixedPoint = (slope: number) => 3 / (1 - slope);

/** Rounds until guess and result agree to 1e-9; 99 where they do not within 20. */
function roundsOf(secant: Secant, F: (x: number) => number, guess: number): number {
  secant.start();
  let x = guess;
  for (let round = 1; round <= 20; round++) {
    const f = F(x);
    if (Math.abs(f - x) < 1e-9) return round;
    x = secant.next(x, f);
  }
  return 99;
}

describe('a straight F', () => {
  test.each([-0.8, -0.3, 0, 0.1, 0.5, 0.85])('of slope %f is met in the third round', (slope) => {
    expect(roundsOf(new Secant(-0.9, 0.9, 0.1), straight(slope), 400)).toBeLessThanOrEqual(3);
  });

  test.each([-0.8, 0.5, 0.85])('of slope %f is met in the second round by a search that remembers it', (slope) => {
    const secant = new Secant(-0.9, 0.9, 0.1);
    roundsOf(secant, straight(slope), 400);
    expect(roundsOf(secant, straight(slope), -70)).toBe(2);
    secant.reset();
    expect(roundsOf(secant, straight(slope), -70)).toBe(3);
  });
});

test('a bent F is met sooner than by putting the result back in', () => {
  const F = (x: number) => 2 * Math.cos(x / 3);
  let [x, plain] = [0, 0];
  while (Math.abs(F(x) - x) >= 1e-9) {
    x = F(x);
    plain++;
  }
  expect(plain).toBeGreaterThan(15);
  expect(roundsOf(new Secant(-0.9, 0.9, 0.1), F, 0)).toBeLessThan(8);
});

describe('a slope outside the range', () => {
  test.each([1.4, -1.5])('as of %f counts as noise: the next guess uses the first one', (slope) => {
    const secant = new Secant(-0.9, 0.9, 0.1);
    secant.start();
    secant.next(0, straight(slope)(0));
    const f = straight(slope)(2);
    expect(secant.next(2, f)).toBeCloseTo((f - 0.1 * 2) / 0.9, 12);
  });
});

test('a guess that comes twice keeps the slope', () => {
  const secant = new Secant(-0.9, 0.9, 0.1);
  roundsOf(secant, straight(0.5), 400);
  secant.start();
  secant.next(2, 3);
  expect(secant.next(2, 3)).toBeCloseTo((3 - 0.5 * 2) / 0.5, 9);
});

describe('the distance from the fixed point', () => {
  test.each([-0.8, -0.3, 0.3, 0.8])('is exact for a straight F of slope %f once it is known', (slope) => {
    const secant = new Secant(-0.9, 0.9, 0.1);
    const F = straight(slope);
    roundsOf(secant, F, 400);
    expect(secant.distance(F(7) - 7)).toBeCloseTo(Math.abs(fixedPoint(slope) - F(7)), 9);
  });

  test.each([-0.05, 0, 0.05])('is not taken for less than the first slope says at slope %f', (slope) => {
    const secant = new Secant(-0.9, 0.9, 0.1);
    const F = straight(slope);
    roundsOf(secant, F, 400);
    expect(secant.distance(F(7) - 7)).toBeGreaterThan(Math.abs(fixedPoint(slope) - F(7)));
  });
});
