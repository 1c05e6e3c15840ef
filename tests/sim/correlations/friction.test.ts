import { describe, expect, test } from 'vitest';
import { frictionChurchill } from '../../../src/sim/correlations/friction.ts';
import { OutOfRangeError } from '../../../src/sim/errors.ts';

function relativeError(value: number, expected: number): number {
  return Math.abs(value / expected - 1);
}

describe('Churchill', () => {
  // S. W. Churchill, Chem. Eng. 84(24), 1977, computed in 30-digit arithmetic; equal to the open library fluids 1.0.22
  test.each([
    [500, 0, 0.128],
    [1500, 0, 0.0426666685203],
    [2040, 0, 0.0314584327655],
    [2300, 0, 0.0308400984004],
    [2500, 0, 0.0351450916291],
    [3000, 0, 0.0429746563177],
    [3500, 0, 0.0422623242447],
    [4000, 0, 0.0405897329612],
    [6000, 0, 0.0358693380981],
    [10000, 0, 0.0310021306526],
    [30000, 0, 0.0233919294959],
    [500, 0.0005, 0.128],
    [1500, 0.0005, 0.0426666685203],
    [2040, 0.0005, 0.0314584513751],
    [2300, 0.0005, 0.0308441737667],
    [2500, 0.0005, 0.0351752337683],
    [3000, 0.0005, 0.0433404030037],
    [3500, 0.0005, 0.0427950712674],
    [4000, 0.0005, 0.0411642122089],
    [6000, 0.0005, 0.0365544123831],
    [10000, 0.0005, 0.0318654508085],
    [30000, 0.0005, 0.0248469418702],
    [500, 0.005, 0.128],
    [1500, 0.005, 0.0426666685203],
    [2040, 0.005, 0.0314585648936],
    [2300, 0.005, 0.0308683899682],
    [2500, 0.005, 0.0353535798749],
    [3000, 0.005, 0.0460202321833],
    [3500, 0.005, 0.0471958324903],
    [4000, 0.005, 0.0459213395016],
    [6000, 0.005, 0.0420294784567],
    [10000, 0.005, 0.0383409713951],
    [30000, 0.005, 0.0336876560683],
  ])('at Re %f and roughness %f is the published formula', (Re, roughness, expected) => {
    expect(relativeError(frictionChurchill(Re, roughness), expected)).toBeLessThan(1e-9);
  });

  // Hagen and Poiseuille 1840: 64/Re
  test.each([
    [50, 1.28],
    [200, 0.32],
    [1000, 0.064],
    [2000, 0.032],
  ])('at Re %f is laminar', (Re, expected) => {
    expect(relativeError(frictionChurchill(Re, 0), expected)).toBeLessThan(Re < 2000 ? 1e-5 : 2e-3);
  });

  // C. F. Colebrook, J. Inst. Civ. Eng. 11, 1939, exact root by the Lambert function; equal to the library fluids
  // 1.0.22
  test.each([
    [4000, 0, 0.0399070140556],
    [4000, 0.001, 0.0409103898628],
    [4000, 0.01, 0.0490822694479],
    [6000, 0.0005, 0.0361051560432],
    [10000, 0, 0.0308829503535],
    [10000, 0.0001, 0.031037212201],
    [10000, 0.00125, 0.0327423475074],
    [10000, 0.01, 0.0431265847068],
    [20000, 0.0005263157895, 0.0270006186507],
    [30000, 0, 0.0234829545942],
    [30000, 0.0003125, 0.0243097686078],
    [30000, 0.002, 0.028093639602],
    [30000, 0.05, 0.0723135299573],
    [100000, 0.001, 0.0221745359445],
    [1000000, 0.0001, 0.0134414376925],
  ])('at Re %f and roughness %f is near Colebrook', (Re, roughness, expected) => {
    expect(relativeError(frictionChurchill(Re, roughness), expected)).toBeLessThan(roughness <= 0.00125 ? 0.02 : 0.031);
  });

  // F. M. White, Fluid Mechanics, 2003, chapter 6: smooth bore, Prandtl's law, printed to four decimals
  test.each([
    [1e4, 0.0309],
    [1e5, 0.018],
    [1e6, 0.0116],
    [1e7, 0.0081],
  ])('at Re %f is near the textbook table of smooth bores', (Re, expected) => {
    expect(Math.abs(frictionChurchill(Re, 0) - expected)).toBeLessThan(2e-4);
  });

  test('gives a pressure drop that rises with flow through the whole transition', () => {
    // drop goes with f Re^2: needed for one operating point only
    for (const roughness of [0, 1e-4, 1e-3, 0.01, 0.05]) {
      for (let Re = 1; Re < 1e6; Re *= 1.01) {
        const next = Re * 1.01;
        expect(frictionChurchill(next, roughness) * next ** 2, `Re ${Re}`).toBeGreaterThan(
          frictionChurchill(Re, roughness) * Re ** 2,
        );
      }
    }
  });

  test('holds down to the slowest creep', () => {
    expect(relativeError(frictionChurchill(1e-20, 1e-4), 64e20)).toBeLessThan(1e-12);
  });

  test('refuses what is outside its range', () => {
    expect(() => frictionChurchill(0, 0)).toThrow(OutOfRangeError);
    expect(() => frictionChurchill(0, 0)).toThrow('Reynolds number is 0; expected above 0');
    expect(() => frictionChurchill(Number.NaN, 0)).toThrow(OutOfRangeError);
    expect(() => frictionChurchill(1e4, 0.06)).toThrow('relative roughness is 0.06; expected 0 to 0.05');
    expect(() => frictionChurchill(1e4, -1e-3)).toThrow(OutOfRangeError);
  });
});
