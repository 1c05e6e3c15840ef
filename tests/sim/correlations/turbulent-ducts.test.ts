import { describe, expect, test } from 'vitest';
import {
  bridgedTransition,
  frictionKonakov,
  nusseltGnielinski,
  smoothDuct,
} from '../../../src/sim/correlations/turbulent-ducts.ts';
import { OutOfRangeError } from '../../../src/sim/errors.ts';
import { nusseltDevelopingTube } from '../../support/developing-tube.ts';

function relativeError(value: number, expected: number): number {
  return Math.abs(value / expected - 1);
}

describe('Gnielinski', () => {
  // Gnielinski 2013 with Konakov's friction, in 30-digit arithmetic; with f given it is the 254.6268 that the open
  // library ht documents for Re 1e5, Pr 1.2: [Re, Pr, Nu of a long duct, the same with Petukhov's friction (1976)]
  test.each([
    [4000.0, 0.7, 13.0586123834, 13.4872199003],
    [4000.0, 8.0, 32.6194010303, 33.2221347014],
    [6000.0, 0.7, 18.9720254546, 19.5242006914],
    [6000.0, 8.0, 50.2516512509, 51.0904575689],
    [10000.0, 0.7, 29.0872810911, 29.8174118459],
    [10000.0, 8.0, 82.3638876229, 83.5749577349],
    [30000.0, 0.7, 68.9805887035, 70.2468903616],
    [30000.0, 8.0, 220.754082955, 223.222331643],
  ])('at Re %f and Pr %f is the published formula, within 3.5 %% of its older friction', (Re, Pr, expected, older) => {
    expect(relativeError(nusseltGnielinski(Re, Pr, 0).value, expected)).toBeLessThan(1e-11);
    expect(relativeError(nusseltGnielinski(Re, Pr, 0).value, older)).toBeLessThan(0.035);
  });

  test('a short duct has more, and the bridge ends in it', () => {
    // Gnielinski 2013, d/L 0.0112: [Pr, Nu at 2300, at 3000, at 4000]
    for (const [Pr, laminar, between, turbulent] of [
      [4, 8.09573209932, 15.7833022548, 26.7655453341],
      [8, 10.17843939, 20.0911983227, 34.2522825123],
      [20, 13.8794752997, 27.5432384942, 47.0629002005],
    ]) {
      expect(relativeError(nusseltGnielinski(4000, Pr, 0.0112).value, turbulent)).toBeLessThan(1e-11);
      expect(relativeError(bridgedTransition(3000, laminar, turbulent), between)).toBeLessThan(1e-11);
      expect(bridgedTransition(2300, laminar, turbulent)).toBe(laminar);
      expect(bridgedTransition(4000, laminar, turbulent)).toBe(turbulent);
    }
  });

  test('marks what it was not published for, and refuses what it has no value for', () => {
    expect(nusseltGnielinski(4000, 8, 0).range).toBe('inside');
    expect(nusseltGnielinski(3000, 8, 0).range).toEqual([
      { quantity: 'Reynolds number [-]', value: 3000, low: 4000, high: 1e6, beyond: 0.25 },
    ]);
    expect(() => nusseltGnielinski(900, 8, 0)).toThrow(OutOfRangeError);
    expect(() => bridgedTransition(2000, 1, 2)).toThrow('Reynolds number is 2000; expected 2300 to 4000');
  });
});

describe('friction of a smooth duct', () => {
  // Colebrook 1939 without roughness, exact root, equal to the open library fluids 1.0.22: [Re, f]; at 1e6 the table of
  // F. M. White, Fluid Mechanics, after Prandtl's formula
  test.each([
    [4000, 0.0399070140556],
    [10000, 0.0308829503535],
    [30000, 0.0234829545942],
    [1e6, 0.0116],
  ])('at %f is the smooth pipe within 1.5 %%', (Re, expected) => {
    expect(relativeError(frictionKonakov(Re).value, expected)).toBeLessThan(0.015);
  });

  test('is marked below and above its range', () => {
    expect(frictionKonakov(4000).range).toBe('inside');
    expect(frictionKonakov(2e6).range).toEqual([expect.objectContaining({ beyond: 1 })]);
    expect(() => frictionKonakov(5)).toThrow(OutOfRangeError);
  });
});

describe('smooth duct at any Reynolds number', () => {
  const ratio = 0.0112;
  const tube = (Re: number, Pr: number) =>
    smoothDuct(Re, Pr, ratio, (at) => ({ Nu: nusseltDevelopingTube(at * Pr * ratio, Pr), f: 16 / at }));

  // Gnielinski 2013 with the developing law of the VDI Heat Atlas, d/L 0.0112, in 30-digit arithmetic
  test.each([
    [1000, 8, 7.47430056695, 'laminar'],
    [2300, 8, 10.17843939, 'laminar'],
    [2500, 4, 10.2921807152, 'transitional'],
    [3000, 20, 27.5432384942, 'transitional'],
    [3500, 8, 27.1717404175, 'transitional'],
    [4000, 8, 34.2522825123, 'turbulent'],
  ] as const)('at Re %f and Pr %f is the published law', (Re, Pr, expected, regime) => {
    const { nusseltNumber, range, ...flow } = tube(Re, Pr);
    expect(relativeError(nusseltNumber, expected)).toBeLessThan(1e-11);
    expect(flow.regime).toBe(regime);
    expect(range).toBe('inside');
  });

  test('friction is Poiseuille, then the smooth pipe, and the pressure drop rises with every flow', () => {
    expect(tube(1000, 8).friction).toBe(0.016);
    // Colebrook 1939, Darcy 0.0309 at 1e4; Fanning is a quarter
    expect(relativeError(tube(10000, 8).friction, 0.0308829503535 / 4)).toBeLessThan(0.01);
    // a duct of 9 diameters has 3.5 times the laminar friction of a long one at 2300: f Re = 3.44 (L/d/Re)^-1/2, Shah
    // and London 1978
    for (const entrance of [1, 2, 3.5]) {
      const short = (Re: number) =>
        smoothDuct(Re, 8, ratio, (at) => ({ Nu: nusseltDevelopingTube(at * 8 * ratio, 8), f: (16 * entrance) / at }));
      for (let Re = 500; Re < 8000; Re += 50) {
        const more = short(Re + 50).friction * (Re + 50) ** 2;
        expect(more, `at ${Re}, entrance ${entrance}`).toBeGreaterThan(short(Re).friction * Re ** 2);
      }
    }
  });

  test('keeps the mark of the law it used', () => {
    expect(tube(1000, 0.5).range).toEqual([expect.objectContaining({ low: 0.6 })]);
    expect(tube(3000, 0.05).range).toEqual([
      expect.objectContaining({ low: 0.6 }),
      expect.objectContaining({ low: 0.1 }),
    ]);
    expect(() => tube(0, 8)).toThrow('Reynolds number is 0; expected above 0');
  });
});
