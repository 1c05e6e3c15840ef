import { describe, expect, test } from 'vitest';
import {
  frictionDeveloping,
  frictionLaminarRectangle,
  nusseltDevelopingRectangle,
  nusseltLaminarRectangle,
} from '../../../src/sim/correlations/laminar-ducts.ts';
import { OutOfRangeError } from '../../../src/sim/errors.ts';

function relativeError(value: number, expected: number): number {
  return Math.abs(value / expected - 1);
}

describe('developed flow in a rectangle', () => {
  // Shah and London 1978, table 42 and its polynomials; the exact series and own finite elements (Richardson) confirm
  // both: [a, table, polynomial]
  test.each([
    [1.0, 14.227, 14.2296],
    [0.714285714286, 14.565, 14.56702112],
    [0.5, 15.548, 15.557325],
    [0.333333333333, 17.09, 17.09494321],
    [0.25, 18.233, 18.23401641],
    [0.166666666667, 19.702, 19.70450586],
    [0.125, 20.585, 20.58978684],
    [0.0, 24.0, 24.0],
  ])('friction of %f is the table within 0.06 %%', (aspect, table, polynomial) => {
    expect(relativeError(frictionLaminarRectangle(aspect), polynomial)).toBeLessThan(1e-9);
    expect(relativeError(frictionLaminarRectangle(aspect), table)).toBeLessThan(7e-4);
  });

  test.each([
    [1.0, 2.976, 2.978695],
    [0.714285714286, 3.077, 3.071935627],
    [0.5, 3.391, 3.388736875],
    [0.333333333333, 3.956, 3.94946686],
    [0.25, 4.439, 4.435315738],
    [0.166666666667, 5.137, 5.138217842],
    [0.125, 5.597, 5.595807703],
    [0.0, 7.541, 7.541],
  ])('Nusselt number of %f is the table within 0.25 %%', (aspect, table, polynomial) => {
    expect(relativeError(nusseltLaminarRectangle(aspect), polynomial)).toBeLessThan(1e-9);
    expect(relativeError(nusseltLaminarRectangle(aspect), table)).toBeLessThan(2.5e-3);
  });

  test('of a shape that is none is refused', () => {
    expect(() => frictionLaminarRectangle(1.01)).toThrow(OutOfRangeError);
    expect(() => nusseltLaminarRectangle(-0.1)).toThrow('short side over long side is -0.1; expected 0 to 1');
  });
});

describe('developing friction', () => {
  const plates = { developed: 24, extraHead: 0.674, constant: 0.000029 };
  const square = { developed: 14.227, extraHead: 1.43, constant: 0.00029 };

  // Shah 1978, formula and constants, in 30-digit arithmetic: [x, plates, square]
  test.each([
    [0.0005, 155.6120625, 154.3370716],
    [0.001, 111.5729398, 109.6859414],
    [0.005, 52.83924907, 51.5916492],
    [0.01, 39.4, 38.39410256],
    [0.05, 27.23255844, 20.75408704],
    [0.1, 25.64218455, 17.6068696],
  ])('at %f is the published formula', (length, ofPlates, ofSquare) => {
    expect(relativeError(frictionDeveloping(length, plates), ofPlates)).toBeLessThan(1e-9);
    expect(relativeError(frictionDeveloping(length, square), ofSquare)).toBeLessThan(1e-9);
  });

  // Y. S. Muzychka, M. M. Yovanovich, J. Fluids Eng. 131, 2009, 111105: another model, on the root of the area, which a
  // square's hydraulic diameter is
  test.each([
    [0.001, 109.6964581],
    [0.01, 37.18968844],
    [0.1, 17.83392626],
    [10, 14.17378869],
  ])('of a square at %f is within 4 %% of another published model', (length, expected) => {
    expect(relativeError(frictionDeveloping(length, square), expected)).toBeLessThan(0.04);
  });

  test('ends in developed friction and its extra head', () => {
    // f Re x 4 x = 4 x (f Re)dev + K: the definition of the extra head
    const far = 50;
    expect(frictionDeveloping(far, plates) * 4 * far - 24 * 4 * far).toBeCloseTo(0.674, 3);
    expect(() => frictionDeveloping(0, plates)).toThrow(OutOfRangeError);
  });
});

describe('developing Nusselt number of a rectangle', () => {
  // Wibulswas 1966 in the fit of Nellis and Klein 2009, in 30-digit arithmetic: [a, x, Pr, Nu]
  test.each([
    [1.0, 0.01, 0.7, 7.0781885],
    [1.0, 0.01, 5.0, 5.8791957],
    [1.0, 0.1, 0.7, 3.8441557],
    [1.0, 0.1, 5.0, 3.5910315],
    [0.25, 0.01, 0.7, 7.9829121],
    [0.25, 0.01, 5.0, 6.9453345],
    [0.25, 0.1, 0.7, 5.119687],
    [0.25, 0.1, 5.0, 4.9195266],
    [0.1, 0.01, 0.7, 9.3670205],
    [0.1, 0.01, 5.0, 8.3562207],
    [0.1, 0.1, 0.7, 6.4338942],
    [0.1, 0.1, 5.0, 6.2809558],
  ])('of %f at %f and Pr %f is the published fit', (aspect, length, Pr, expected) => {
    expect(relativeError(nusseltDevelopingRectangle(aspect, length, Pr).value, expected)).toBeLessThan(1e-7);
  });

  test('of a square at Pr 0.72 is near the table that was fitted', () => {
    // Wibulswas's own table in Shah and London 1978: 7.10 and 3.75
    expect(relativeError(nusseltDevelopingRectangle(1, 0.01, 0.72).value, 7.1)).toBeLessThan(0.03);
    expect(relativeError(nusseltDevelopingRectangle(1, 0.1, 0.72).value, 3.75)).toBeLessThan(0.03);
  });

  test('marks what lies outside the tables and by how much', () => {
    expect(nusseltDevelopingRectangle(0.25, 0.01, 0.7).range).toBe('inside');
    expect(nusseltDevelopingRectangle(0.25, 0.008, 0.7).range).toEqual([
      expect.objectContaining({ quantity: 'length over Dh Re Pr [-]', value: 0.008, beyond: expect.closeTo(0.2, 12) }),
    ]);
    expect(nusseltDevelopingRectangle(0.25, 0.02, 15).range).toEqual([
      expect.objectContaining({ quantity: 'Prandtl number [-]', beyond: expect.closeTo(0.5, 12) }),
    ]);
    expect(() => nusseltDevelopingRectangle(0.25, 0, 0.7)).toThrow(OutOfRangeError);
  });
});
