import { describe, expect, it } from 'vitest';
import { Core, type CoreRates } from '../../src/sim/model/core.ts';
import type { CoreConfig, CoreLayout } from '../../src/sim/scenario/config/exchangers.ts';
import { simulate } from '../../src/sim/simulate.ts';
import { shippedConfig } from '../support/shipped.ts';

const ESTATE = shippedConfig('rolling-road-estate', 'bigger core');

/** A core without dimensions: air of rate 1 enters at 1, coolant at 0; the conductances do not depend on flow. */
function coreOf(layout: Partial<CoreLayout>, ntu: number, nx: number, ny: number): Core {
  const config: CoreConfig = {
    ...ESTATE.core,
    cellsAlongAir: nx,
    cellsAlongCoolant: ny,
    metalHeatCapacity: 1,
    coolantVolume: 1e-6,
    coolantConductance: { kind: 'power', reference: 2 * ntu, atFlow: 1, exponent: 0, floor: 0 },
    layout: { ...ESTATE.core.layout, ...layout },
  };
  return new Core(config, 0, 4e6);
}

function steady(core: Core, ntu: number, ratio: number): Core {
  const rates: CoreRates = {
    airRate: 1,
    airConductance: 2 * ntu,
    coolantRate: 1 / ratio,
    airFlow: 1,
    coolantFlow: 1,
    metalLoss: 0,
    metalSource: 0,
  };
  const base = new Float64Array(core.size);
  core.restart(base, 0);
  core.sweep(rates, { s: 1e-9, reach: 1, base, out: new Float64Array(core.size) }, 1, 0, undefined);
  return core;
}

describe('two cores with the coolant in series, beside each other in the air', () => {
  // R. K. Shah, D. P. Sekulic, Fundamentals of Heat Exchanger Design, 2003, chapter 3: coupling of one fluid in series
  // and the other in parallel, eps = (1 - (1 - p)^2)/Cr, p = Cr/2 eps_unmixed(NTU, Cr/2); values at Cr 0.25.
  it.each([
    [0.5, 0.3749160609],
    [1, 0.5863761661],
    [2, 0.7877384694],
    [3, 0.867647038],
    [5, 0.9194651939],
  ])('at NTU %f cool as two passes side by side in the face', (ntu, expected) => {
    const [coarse, fine] = [
      [24, 12],
      [48, 24],
    ].map(([nx, ny]) => 1 - steady(coreOf({ inSeries: 2 }, ntu, nx, ny), ntu, 0.25).airOut);
    expect(Math.abs(fine - expected)).toBeLessThan(3e-4);
    expect(Math.abs((4 * fine - coarse) / 3 - expected)).toBeLessThan(1e-5);
  });

  it('give the coolant all the heat that the air loses', () => {
    const core = steady(coreOf({ inSeries: 2 }, 2, 24, 12), 2, 0.25);
    expect(core.coolantOut * 4).toBeCloseTo(1 - core.airOut, 8);
  });
});

describe('sheets', () => {
  it('of like flow are one core', () => {
    const parts = [0.2, 0.5, 0.3].map((share) => ({ layers: share, flow: share }));
    const [one, split] = [coreOf({}, 2, 12, 8), coreOf({ sheets: parts }, 2, 12, 8)].map((core) =>
      steady(core, 2, 0.5),
    );
    expect(split.airOut).toBeCloseTo(one.airOut, 12);
    expect(split.coolantOut).toBeCloseTo(one.coolantOut, 12);
    expect(split.metalMean).toBeCloseTo(one.metalMean, 12);
  });

  it('of unlike flow cool less, each as a core of its own share', () => {
    const uneven = [
      { layers: 0.5, flow: 0.8 },
      { layers: 0.5, flow: 0.2 },
    ];
    const split = steady(coreOf({ sheets: uneven }, 2, 24, 16), 2, 0.5);
    // Half of the layers with 1.6 and with 0.4 times its part of the coolant.
    const [rich, poor] = [0.5 / 1.6, 0.5 / 0.4].map((ratio) => steady(coreOf({}, 2, 24, 16), 2, ratio).airOut);
    expect(split.airOut).toBeCloseTo(0.5 * (rich + poor), 12);
    expect(split.airOut).toBeGreaterThan(steady(coreOf({}, 2, 24, 16), 2, 0.5).airOut + 0.01);
  });
});

describe('an air velocity that is not even', () => {
  it('of one value is even air', () => {
    const even = steady(coreOf({}, 2, 12, 8), 2, 0.5);
    const typed = steady(coreOf({ airVelocity: new Array(8).fill(1) }, 2, 12, 8), 2, 0.5);
    expect(typed.airOut).toBeCloseTo(even.airOut, 12);
    expect(typed.coolantOut).toBeCloseTo(even.coolantOut, 12);
  });

  it('cools less than even air, and gives the coolant just what the air loses', () => {
    const slope = Array.from({ length: 8 }, (_, j) => 0.4 + (1.2 * (j + 0.5)) / 8);
    const core = steady(coreOf({ airVelocity: slope }, 2, 12, 8), 2, 0.5);
    expect(core.airOut).toBeGreaterThan(steady(coreOf({}, 2, 12, 8), 2, 0.5).airOut + 0.005);
    expect(core.coolantOut * 2).toBeCloseTo(1 - core.airOut, 8);
  });
});

describe('a run with sheets and two cores', () => {
  it('closes its energy in every step, and shows the mean field over its layers', () => {
    const layout = {
      ...ESTATE.core.layout,
      inSeries: 2 as const,
      passes: 2 as const,
      airVelocity: [1.5, 1.3, 1.1, 0.9, 0.7, 0.5],
      sheets: [
        { layers: 0.4, flow: 0.5 },
        { layers: 0.6, flow: 0.5 },
      ],
    };
    const config = {
      ...ESTATE,
      core: { ...ESTATE.core, layout, cellsAlongAir: 12, cellsAlongCoolant: 6 },
      cycle: { ...ESTATE.cycle, repeats: 1 },
    };
    const series = simulate(config, { fields: true });
    expect(series.outcome.kind).toBe('finished');
    expect(series.energy.worstStepGap).toBeLessThan(1e-9);
    const row = series.rowCount - 1;
    const cells = series.core?.metal.subarray(row * 72) ?? new Float32Array();
    const mean = cells.reduce((sum, value) => sum + value, 0) / cells.length;
    expect(Math.abs(mean - series.columns.coreMetalMean[row])).toBeLessThan(1e-3);
  });
});
