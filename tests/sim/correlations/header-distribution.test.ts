import { describe, expect, test } from 'vitest';
import { layerGroups, velocityWeights } from '../../../src/sim/correlations/distribution-weights.ts';
import { splitOverLayers } from '../../../src/sim/correlations/header-distribution.ts';
import { OutOfRangeError } from '../../../src/sim/errors.ts';

const FLOW = 0.00025;
const DENSITY = 1000;
const AREA = 0.0002;
const LAYERS = 200;
/** density x speed^2 in the header, at its port */
const SPEED_HEAD = DENSITY * (FLOW / AREA) ** 2;

const header = (arrangement: 'U' | 'Z', linear: number, quadratic: number, layers = LAYERS) => {
  return { arrangement, layers, totalFlow: FLOW, density: DENSITY, headerArea: AREA, linear, quadratic };
};

/** Flow of every layer over the mean one, and the place of the layer from 0 at the inlet port to 1. */
function relativeFlows(split: { readonly shares: readonly number[] }): (readonly [place: number, flow: number])[] {
  return split.shares.map((share, k) => [(k + 0.5) / split.shares.length, share * split.shares.length] as const);
}

/** Worst difference from a closed form. */
function worst(split: { readonly shares: readonly number[] }, closedForm: (place: number) => number): number {
  return Math.max(...relativeFlows(split).map(([place, flow]) => Math.abs(flow - closedForm(place))));
}

/**
 * Closed forms of many layers: Bassiouny and Martin, Chem. Eng. Sci. 39, 1984, 693-704. w is the share still in the
 * header; with coefficients 1 (dividing) and 2 (combining) and a drop of b q^2 the balance is w'' = m^2 w (U) or
 * w'' = m^2 (w - 2) (Z), m^2 = rho V^2/(2 b (Q/n)^2), w(0) = 1, w(1) = 0.
 */
describe('many layers whose drop goes with flow squared', () => {
  const quadraticOf = (m: number) => SPEED_HEAD / (2 * (FLOW / LAYERS) ** 2 * m ** 2);

  test.each([0.2, 0.6, 1.5])('with ports at one end and m %f are the closed form', (m) => {
    const split = splitOverLayers(header('U', 0, quadraticOf(m)));
    expect(worst(split, (z) => (m * Math.cosh(m * (1 - z))) / Math.sinh(m))).toBeLessThan(1e-4);
  });

  test.each([0.2, 0.6, 1])('with ports at opposite ends and m %f are the closed form', (m) => {
    const split = splitOverLayers(header('Z', 0, quadraticOf(m)));
    // w = 2 + A e^(m z) + B e^(-m z); A + B = -1, A e^m + B e^-m = -2
    const A = (-2 + Math.exp(-m)) / (Math.exp(m) - Math.exp(-m));
    const B = -1 - A;
    expect(worst(split, (z) => m * (B * Math.exp(-m * z) - A * Math.exp(m * z)))).toBeLessThan(1e-4);
  });
});

describe('many layers whose drop goes with flow', () => {
  test('with ports at one end are the closed form', () => {
    // a (Q/n) w'' = -rho V^2 w w', integrated once: -w' = K w^2 + c, w = (c/K)^(1/2) tan((c K)^(1/2) (1 - z)),
    // K = rho V^2/(2 a Q/n); here c 0.5 and K from w(0) = 1, found by bisection
    const c = 0.5;
    let low = 0.01;
    let high = 4;
    for (let k = 0; k < 80; k++) {
      const K = (low + high) / 2;
      if (Math.sqrt(c / K) * Math.tan(Math.sqrt(c * K)) < 1) low = K;
      else high = K;
    }
    const split = splitOverLayers(header('U', (SPEED_HEAD * LAYERS) / (2 * low * FLOW), 0));
    const left = (z: number) => Math.sqrt(c / low) * Math.tan(Math.sqrt(c * low) * (1 - z));
    expect(worst(split, (z) => low * left(z) ** 2 + c)).toBeLessThan(1e-3);
  });
});

