import { describe, expect, test } from 'vitest';
import { nusseltDevelopingGap, nusseltDevelopingPort } from '../../../src/sim/correlations/developing-nusselt.ts';
import { OutOfRangeError } from '../../../src/sim/errors.ts';

function relativeError(value: number, expected: number): number {
  return Math.abs(value / expected - 1);
}

describe('flat passage', () => {
  // VDI Heat Atlas 2010, section G2, in 30-digit arithmetic: [Gz, Pr, Nu]
  test.each([
    [10.0, 5.0, 7.912979083],
    [10.0, 20.0, 7.901702849],
    [50.0, 5.0, 9.23759372],
    [50.0, 20.0, 9.144277554],
    [100.0, 5.0, 10.58816017],
    [100.0, 20.0, 10.38542638],
    [300.0, 5.0, 14.41963847],
    [300.0, 20.0, 13.83942142],
    [1000.0, 5.0, 22.18119065],
    [1000.0, 20.0, 20.6441058],
  ])('at Gz %f and Pr %f is the published formula', (Gz, Pr, expected) => {
    expect(relativeError(nusseltDevelopingGap(Gz, Pr).value, expected)).toBeLessThan(1e-9);
  });

  // Exact solution between plates, developed velocity, by Chebyshev collocation: [x, mean Nu]
  test.each([
    [0.001, 18.75213],
    [0.002, 15.12462],
    [0.005, 11.62291],
    [0.01, 9.824883],
    [0.02, 8.713346],
    [0.05, 8.01032],
    [0.1, 7.77551],
  ])('of a fluid whose profile is there at once, at %f, is the exact solution within 4 %%', (length, expected) => {
    expect(relativeError(nusseltDevelopingGap(1 / length, 1e9).value, expected)).toBeLessThan(0.04);
  });

  test('is marked outside its Prandtl numbers', () => {
    expect(nusseltDevelopingGap(50, 1000).range).toBe('inside');
    expect(nusseltDevelopingGap(50, 1200).range).toEqual([
      expect.objectContaining({ beyond: expect.closeTo(0.2, 12) }),
    ]);
    expect(() => nusseltDevelopingGap(50, 0)).toThrow(OutOfRangeError);
  });
});

describe('port of a multi-port tube', () => {
  // Rectangle with developed velocity, uniform wall temperature: linear finite elements marched along the duct, good to
  // 1e-3: [a, x, mean Nu]
  test.each([
    [1.0, 0.01, 6.471],
    [1.0, 0.02, 5.191],
    [1.0, 0.05, 4.032],
    [1.0, 0.1, 3.521],
    [0.25, 0.01, 7.73],
    [0.25, 0.02, 6.462],
    [0.25, 0.05, 5.456],
    [0.25, 0.1, 5.033],
    [0.1, 0.01, 8.758],
    [0.1, 0.02, 7.554],
    [0.1, 0.05, 6.699],
    [0.1, 0.1, 6.373],
  ])('of %f at %f is the numerical solution within 7.5 %%', (aspect, length, expected) => {
    expect(relativeError(nusseltDevelopingPort(aspect, length, 20).value, expected)).toBeLessThan(0.075);
  });

  // Wibulswas 1966 in the fit of Nellis and Klein 2009: [a, x, Nu at Pr 0.7]
  test.each([
    [1, 0.02, 5.5454806],
    [1, 0.1, 3.8441557],
    [0.25, 0.02, 6.5970654],
    [0.25, 0.1, 5.119687],
    [0.1, 0.02, 7.8684246],
    [0.1, 0.1, 6.4338942],
  ])('of %f at %f carries air as the other fit does, within 15 %%', (aspect, length, expected) => {
    expect(relativeError(nusseltDevelopingPort(aspect, length, 0.7).value, expected)).toBeLessThan(0.15);
  });

  test('is that of a plate at its very inlet', () => {
    // Pohlhausen: mean Nu of a flat plate 0.664 Re^(1/2) Pr^(1/3) on its length, Pr 0.7 within 1 %; on the hydraulic
    // diameter 0.664 Pr^(-1/6)/x^(1/2)
    const length = 1e-7;
    const plate = (0.664 * 0.7 ** (-1 / 6)) / Math.sqrt(length);
    expect(relativeError(nusseltDevelopingPort(1, length, 0.7).value, plate)).toBeLessThan(0.03);
  });

  test('is marked outside what was checked', () => {
    expect(nusseltDevelopingPort(0.5, 0.01, 20).range).toBe('inside');
    expect(nusseltDevelopingPort(0.05, 0.01, 20).range).toEqual([
      expect.objectContaining({ quantity: 'short side over long side [-]', beyond: expect.closeTo(0.5, 12) }),
    ]);
    expect(() => nusseltDevelopingPort(0, 0.01, 20)).toThrow(OutOfRangeError);
  });
});
