import { describe, expect, test } from 'vitest';
import { largest, observedOrders } from '../support/convergence.ts';
import { steadyOutlets } from '../support/steady-core.ts';

/**
 * Air cooled by water in cross-flow, both unmixed, at 5.4 transfer units: a textbook's example and its exact answer.
 *
 * Source: S. K. Som, Introduction to Heat Transfer, ch. 10, example 7: air 10 kg/s at 125 degC (1010 J/(kg K)), water
 * 7 kg/s at 20 degC (4180 J/(kg K)), UA 55 kW/K. The book rounds to 26 degC; the exact series gives an effectiveness
 * of 0.948590, confirmed by fine marching. The usual approximate formula says 24.95 degC: 0.45 K off.
 */
const EXACT = { air: 25.398, water: 54.381 };
const PRINTED = { book: 26, approximate: 24.95 };
/** Half a digit of the figures above [K]. */
const DIGIT = 5e-4;

function outletsOn(cells: number): { air: number; water: number } {
  // The split between the two sides is not stated and does not matter in steady state.
  const rates = {
    airRate: 10 * 1010,
    airConductance: 2 * 55e3,
    coolantRate: 7 * 4180,
    coolantConductance: 2 * 55e3,
    metalLoss: 0,
    metalSource: 0,
  };
  const { airOut, coolantOut } = steadyOutlets(rates, cells, cells, 125, 20);
  return { air: airOut, water: coolantOut };
}

function errorsOn(cells: number): number[] {
  const { air, water } = outletsOn(cells);
  return [air - EXACT.air, water - EXACT.water];
}

describe('outlets of the worked example', () => {
  test.each([48, 96])('on %i cells a side are within 0.02 K of the exact ones', (cells) => {
    expect(largest(errorsOn(cells))).toBeLessThan(0.02);
  });

  test('extrapolated from 96 and 192 cells a side are the exact ones to their last digit', () => {
    const [coarse, fine] = [outletsOn(96), outletsOn(192)];
    expect(Math.abs((4 * fine.air - coarse.air) / 3 - EXACT.air)).toBeLessThan(2 * DIGIT);
    expect(Math.abs((4 * fine.water - coarse.water) / 3 - EXACT.water)).toBeLessThan(2 * DIGIT);
  });

  test('converge with order 1.8 or more', () => {
    const orders = observedOrders([12, 24, 48].map((cells) => largest(errorsOn(cells))));
    expect(Math.min(...orders)).toBeGreaterThan(1.8);
  });

  test('are nearer to the book than the approximate formula is', () => {
    expect(Math.abs(outletsOn(96).air - PRINTED.book)).toBeLessThan(Math.abs(PRINTED.approximate - PRINTED.book));
  });
});