describe('a few layers', () => {
  test('two with ports at one end are the hand calculation', () => {
    // 1060 kg/m3, 2.5 m/s in the header: rho V^2/2 = 3312.5 Pa. The mean squares of the header flow at the two branches
    // differ by half, so the second is driven by 1656.25 Pa less; 8 MPa/(m3/s) gives q1 - q2 = 0.207 of 0.25 L/s
    const split = splitOverLayers({
      arrangement: 'U',
      layers: 2,
      totalFlow: 0.00025,
      density: 1060,
      headerArea: 0.0001,
      linear: 8e6,
      quadratic: 0,
    });
    expect(split.shares[0]).toBeCloseTo(0.9140625, 12);
    // layer 1: 8e6 x 0.9140625 x 0.00025 = 1828.125 Pa; its branch lies 3312.5 (1 - (1 + 0.0859375^2)/2) = 1644.018 Pa
    // below the drop between the ports, since combining costs twice what dividing gives back
    expect(split.drop).toBeCloseTo(1828.125 + 1644.018, 2);
    expect(split.headerDrop).toBeCloseTo(split.drop - 1000, 9);
  });

  test('between wide headers get the same', () => {
    const { shares, headerDrop } = splitOverLayers({ ...header('Z', 2e7, 0, 10), headerArea: 1 });
    for (const share of shares) expect(share).toBeCloseTo(0.1, 7);
    expect(Math.abs(headerDrop)).toBeLessThan(1e-3);
  });

  test('share out the whole flow, most next to the ports (U) or far from the inlet (Z)', () => {
    const U = splitOverLayers(header('U', 4e7, 0, 10)).shares;
    const Z = splitOverLayers(header('Z', 4e7, 0, 10)).shares;
    for (const shares of [U, Z]) expect(shares.reduce((sum, share) => sum + share, 0)).toBeCloseTo(1, 12);
    for (let k = 1; k < 10; k++) {
      expect(U[k]).toBeLessThan(U[k - 1]);
      expect(Z[k]).toBeGreaterThan(Z[k - 1]);
    }
  });

  test('one alone takes all, and none is refused', () => {
    expect(splitOverLayers(header('U', 4e7, 0, 1))).toEqual({ shares: [1], drop: 10000, headerDrop: 0 });
    expect(() => splitOverLayers(header('U', 4e7, 0, 0))).toThrow('layers is 0; expected a whole number from 1');
    expect(() => splitOverLayers(header('U', 0, 0, 5))).toThrow(OutOfRangeError);
    expect(() => splitOverLayers({ ...header('U', 4e7, 0, 5), headerArea: 0 })).toThrow('headerArea is 0');
  });
});

describe('groups of layers', () => {
  test('hold all layers and all flow', () => {
    // by hand: 0.4 + 0.2 of five layers is 3.0 layers' worth in 2, 0.4 is 2.0 in 3
    expect(layerGroups([0.4, 0.2, 0.2, 0.1, 0.1], 2)).toEqual([
      { layers: 3, relativeFlow: expect.closeTo(4 / 3, 12) },
      { layers: 2, relativeFlow: expect.closeTo(0.5, 12) },
    ]);
    expect(layerGroups([0.5, 0.5], 1)).toEqual([{ layers: 2, relativeFlow: 1 }]);
    expect(() => layerGroups([0.5, 0.5], 3)).toThrow('groups of layers is 3; expected 1 to 2');
    expect(() => layerGroups([0.5, 0.5], 1.5)).toThrow(OutOfRangeError);
  });
});

describe('air speed along the core', () => {
  test('is the mean of the straight lines over each cell', () => {
    // by hand: from 1 to 3 the halves have 1.5 and 2.5 of a mean of 2
    expect(
      velocityWeights(
        [
          [0, 1],
          [1, 3],
        ],
        2,
      ),
    ).toEqual([0.75, 1.25]);
    // a tent of 0, 2, 0: quarters 0.5, 1.5, 1.5, 0.5 of a mean of 1
    velocityWeights(
      [
        [0, 0],
        [0.5, 2],
        [1, 0],
      ],
      4,
    ).forEach((weight, k) => {
      expect(weight).toBeCloseTo([0.5, 1.5, 1.5, 0.5][k], 12);
    });
  });

  test('stays that of the outer points past them, jumps where two points share a place', () => {
    expect(velocityWeights([[0.5, 7]], 3).every((weight) => Math.abs(weight - 1) < 1e-12)).toBe(true);
    expect(
      velocityWeights(
        [
          [0.5, 1],
          [0.5, 3],
        ],
        2,
      ),
    ).toEqual([0.5, 1.5]);
  });

  test('that is none, or runs backwards, is refused', () => {
    expect(() =>
      velocityWeights(
        [
          [0, 0],
          [1, 0],
        ],
        4,
      ),
    ).toThrow('mean air speed is 0; expected above 0');
    expect(() =>
      velocityWeights(
        [
          [0.6, 1],
          [0.4, 1],
        ],
        4,
      ),
    ).toThrow('place along the core is 0.4; expected 0.6 to 1');
    expect(() =>
      velocityWeights(
        [
          [0, -1],
          [1, 3],
        ],
        4,
      ),
    ).toThrow('air speed is -1');
    expect(() => velocityWeights([], 4)).toThrow(OutOfRangeError);
  });
});
