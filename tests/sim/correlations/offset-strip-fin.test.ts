import { describe, expect, test } from 'vitest';
import { colburnOffsetStrip, frictionOffsetStrip } from '../../../src/sim/correlations/offset-strip-fin.ts';
import { OutOfRangeError } from '../../../src/sim/errors.ts';

function relativeError(value: number, expected: number): number {
  return Math.abs(value / expected - 1);
}

/** Ratios from what is measured: plate spacing b, fin pitch p, thickness t and strip length l, all in mm. */
function ratiosOf(b: number, p: number, t: number, l: number) {
  return { alpha: (p - t) / (b - t), delta: t / l, gamma: t / (p - t) };
}

describe('the published formula', () => {
  // Manglik and Bergles 1995, equations 34 and 35, coefficients equal in two open libraries (OpenConcept, Modelica
  // FluidDissipation), in 30-digit arithmetic: [surface, b, p, t, l, Re, j, f]
  test.each([
    ['1/8-15.61', 6.35, 1.62716207559257, 0.1016, 3.175, 200, 0.03356347932, 0.1760659991],
    ['1/8-15.61', 6.35, 1.62716207559257, 0.1016, 3.175, 2000, 0.01084329166, 0.04079407188],
    ['1/8-15.61', 6.35, 1.62716207559257, 0.1016, 3.175, 8000, 0.006005077971, 0.02670292244],
    ['1/10-19.35', 1.905, 1.31266149870801, 0.1016, 2.54, 200, 0.02936386922, 0.1469392003],
    ['1/10-19.35', 1.905, 1.31266149870801, 0.1016, 2.54, 2000, 0.00970848041, 0.04055646204],
    ['1/10-19.35', 1.905, 1.31266149870801, 0.1016, 2.54, 8000, 0.005416584503, 0.0267436814],
    ['1/10-27.03', 6.35, 0.939696633370329, 0.1016, 2.54, 200, 0.03632973097, 0.1796315469],
    ['1/10-27.03', 6.35, 0.939696633370329, 0.1016, 2.54, 2000, 0.01121339755, 0.04332096349],
    ['1/10-27.03', 6.35, 0.939696633370329, 0.1016, 2.54, 8000, 0.006061264575, 0.02844239703],
    ['3/32-12.22', 12.319, 2.0828, 0.1016, 2.38125, 200, 0.0380759466, 0.2223297608],
    ['3/32-12.22', 12.319, 2.0828, 0.1016, 2.38125, 2000, 0.01245548559, 0.05472060294],
    ['3/32-12.22', 12.319, 2.0828, 0.1016, 2.38125, 8000, 0.006927457495, 0.03596643202],
  ] as const)('holds on surface %s, b %f p %f t %f l %f mm, Re %f', (_, b, p, t, l, Re, j, f) => {
    expect(relativeError(colburnOffsetStrip(Re, ratiosOf(b, p, t, l)).value, j)).toBeLessThan(1e-9);
    expect(relativeError(frictionOffsetStrip(Re, ratiosOf(b, p, t, l)).value, f)).toBeLessThan(1e-9);
  });
});

describe('measured surfaces', () => {
  // Kays and London, Compact Heat Exchangers, 3rd ed., 1984, figs. 10-55, 10-61, 10-60 and 10-63, as quoted in the open
  // library OpenConcept: [surface, b, p, t, l, Re, j, f, error of j, error of f]
  test.each([
    ['1/8-15.61', 6.35, 1.62716207559257, 0.1016, 3.175, 400, 0.0246, 0.104, 0.05, 0.05],
    ['1/8-15.61', 6.35, 1.62716207559257, 0.1016, 3.175, 2000, 0.0111, 0.042, 0.05, 0.05],
    ['1/10-19.35', 1.905, 1.31266149870801, 0.1016, 2.54, 400, 0.0195, 0.075, 0.06, 0.35],
    ['1/10-19.35', 1.905, 1.31266149870801, 0.1016, 2.54, 2000, 0.0094, 0.0303, 0.06, 0.35],
    ['1/10-27.03', 6.35, 0.939696633370329, 0.1016, 2.54, 500, 0.0238, 0.0922, 0.06, 0.04],
    ['1/10-27.03', 6.35, 0.939696633370329, 0.1016, 2.54, 2000, 0.0113, 0.0449, 0.06, 0.04],
    ['3/32-12.22', 12.319, 2.0828, 0.1016, 2.38125, 500, 0.0205, 0.13, 0.17, 0.14],
    ['3/32-12.22', 12.319, 2.0828, 0.1016, 2.38125, 2000, 0.0119, 0.0607, 0.17, 0.14],
  ] as const)(
    '%s, b %f p %f t %f l %f mm, Re %f, are as near as the authors say',
    (_, b, p, t, l, Re, j, f, errorJ, errorF) => {
      expect(relativeError(colburnOffsetStrip(Re, ratiosOf(b, p, t, l)).value, j)).toBeLessThan(errorJ);
      expect(relativeError(frictionOffsetStrip(Re, ratiosOf(b, p, t, l)).value, f)).toBeLessThan(errorF);
    },
  );
});

describe('range', () => {
  const usual = ratiosOf(8, 1.5, 0.1, 3);

  test('holds the usual fin of this trade', () => {
    expect(colburnOffsetStrip(1425, usual).range).toBe('inside');
    expect(frictionOffsetStrip(120, usual).range).toBe('inside');
  });

  test('names every quantity beyond it and how far', () => {
    // 12 mm high: s/h 1.4/11.9 = 0.1176, an eighth below 0.134; Re 60 is half of 120
    const { range } = frictionOffsetStrip(60, ratiosOf(12, 1.5, 0.1, 3));
    expect(range).toEqual([
      { quantity: 'air Reynolds number [-]', value: 60, low: 120, high: 1e4, beyond: 0.5 },
      expect.objectContaining({
        quantity: 'channel width over height s/h [-]',
        low: 0.134,
        beyond: expect.closeTo(1 - 1.4 / 11.9 / 0.134, 12),
      }),
    ]);
    expect(colburnOffsetStrip(20000, usual).range).toEqual([expect.objectContaining({ beyond: 1 })]);
    expect(() => colburnOffsetStrip(0, usual)).toThrow(OutOfRangeError);
    expect(() => frictionOffsetStrip(500, { ...usual, delta: 0 })).toThrow('t/l of an offset strip fin is 0');
  });
});
