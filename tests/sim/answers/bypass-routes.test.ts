import { describe, expect, it } from 'vitest';
import { type RouteComparison, studyBypassRoutes } from '../../../src/sim/answers/bypass-routes.ts';
import { explainRoutes } from '../../../src/sim/answers/route-sentence.ts';
import { studyRoutes } from '../../../src/sim/answers/route-turns.ts';
import { conduct } from '../../../src/sim/answers/study.ts';
import { shippedConfig } from '../../support/shipped.ts';
import { shortConfig } from '../../support/short-session.ts';

const KELVIN = 273.15;
const WORDING = {
  difference: (kelvin: number) => `${kelvin.toFixed(1)} K`,
  power: (watts: number) => `${watts.toFixed(0)} W`,
};

function comparisonOf(variant?: string): RouteComparison {
  const comparison = conduct(studyBypassRoutes(shippedConfig('motorway-wagon', variant)));
  if (comparison === undefined) throw new Error('nothing to compare');
  return comparison;
}

/**
 * At the end of the first cruise: inlet, discharge, casing, charge, core outlet (degC), r, gas power and heat to the
 * core (W), coolant in (degC), peak of the pull (degC); by the independently written model that
 * tests/scenarios/reference-runs.json comes from.
 */
const REFERENCE: [string | undefined, number[], number[]][] = [
  [
    undefined,
    [43.8, 56.5, 56.8, 38.7, 36.5, 0.61, 753, 746, 34.6, 61.3],
    [37.3, 54.3, 55.3, 39.4, 38.1, 0.61, 984, 968, 35.4, 61.9],
  ],
  [
    'restrictive bypass, before core',
    [46.4, 72.5, 68.8, 41.8, 39.6, 0.4, 1476, 1220, 36.5, 63.3],
    [37.8, 68.0, 65.5, 42.4, 40.9, 0.4, 1641, 1398, 37.2, 63.6],
  ],
  [
    'throttle downstream, free bypass, before core',
    [49.3, 55.2, 55.9, 38.5, 36.2, 2.25, 694, 707, 34.4, 61.2],
    [39.0, 49.2, 51.8, 40.3, 39.7, 2.34, 1194, 1185, 36.2, 62.2],
  ],
];

describe('the routes of the motorway wagon', () => {
  it.each(REFERENCE)(
    '%s: both as the independent model has them, to the digits it prints',
    (variant, before, after) => {
      const comparison = comparisonOf(variant);
      expect(comparison.phase).toBe('cruise');
      expect(comparison.lasted).toBe(1800);
      for (const [figures, expected] of [
        [comparison.before, before],
        [comparison.after, after],
      ] as const) {
        const temperatures = [
          figures.compressorInlet,
          figures.discharge,
          figures.casing,
          figures.charge,
          figures.coreOutlet,
        ];
        temperatures.forEach((value, k) => {
          expect(Math.abs(value - KELVIN - expected[k]), `temperature ${k}`).toBeLessThan(0.06);
        });
        expect(Math.abs(figures.recirculation - expected[5])).toBeLessThan(0.006);
        expect(Math.abs(figures.gasPower - expected[6])).toBeLessThan(1);
        expect(Math.abs(figures.heatToCore - expected[7])).toBeLessThan(1);
        expect(Math.abs(figures.coolantIntoCore - KELVIN - expected[8])).toBeLessThan(0.06);
        expect(Math.abs((figures.pullPeak ?? 0) - KELVIN - expected[9])).toBeLessThan(0.06);
      }
    },
  );

  // The independent model, core drop set to nothing: -0.2 (free), +0.2 (restrictive), -0.5 K (downstream).
  it.each([
    [undefined, -0.2],
    ['restrictive bypass, before core', 0.2],
    ['throttle downstream, free bypass, before core', -0.5],
  ])('%s: the route alone is worth %f K to the charge', (variant, expected) => {
    expect(Math.abs(comparisonOf(variant).chargeChangeWithoutDrop - expected)).toBeLessThan(0.06);
  });

  it('with a hot plenum and an easy core the charge at cruise falls by 2 K or more', () => {
    const { before, after } = comparisonOf('hot plenum, easy core, throttle downstream, before core');
    expect(after.charge - before.charge).toBeLessThan(-2);
  });
});

