import { describe, expect, test } from 'vitest';
import { Bench, runToEnd } from '../support/bench.ts';
import { largest, observedOrders } from '../support/convergence.ts';

/**
 * Air through metal alone, after a step of its inlet: the single blow, where the outlet and the mean of the metal have
 * a closed form.
 *
 *     theta_f = J(xi, eta), theta_s = 1 - J(eta, xi),    xi = hA/(m cp), eta = hA t/C of the metal
 *
 * Values: double series, confirmed by the non-central chi-squared tail to 1e-11 and the mean by quadrature to 1e-9.
 * Source: T. E. W. Schumann, J. Franklin Institute 208, 1929, 405-416.
 */
const BLOWS = [
  {
    xi: 1,
    eta: [0.25, 0.5, 0.8, 1.0, 1.25, 1.5, 2.0],
    fluid: [0.4542629011, 0.5301303622, 0.6086819495, 0.6542541613, 0.7044054592, 0.7477930576, 0.8174152251],
    metal: [0.1470028316, 0.2737449169, 0.4026012497, 0.4762223882, 0.5562402236, 0.6245831151, 0.7324092525],
  },
  {
    xi: 2,
    eta: [0.5, 1.0, 1.6, 2.0, 2.5, 3.0, 4.0],
    fluid: [0.26901206, 0.3942968589, 0.5270809319, 0.6035009606, 0.685370824, 0.7530113006, 0.8519363569],
    metal: [0.1993555766, 0.3662046262, 0.5274697064, 0.6142472393, 0.7028287923, 0.7727491194, 0.8696866338],
  },
  {
    xi: 5,
    eta: [1.25, 2.5, 4.0, 5.0, 6.25, 7.5, 10.0],
    fluid: [0.08779108385, 0.2313084493, 0.4350720159, 0.5639166686, 0.7002402851, 0.8038397147, 0.9256079853],
    metal: [0.2397685691, 0.4508338755, 0.6510320571, 0.7509039815, 0.8422250478, 0.9035342509, 0.967095949],
  },
] as const;

/** Errors of outlet and mean metal at all times; metal of 1 J/K and air of 1 W/K, so that eta = xi t. */
function errorsOf({ xi, eta, fluid, metal }: (typeof BLOWS)[number], nx: number, stepInEta: number): number[] {
  const airIn = [[0, 1] as const, ...eta.map((e) => [e / xi, 1] as const)];
  const air = { airRate: 1, airConductance: xi, airIn };
  const part = { nx, ny: 1, metalCapacity: 1, coolantCapacity: 1, coolantConductance: 0, ...air };
  const bench = new Bench({ parts: [part], coolantRate: 0, coolantIn: 0, end: eta[eta.length - 1] / xi });
  const errors: number[] = [];
  runToEnd(bench, bench.startState(0), { tolerance: 1, fixedStep: stepInEta / xi }, ({ time, isAtSegmentEnd }) => {
    if (!isAtSegmentEnd) return;
    const k = eta.findIndex((e) => e / xi === time);
    errors.push(bench.blocks[0].airOut - fluid[k], bench.blocks[0].metalMean - metal[k]);
  });
  return errors;
}

describe.each(BLOWS)('a blow of xi = $xi', (blow) => {
  test('on 48 cells is within 1e-4 in outlet and metal at every time', () => {
    const errors = errorsOf(blow, 48, 0.025);
    expect(errors.length).toBe(2 * blow.eta.length);
    expect(largest(errors)).toBeLessThan(1e-4);
  });

  test('converges with order 1.8 or more in the cells', () => {
    const orders = observedOrders([6, 12, 24].map((nx) => largest(errorsOf(blow, nx, 0.01))));
    expect(Math.min(...orders)).toBeGreaterThan(1.8);
  });
});
