import { describe, expect, test } from 'vitest';
import {
  acceptCandidate,
  GAMMA,
  makeStepBuffers,
  tryStep,
  WEIGHT_1,
  WEIGHT_2,
} from '../../../src/sim/solver/sdirk2.ts';
import { Stepper } from '../../../src/sim/solver/stepper.ts';
import { largest, observedOrders } from '../../support/convergence.ts';
import { LinearSystem, lag, segmentOf } from '../../support/linear-system.ts';

/** R. Alexander, SIAM J. Numer. Anal. 14(6), 1977, 1006-1021: two stages, stiffly accurate, abscissae g and 1. */
describe('the tableau', () => {
  test('has the smaller root of g^2 - 2 g + 1/2, which makes it L-stable', () => {
    expect(GAMMA ** 2 - 2 * GAMMA + 1 / 2).toBeCloseTo(0, 15);
    expect(GAMMA).toBeLessThan(1 / 2);
  });

  test('integrates 1 and t exactly', () => {
    expect(WEIGHT_1 + WEIGHT_2).toBeCloseTo(1, 15);
    expect(WEIGHT_1 * GAMMA + WEIGHT_2 * 1).toBeCloseTo(1 / 2, 15);
  });
});

/** One step of dT/dt = -T/tau from T = 1. */
function stepOfDecay(stepOverTimeConstant: number): number {
  const system = lag(1, [0]);
  const buffers = makeStepBuffers(system, Float64Array.of(1));
  tryStep(system, 0, stepOverTimeConstant, buffers);
  return buffers.next[0];
}

describe('one step of a decay', () => {
  // R(z) = (1 + (1 - 2 g) z)/(1 - g z)^2 follows from the tableau.
  test.each([0.01, 0.5, 2, 30, 1e4])('of %f time constants is that of the tableau', (h) => {
    const g = 1 - Math.SQRT1_2;
    expect(stepOfDecay(h)).toBeCloseTo((1 - (1 - 2 * g) * h) / (1 + g * h) ** 2, 14);
  });

  test('leaves nothing of the start however long it is', () => {
    expect(Math.abs(stepOfDecay(1e9))).toBeLessThan(1e-8);
  });
});

test('a ramp that everything follows is exact in one step', () => {
  const system = new LinearSystem({ matrix: [[-1 / 30]], constants: [[10 / 30 + 2]], ramp: [2 / 30] });
  const buffers = makeStepBuffers(system, Float64Array.of(10));
  tryStep(system, 0, 100, buffers);
  expect(buffers.next[0]).toBeCloseTo(210, 10);
});

describe('the estimated error', () => {
  // Slope k1 carries the error of its stage, a backward Euler step: in a decay J (g h)^2/2 y'' = (g h)^2/2 y'''. That
  // takes (2 + 2 sqrt 2) g^2 = sqrt 2 - 1 off the divided difference and leaves 2 - sqrt 2 of the error of the step.
  test.each([1 / 2, 1 / 8, 1 / 32])('of a decay is 0.59 of that of the step, with steps of %f s', (h) => {
    const system = lag(8, [0]);
    const buffers = makeStepBuffers(system, Float64Array.of(90));
    for (let n = 0; n < 20; n++) {
      const estimate = tryStep(system, n * h, h, buffers);
      const error = Math.abs(buffers.next[0] - buffers.state[0] * Math.exp(-h / 8));
      // The first step has no slope to look back on and estimates with care.
      if (n === 0) expect(estimate).toBeGreaterThan(error);
      else expect(Math.abs(estimate / error / (2 - Math.SQRT2) - 1)).toBeLessThan(0.05);
      acceptCandidate(buffers, h);
    }
  });

  test('is the largest of all temperatures, wherever it stands and whichever way it points', () => {
    const alone = estimateOf([1]);
    for (const starts of [
      [1, 0, 0],
      [0, 1, 0],
      [0, 0, 1],
      [0, 0, -1],
      [0.5, -1, 0.2],
    ]) {
      expect(estimateOf(starts)).toBeCloseTo(alone, 14);
    }
  });

  test('is not a number where any temperature is none', () => {
    for (const starts of [
      [Number.NaN, 1, 1],
      [1, Number.NaN, 1],
      [1, 1, Number.NaN],
    ]) {
      expect(estimateOf(starts)).toBeNaN();
    }
  });

  test('is not a number where a stage has no answer', () => {
    const unanswered = lag(1, [0], { noAnswerAfter: 0.5 });
    expect(tryStep(unanswered, 0, 1, makeStepBuffers(unanswered, Float64Array.of(1)))).toBeNaN();
    expect(tryStep(unanswered, 0.4, 1, makeStepBuffers(unanswered, Float64Array.of(1)))).toBeNaN();
  });
});

/** Estimated error of one step of uncoupled decays with these starts. */
function estimateOf(starts: readonly number[]): number {
  const matrix = starts.map((_, i) => starts.map((_, j) => (i === j ? -1 : 0)));
  const decays = new LinearSystem({ matrix, constants: [starts.map(() => 0)] });
  return tryStep(decays, 0, 0.5, makeStepBuffers(decays, Float64Array.from(starts)));
}

describe('metal heated by 15 kW beside a reservoir that loses heat', () => {
  // C1 8 kJ/K, C2 24 kJ/K, 1200 W/K between them, 400 W/K to 25 degC, both at 60 degC. Closed form (eigenvalues of the
  // 2 x 2 matrix), confirmed by the matrix exponential to 1e-9.
  const times = [1, 3, 10, 20, 60, 180];
  const metal = [61.70254449, 64.25794437, 68.37490269, 69.99818038, 72.02353233, 74.31388778];
  const reservoir = [59.4786627, 58.74085119, 57.87495162, 58.09495497, 59.76623986, 61.86982259];
  const matrix = [
    [-1200 / 8000, 1200 / 8000],
    [1200 / 24000, -1600 / 24000],
  ];
  const constants = [[15000 / 8000, (400 * 25) / 24000]];

  function errorsWith(fixedStep: number): number[] {
    const system = new LinearSystem({ matrix, constants });
    const stepper = new Stepper(system, [segmentOf(0, 180)], Float64Array.of(60, 60), { tolerance: 1, fixedStep });
    const errors: number[] = [];
    while (stepper.step() !== 'finished') {
      const k = times.indexOf(Math.round(stepper.time * 64) / 64);
      if (k >= 0) errors.push(stepper.state[0] - metal[k], stepper.state[1] - reservoir[k]);
    }
    return errors;
  }

  test('is met with order two', () => {
    const errors = [1 / 2, 1 / 4, 1 / 8, 1 / 16].map((step) => largest(errorsWith(step)));
    expect(errorsWith(1 / 2).length).toBe(2 * times.length);
    expect(errors[3]).toBeLessThan(1e-4);
    for (const order of observedOrders(errors)) expect(order).toBeCloseTo(2, 1);
  });
});
