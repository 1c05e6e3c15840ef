import { describe, expect, it } from 'vitest';
import { condensationOn } from '../../../src/sim/fluids/condensation.ts';
import { humidityRatio } from '../../../src/sim/fluids/moist-air.ts';
import {
  type CellRates,
  cellEffectiveness,
  fillSweepCoefficients,
  sweepCells,
} from '../../../src/sim/kernels/cell-sweep.ts';
import {
  marchWetAir,
  SWEEP_CONDENSATE,
  SWEEP_CONTENT_OUT,
  SWEEP_LATENT_POWER,
  sweepWetCells,
  WET_END_COUNT,
} from '../../../src/sim/kernels/wet-cell-sweep.ts';
import { CoreVapour } from '../../../src/sim/model/core-vapour.ts';

const NX = 6;
const NY = 4;
const FLOW = 0.3;
const PRESSURE = 199e3;
const RATES: CellRates = {
  nx: NX,
  ny: NY,
  metalCapacity: 100,
  coolantCapacity: 120,
  airRate: (FLOW * 1006) / NY,
  airConductance: 400 / (NX * NY),
  coolantRate: 700 / NX,
  coolantConductance: 1900 / (NX * NY),
  metalLoss: 0.05,
  metalSource: 15,
  linearUpwind: 1,
};
const UNITS = RATES.airConductance / RATES.airRate;
const S = 2;

interface Swept {
  readonly out: Float64Array;
  readonly ends: Float64Array;
}

function sweepWet(base: Float64Array, content: number, reach = 1): Swept {
  const vapour = new CoreVapour();
  vapour.set(content, FLOW, PRESSURE, UNITS);
  const out = new Float64Array(base.length);
  const ends = new Float64Array(WET_END_COUNT);
  const contents = new Float64Array(NY).fill(content);
  sweepWetCells(RATES, S, reach, base, out, 0, 278, vapour, 1, new Float64Array(NY).fill(380), contents, ends);
  return { out, ends };
}

function sweepDry(base: Float64Array, reach = 1): Swept {
  const coefficients = new Float64Array(16);
  fillSweepCoefficients(RATES, S, reach, coefficients);
  const out = new Float64Array(base.length);
  const ends = new Float64Array(WET_END_COUNT);
  sweepCells(NX, NY, coefficients, base, out, 0, 278, new Float64Array(NY).fill(380), ends);
  return { out, ends };
}

const COLD = new Float64Array(2 * NX * NY).fill(282);
/** 36 degC, 60 %, outside at 101.325 kPa */
const DAMP = humidityRatio(309.15, 101325, 0.6);

describe('a wet sweep', () => {
  it.each([1, 2.4])('of air without vapour is the dry sweep, at a reach of %f', (reach) => {
    const [wet, dry] = [sweepWet(COLD, 0, reach), sweepDry(COLD, reach)];
    wet.out.forEach((value, k) => {
      expect(value).toBeCloseTo(dry.out[k], 9);
    });
    for (let k = 0; k < 4; k++) expect(wet.ends[k]).toBeCloseTo(dry.ends[k], 9);
    expect(wet.ends[SWEEP_LATENT_POWER]).toBe(0);
  });

  it('of metal above the dew point is the dry sweep, and the vapour leaves as it came', () => {
    const warm = new Float64Array(2 * NX * NY).fill(340);
    const vapour = new CoreVapour();
    vapour.set(DAMP, FLOW, PRESSURE, UNITS);
    const out = new Float64Array(warm.length);
    const ends = new Float64Array(WET_END_COUNT);
    const filled = (value: number) => new Float64Array(NY).fill(value);
    sweepWetCells(RATES, S, 1, warm, out, 0, 338, vapour, 1, filled(380), filled(DAMP), ends);
    expect(ends[SWEEP_CONDENSATE]).toBe(0);
    expect(ends[SWEEP_CONTENT_OUT]).toBeCloseTo(DAMP, 12);
  });

  // Psychrometric hand case, common figures: 36 degC and 60 % at 101.325 kPa is 0.0226 kg/kg; at 199 kPa its dew point
  // is near 39 degC, so metal below it wrings water out.
  it('knows the dew point of the charge at its own pressure', () => {
    const vapour = new CoreVapour();
    vapour.set(DAMP, FLOW, PRESSURE, UNITS);
    expect(Math.abs(vapour.dewPointOf(DAMP) - 273.15 - 39)).toBeLessThan(0.5);
  });

  it('gives up, cell by cell along the air, what the law for one cell gives at the metal it ends with', () => {
    const { out, ends } = sweepWet(COLD, DAMP);
    let latent = 0;
    let water = 0;
    let left = 0;
    for (let j = 0; j < NY; j++) {
      let content = DAMP;
      for (let i = 0; i < NX; i++) {
        const cell = condensationOn({
          dryAirFlow: FLOW / NY,
          humidityRatio: content,
          metalTemperature: out[2 * (i * NY + j)],
          pressure: PRESSURE,
          transferUnits: UNITS,
        });
        latent += cell.latentHeat;
        water += cell.condensate;
        content = cell.humidityRatio;
      }
      left += content / NY;
    }
    expect(water).toBeGreaterThan(1e-3);
    expect(ends[SWEEP_LATENT_POWER] / latent).toBeCloseTo(1, 6);
    expect(ends[SWEEP_CONDENSATE] / water).toBeCloseTo(1, 6);
    expect(ends[SWEEP_CONTENT_OUT]).toBeCloseTo(left, 9);
    // Water in is water out.
    expect(FLOW * (DAMP - ends[SWEEP_CONTENT_OUT])).toBeCloseTo(ends[SWEEP_CONDENSATE], 12);
  });

  it('balances the heat of the whole block', () => {
    const { out, ends } = sweepWet(COLD, DAMP);
    let stored = 0;
    let lost = 0;
    for (let k = 0; k < out.length; k += 2) {
      stored += S * (RATES.metalCapacity * (out[k] - COLD[k]) + RATES.coolantCapacity * (out[k + 1] - COLD[k + 1]));
      lost += RATES.metalLoss * out[k] - RATES.metalSource;
    }
    const air = FLOW * 1006 * (380 - ends[0]);
    const coolant = RATES.coolantRate * NX * (278 - ends[1]);
    expect(stored / (air + coolant + ends[SWEEP_LATENT_POWER] - lost)).toBeCloseTo(1, 10);
    expect(cellEffectiveness(RATES.airRate, RATES.airConductance)).toBeGreaterThan(0);
  });

  it('of a known state gives the same as of the state it found', () => {
    const { out, ends } = sweepWet(COLD, DAMP);
    const vapour = new CoreVapour();
    vapour.set(DAMP, FLOW, PRESSURE, UNITS);
    const marched = new Float64Array(WET_END_COUNT);
    marchWetAir(NX, NY, out, 0, vapour, 1, new Float64Array(NY).fill(DAMP), marched);
    for (const place of [SWEEP_LATENT_POWER, SWEEP_CONDENSATE, SWEEP_CONTENT_OUT]) {
      expect(marched[place] / ends[place]).toBeCloseTo(1, 6);
    }
  });
});