describe('what is said of the routes', () => {
  const comparison = comparisonOf();
  const sentences = explainRoutes(comparison, WORDING);

  it('is the change of the charge first, then the other places, why, and the pull', () => {
    expect(sentences[0]).toBe(
      'Taken behind the core, the recirculated air makes the charge 0.7 K warmer at the end of cruise.',
    );
    expect(sentences[1]).toBe('Compressor inlet 6.5 K cooler, discharge 2.2 K cooler, casing 1.6 K cooler.');
    expect(sentences[2]).toContain('air leaves the core 1.6 K warmer');
    expect(sentences[2]).toContain("the plenum adds 0.9 K less, since 1.6 times the engine's air passes it");
    expect(sentences[3]).toContain('warms the charge by 0.9 K');
    expect(sentences[3]).toContain('the route alone makes the charge 0.2 K cooler');
    expect(sentences[4]).toBe('The pull that follows peaks 0.5 K warmer.');
  });

  it('leaves out what does nothing', () => {
    const same = { ...comparison, after: { ...comparison.before, route: 'after core' as const } };
    const said = explainRoutes({ ...same, chargeChangeWithoutDrop: 0 }, WORDING).join(' ');
    expect(said).toContain('makes the charge as warm at the end of cruise');
    expect(said).not.toContain('the plenum adds');
    expect(said).not.toContain('core pressure drop');
    expect(said).not.toContain('comes back');
  });

  it('says which way the heat goes in core and plenum, whatever the signs', () => {
    const { before, after } = comparison;
    /** The same with this heat to the core and this pick-up of the plenum, before the core and behind it. */
    const said = (heat: readonly number[], pickUp: readonly number[]): string => {
      const figures = [before, after].map((each, k) => ({
        ...each,
        heatToCore: heat[k],
        charge: each.coreOutlet + pickUp[k],
      }));
      return explainRoutes({ ...comparison, before: figures[0], after: figures[1] }, WORDING)[2];
    };
    expect(said([121, 204], [2, 1])).toContain('the core gives the coolant 204 W instead of 121 W');
    expect(said([-121, -204], [-2, -1])).toContain('the core takes 204 W from the coolant instead of 121 W');
    expect(said([-121, 204], [2, 1])).toContain('the core gives the coolant 204 W instead of taking 121 W');
    expect(said([121, -204], [2, 1])).toContain('the core takes 204 W from the coolant instead of giving 121 W');
    expect(said([121, 121.2], [2, 1])).toContain('the core gives the coolant 121 W, as by the other route');
    // A plenum colder than the charge: more air is cooled less by it.
    expect(said([1, 1], [-2, -1])).toContain("the plenum takes 1.0 K less, since 1.6 times the engine's air passes it");
    expect(said([1, 1], [-1, -2])).toContain('the plenum takes 1.0 K more');
    expect(said([1, 1], [-1, 2])).toContain('the plenum adds 2.0 K, where it takes 1.0 K by the other route');
  });

  it('turns its words with the signs', () => {
    const { before, after } = comparison;
    const turned = { ...comparison, before: after, after: before };
    const said = explainRoutes(turned, WORDING);
    expect(said[0]).toContain('0.7 K cooler');
    expect(said[1]).toContain('Compressor inlet 6.5 K warmer');
    expect(said[2]).toContain('the plenum adds 0.9 K more');
  });
});

describe('where the routes turn', () => {
  const { comparison, turns } = conduct(studyRoutes(shortConfig()));

  it('is asked for every input about the car as it is', () => {
    expect(turns.map(({ name }) => name)).toEqual([
      'idle power',
      'bypass drop',
      'core conductance',
      'core pressure drop',
      'plenum heat',
      'leak past the core',
    ]);
    const change = (comparison?.after.charge ?? 0) - (comparison?.before.charge ?? 0);
    for (const { name, kind, points } of turns) {
      const asIs = points.find(({ value }) => value === (kind === 'factor' ? 1 : 0));
      expect(asIs?.change.charge, name).toBeCloseTo(change, 9);
    }
  });

  it('lies between the two points at which the charge changes its sign, and nowhere else', () => {
    for (const { name, points, turns: at } of turns) {
      const crossings = points.slice(1).filter(({ change }, k) => change.charge * points[k].change.charge < 0);
      expect(at.length, name).toBe(crossings.length);
      for (const turn of at) {
        const above = points.findIndex(({ value }) => value > turn);
        expect(points[above].change.charge * points[above - 1].change.charge).toBeLessThan(0);
      }
    }
  });

  it('is found where a run at the turn makes no difference to the charge', () => {
    const line = turns.find(({ name }) => name === 'plenum heat');
    const turn = line?.turns[0] ?? Number.NaN;
    const config = shortConfig();
    const { toChargeAir, toEngine } = config.plenum;
    const plenum = { ...config.plenum, toChargeAir: turn * toChargeAir, toEngine: turn * toEngine };
    const there = conduct(studyBypassRoutes({ ...config, plenum }));
    const largest = Math.max(...(line?.points ?? []).map(({ change }) => Math.abs(change.charge)));
    expect(Math.abs((there?.after.charge ?? 9) - (there?.before.charge ?? 0))).toBeLessThan(0.05 * largest);
  });

  it('is nowhere without a part-load phase', () => {
    const pull = { kind: 'pull', duration: 5, engineSpeed: [2500, 6600], exchangerAirSpeed: 2.5, bayAboveAmbient: 25 };
    expect(conduct(studyRoutes(shortConfig({ cycle: [pull] })))).toEqual({ turns: [] });
  });
});
