import { describe, expect, test } from 'vitest';
import { colburnLouvred, frictionLouvred } from '../../../src/sim/correlations/louvred-fin.ts';
import { OutOfRangeError } from '../../../src/sim/errors.ts';

function relativeError(value: number, expected: number): number {
  return Math.abs(value / expected - 1);
}

/** Invented fin inside the data, m and degrees. */
const FIN = {
  finPitch: 0.0014,
  finHeight: 0.008,
  finThickness: 0.0001,
  depth: 0.026,
  louvrePitch: 0.0012,
  louvreLength: 0.0068,
  louvreAngle: 27,
  tubeHeight: 0.002,
};

// Chang and Wang 1997, coefficients equal in two public codes, in 30-digit arithmetic: [Re, j]
test.each([
  [100, 0.04282300055],
  [150, 0.03510689154],
  [200, 0.03049105115],
  [300, 0.02499698788],
  [500, 0.01946174565],
  [1000, 0.01385725135],
  [2000, 0.009866710746],
])('j at %f is the published formula', (Re, expected) => {
  expect(relativeError(colburnLouvred(Re, FIN).value, expected)).toBeLessThan(1e-9);
});

// Chang, Hsu, Lin and Wang 2000, low branch to 130, high from 230, in 30-digit arithmetic: [Re, f]
test.each([
  [80, 0.2675526765],
  [100, 0.2172607241],
  [130, 0.1722160119],
  [230, 0.1315643054],
  [300, 0.1114371549],
  [500, 0.0832942968],
  [1000, 0.05890168867],
  [2000, 0.0435316527],
])('f at %f is the published formula', (Re, expected) => {
  expect(relativeError(frictionLouvred(Re, FIN).value, expected)).toBeLessThan(1e-9);
});

// Chang, Chang, Li and Wang 2006, the amended joint, in 30-digit arithmetic: [Re, f]
test.each([
  [130, 0.1722160119],
  [150, 0.1648894087],
  [180, 0.1532441209],
  [210, 0.1406378474],
  [230, 0.1315643054],
])('f at %f is the amended joint', (Re, expected) => {
  expect(relativeError(frictionLouvred(Re, FIN).value, expected)).toBeLessThan(1e-9);
});

describe('along the Reynolds number', () => {
  test('friction has no step, from creeping flow to the end of the data', () => {
    for (const Re of [30, 130, 230]) {
      const below = frictionLouvred(Re * (1 - 1e-9), FIN).value;
      expect(relativeError(frictionLouvred(Re * (1 + 1e-9), FIN).value, below), `at ${Re}`).toBeLessThan(1e-7);
    }
  });

  test('in creeping flow, below the data, the pressure drop goes with the flow', () => {
    const { value, range } = frictionLouvred(15, FIN);
    expect(relativeError(value, 2 * frictionLouvred(30, FIN).value)).toBeLessThan(1e-12);
    expect(range).toEqual([expect.objectContaining({ quantity: 'louvre Reynolds number [-]', beyond: 0.85 })]);
  });

  test('the pressure drop rises with every flow', () => {
    for (let Re = 1; Re < 3000; Re *= 1.05) {
      const less = frictionLouvred(Re, FIN).value * Re ** 2;
      expect(frictionLouvred(1.05 * Re, FIN).value * (1.05 * Re) ** 2, `at ${Re}`).toBeGreaterThan(less);
    }
  });
});

describe('range', () => {
  test('holds the fin above', () => {
    expect(colburnLouvred(300, FIN).range).toBe('inside');
    expect(frictionLouvred(300, FIN).range).toBe('inside');
  });

  test('a core deeper than the data keeps their deepest value and says so', () => {
    const atEnd = { ...FIN, depth: 0.0574 };
    const deep = { ...FIN, depth: 0.0861 };
    expect(colburnLouvred(300, deep).value).toBe(colburnLouvred(300, atEnd).value);
    expect(frictionLouvred(80, deep).value).toBe(frictionLouvred(80, atEnd).value);
    expect(colburnLouvred(300, deep).range).toEqual([
      expect.objectContaining({ quantity: 'core depth [mm]', high: 57.4, beyond: expect.closeTo(0.5, 12) }),
    ]);
  });

  test('names the rest of what lies beyond', () => {
    const steep = { ...FIN, louvreAngle: 42, finThickness: 0.0002 };
    expect(colburnLouvred(50, steep).range).toEqual([
      expect.objectContaining({ quantity: 'louvre Reynolds number [-]', beyond: 0.5 }),
      expect.objectContaining({ quantity: 'fin thickness [mm]', beyond: expect.closeTo(0.25, 12) }),
      expect.objectContaining({ quantity: 'louvre angle [degrees]', beyond: expect.closeTo(0.2, 12) }),
    ]);
  });

  test('a foil too thin for the formula and a louvre longer than the fin are refused', () => {
    expect(() => frictionLouvred(300, { ...FIN, finThickness: 0.00001 })).toThrow(OutOfRangeError);
    expect(() => colburnLouvred(300, { ...FIN, louvreLength: 0.009 })).toThrow('louvre length in m is 0.009');
    expect(() => colburnLouvred(0, FIN)).toThrow(OutOfRangeError);
  });
});
