import { describe, expect, test } from 'vitest';
import {
  contractionOfJet,
  corePressureDrop,
  entranceLossOfCore,
  exitLossOfCore,
} from '../../../src/sim/correlations/core-losses.ts';
import { finEfficiency } from '../../../src/sim/correlations/fin-efficiency.ts';
import { OutOfRangeError } from '../../../src/sim/errors.ts';

function relativeError(value: number, expected: number): number {
  return Math.abs(value / expected - 1);
}

describe('jet behind an edge', () => {
  // von Mises 1917, in 30-digit arithmetic; the printed table has three decimals of it: [s, C]
  test.each([
    [0.1, 0.61220372],
    [0.2, 0.61583161],
    [0.3, 0.62210047],
    [0.4, 0.6313909],
    [0.5, 0.64435275],
    [0.6, 0.66209821],
    [0.7, 0.6866559],
    [0.8, 0.72226063],
    [0.9, 0.78061333],
  ])('at %f is free-streamline theory', (areaRatio, expected) => {
    expect(relativeError(contractionOfJet(areaRatio), expected)).toBeLessThan(1e-7);
  });

  test('tends to pi/(pi + 2) in front of a wide room', () => {
    expect(contractionOfJet(1e-6)).toBeCloseTo(Math.PI / (Math.PI + 2), 9);
    expect(() => contractionOfJet(0)).toThrow(OutOfRangeError);
  });
});

describe('entrance and exit of a core', () => {
  // Kays 1950, flat profile; [s, Kc, Ke]; digitised points of the charts (Kays and London 1984, fig. 5-4) below
  test.each([
    [0.2, 0.389152024, 0.64],
    [0.3, 0.369004474, 0.49],
    [0.4, 0.340828169, 0.36],
    [0.5, 0.304643227, 0.25],
    [0.6, 0.260457077, 0.16],
    [0.7, 0.208240281, 0.09],
    [0.8, 0.147872356, 0.04],
  ])('at %f with a flat profile are the theory', (areaRatio, entrance, exit) => {
    expect(relativeError(entranceLossOfCore(areaRatio, 1), entrance)).toBeLessThan(1e-7);
    expect(relativeError(exitLossOfCore(areaRatio, 1), exit)).toBeLessThan(1e-7);
  });

  test('are near the charts', () => {
    for (const [areaRatio, Kc] of [
      [0.20114, 0.3845],
      [0.30028, 0.3667],
      [0.4008, 0.3396],
      [0.50061, 0.3052],
      [0.60181, 0.2593],
      [0.80277, 0.1445],
    ]) {
      expect(Math.abs(entranceLossOfCore(areaRatio, 1) - Kc)).toBeLessThan(0.012);
    }
    for (const [areaRatio, Ke] of [
      [0.20156, 0.6432],
      [0.40083, 0.3584],
      [0.50123, 0.2478],
      [0.60165, 0.1601],
      [0.8026, 0.04016],
    ]) {
      expect(Math.abs(exitLossOfCore(areaRatio, 1) - Ke)).toBeLessThan(0.012);
    }
  });

  // Kays 1950, developed laminar profile: [s, Kd, Kc, Ke], plates 6/5 and round tubes 4/3
  test.each([
    [0.4, 6 / 5, 0.740828169, 0.2],
    [0.8, 6 / 5, 0.547872356, -0.28],
    [0.4, 4 / 3, 1.00749484, 0.0933333333],
    [0.8, 4 / 3, 0.814539023, -0.493333333],
  ])('at %f with Kd %f are the theory', (areaRatio, Kd, entrance, exit) => {
    expect(relativeError(entranceLossOfCore(areaRatio, Kd), entrance)).toBeLessThan(1e-7);
    expect(relativeError(exitLossOfCore(areaRatio, Kd), exit)).toBeLessThan(1e-7);
  });

  test('of a profile flatter than flat are refused', () => {
    expect(() => entranceLossOfCore(0.5, 0.9)).toThrow('momentum factor is 0.9');
    expect(() => exitLossOfCore(1.2, 1)).toThrow(OutOfRangeError);
  });
});

describe('core equation', () => {
  // Inputs of the gas-turbine regenerator in Kays and London, 3rd ed., 1984, equation 2-26 in 30-digit arithmetic: the
  // air is heated, the gas cooled. Pa: entrance, acceleration, friction, exit, total
  test.each([
    [
      'air',
      {
        massVelocity: 26.1752370506091,
        densityIn: 7.02563396196542,
        densityOut: 4.81034455120023,
        areaRatio: 0.445,
        friction: 0.0375,
        wettedOverFree: 1.8288 / 0.0011125,
        entranceLoss: 0.48,
        exitLoss: 0.24,
      },
      [62.50939393, 44.91071968, 3697.951244, -40.02138026, 3765.349978],
    ],
    [
      'gas',
      {
        massVelocity: 13.3588645051036,
        densityIn: 0.504581596279744,
        densityOut: 0.678702293154691,
        areaRatio: 0.443,
        friction: 0.0155,
        wettedOverFree: 0.9144 / 0.000771777003484321,
        entranceLoss: 0.54,
        exitLoss: 0.28,
      },
      [237.6273848, -90.73581901, 2830.957888, -68.85803782, 2908.991416],
    ],
  ] as const)('on the %s side gives every part', (_, passage, expected) => {
    const drop = corePressureDrop(passage);
    const parts = [drop.entrance, drop.acceleration, drop.friction, drop.exit, drop.total];
    parts.forEach((part, k) => {
      expect(relativeError(part, expected[k])).toBeLessThan(1e-9);
    });
  });

  test('refuses a density that is none', () => {
    const passage = { massVelocity: 1, densityIn: 1, densityOut: 0, areaRatio: 0.5, friction: 0, wettedOverFree: 1 };
    expect(() => corePressureDrop({ ...passage, entranceLoss: 0, exitLoss: 0 })).toThrow('density after a core is 0');
  });
});

describe('fin efficiency', () => {
  const long = Number.POSITIVE_INFINITY;

  // Harper and Brown 1922, Gardner 1945, in 30-digit arithmetic, k 180: [h, t, half length, efficiency]
  test.each([
    [60.0, 0.0001, 0.00395, 0.966712093739],
    [120.0, 0.0001, 0.0039, 0.937467760314],
    [200.0, 0.0001, 0.0039, 0.900732955764],
    [400.0, 8e-5, 0.005, 0.701717165584],
  ])('at h %f, t %f, half length %f is the published formula', (h, thickness, halfLength, expected) => {
    const fin = { heatTransferCoefficient: h, conductivity: 180, thickness, halfLength, stripLength: long };
    expect(relativeError(finEfficiency(fin), expected)).toBeLessThan(1e-11);
  });

  test('cut edges cost a little, no film nothing', () => {
    const fin = {
      heatTransferCoefficient: 215.8581509,
      conductivity: 180,
      thickness: 0.0001,
      halfLength: 0.0039,
      stripLength: 0.003,
    };
    // the same formula with strips of 3 mm, computed with the worked core it belongs to
    expect(relativeError(finEfficiency(fin), 0.8907853344)).toBeLessThan(1e-9);
    expect(finEfficiency({ ...fin, stripLength: long })).toBeGreaterThan(0.8907853344);
    expect(finEfficiency({ ...fin, heatTransferCoefficient: 0 })).toBe(1);
    expect(() => finEfficiency({ ...fin, thickness: 0 })).toThrow('thickness is 0; expected above 0');
  });
});
