import { describe, expect, it } from 'vitest';
import { humidityRatio } from '../../../src/sim/fluids/moist-air.ts';
import { type CellRates, fillSweepCoefficients, sweepCells } from '../../../src/sim/kernels/cell-sweep.ts';
import {
  type AirColumns,
  COLUMN_FIELDS,
  DETAILED_END_COUNT,
  marchDetailedOutlets,
  SWEEP_CONDENSATE,
  SWEEP_LATENT_POWER,
  type SweepDetail,
  sweepDetailedCells,
  type Vapour,
} from '../../../src/sim/kernels/detailed-cell-sweep.ts';
import { CoreVapour } from '../../../src/sim/model/core-vapour.ts';
import { condensationOn } from '../../support/humid-cell.ts';

const NX = 6;
const NY = 4;
const FLOW = 0.3;
const PRESSURE = 199e3;
const AIR_IN = 380;
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
/** 36 degC, 60 %, outside at 101.325 kPa */
const DAMP = humidityRatio(309.15, 101325, 0.6);

function vapourOf(content: number): Vapour {
  const vapour = new CoreVapour();
  vapour.set(content, FLOW, PRESSURE);
  return vapour;
}

function detailOf(vapour: Vapour | undefined, columns?: AirColumns, isMirrored = false): SweepDetail {
  return {
    vapour,
    airShare: 1,
    columns,
    isMirrored,
    contents: new Float64Array(NY).fill(vapour?.content ?? 0),
    perColumn: new Float64Array(COLUMN_FIELDS * NY),
  };
}

interface Swept {
  readonly out: Float64Array;
  readonly ends: Float64Array;
  readonly air: Float64Array;
  readonly detail: SweepDetail;
}

function sweep(base: Float64Array, detail: SweepDetail, reach = 1, coolantIn = 278): Swept {
  const out = new Float64Array(base.length);
  const ends = new Float64Array(DETAILED_END_COUNT);
  const air = new Float64Array(NY).fill(AIR_IN);
  sweepDetailedCells(RATES, detail, S, reach, base, out, 0, coolantIn, air, ends);
  return { out, ends, air, detail };
}

function sweepPlain(base: Float64Array, reach = 1) {
  const coefficients = new Float64Array(16);
  fillSweepCoefficients(RATES, S, reach, coefficients);
  const out = new Float64Array(base.length);
  const ends = new Float64Array(DETAILED_END_COUNT);
  sweepCells(NX, NY, coefficients, base, out, 0, 278, new Float64Array(NY).fill(AIR_IN), ends);
  return { out, ends };
}

const COLD = new Float64Array(2 * NX * NY).fill(282);
const mean = (values: Float64Array) => values.reduce((sum, value) => sum + value, 0) / values.length;

describe('a detailed sweep', () => {
  it.each([
    ['dry air', undefined, 1],
    ['air without vapour', vapourOf(0), 1],
    ['air without vapour, further', vapourOf(0), 2.4],
  ])('of %s is the plain sweep', (_, vapour, reach) => {
    const [detailed, plain] = [sweep(COLD, detailOf(vapour), reach), sweepPlain(COLD, reach)];
    detailed.out.forEach((value, k) => {
      expect(value).toBeCloseTo(plain.out[k], 9);
    });
    for (let k = 0; k < 4; k++) expect(detailed.ends[k]).toBeCloseTo(plain.ends[k], 9);
    expect(detailed.ends[SWEEP_LATENT_POWER]).toBe(0);
  });
});

describe('a strip that gets no air', () => {
  it('sheds no water, and leaves no number that is none', () => {
    const columns = { flow: Float64Array.of(0, 4 / 3, 4 / 3, 4 / 3), conductance: Float64Array.of(0, 1, 1, 1) };
    const ends = new Float64Array(DETAILED_END_COUNT);
    const air = new Float64Array(NY).fill(AIR_IN);
    marchDetailedOutlets(RATES, detailOf(vapourOf(DAMP), columns), COLD, 0, 278, air, ends);
    expect([...ends].every(Number.isFinite)).toBe(true);
    expect(ends[SWEEP_CONDENSATE]).toBeGreaterThan(0);
  });
});

describe('condensing vapour', () => {
  it('leaves metal above the dew point alone', () => {
    const warm = new Float64Array(2 * NX * NY).fill(340);
    const { ends, detail } = sweep(warm, detailOf(vapourOf(DAMP)), 1, 338);
    expect(ends[SWEEP_CONDENSATE]).toBe(0);
    expect(mean(detail.contents)).toBeCloseTo(DAMP, 12);
  });

  // Psychrometric hand case: 36 degC and 60 % at 101.325 kPa is 0.0226 kg/kg; at 199 kPa its dew point is near 39 degC.
  it('knows the dew point of the charge at its own pressure', () => {
    expect(DAMP).toBeCloseTo(0.0226, 3);
    expect(Math.abs(vapourOf(DAMP).dewPointOf(DAMP) - 273.15 - 39)).toBeLessThan(0.5);
  });

  it('gives up, cell by cell along the air, what the law for one cell gives at the metal it ends with', () => {
    const { out, ends, detail } = sweep(COLD, detailOf(vapourOf(DAMP)));
    let latent = 0;
    let water = 0;
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
      expect(detail.contents[j]).toBeCloseTo(content, 9);
    }
    expect(water).toBeGreaterThan(1e-3);
    expect(ends[SWEEP_LATENT_POWER] / latent).toBeCloseTo(1, 6);
    expect(ends[SWEEP_CONDENSATE] / water).toBeCloseTo(1, 6);
    // Water in is water out.
    expect(FLOW * (DAMP - mean(detail.contents))).toBeCloseTo(ends[SWEEP_CONDENSATE], 12);
  });

  it('of a known state gives the same as of the state that was found', () => {
    const { out, ends } = sweep(COLD, detailOf(vapourOf(DAMP)));
    const marched = new Float64Array(DETAILED_END_COUNT);
    marchDetailedOutlets(RATES, detailOf(vapourOf(DAMP)), out, 0, 278, new Float64Array(NY).fill(AIR_IN), marched);
    ends.forEach((end, k) => {
      expect(marched[k] / end).toBeCloseTo(1, 6);
    });
  });
});

describe('air that is not even', () => {
  const columns: AirColumns = {
    flow: Float64Array.of(1.6, 1.2, 0.8, 0.4),
    conductance: Float64Array.of(1.3, 1.1, 0.9, 0.6),
  };

  it('crosses each column with its own flow and conductance, as a core of that column alone', () => {
    const { out, air } = sweep(COLD, detailOf(undefined, columns));
    for (let j = 0; j < NY; j++) {
      let temperature = AIR_IN;
      for (let i = 0; i < NX; i++) {
        const rate = RATES.airRate * columns.flow[j];
        const units = (RATES.airConductance * columns.conductance[j]) / rate;
        const effectiveness = units / (1 + 0.5 * units);
        temperature += effectiveness * (out[2 * (i * NY + j)] - temperature);
      }
      expect(air[j]).toBeCloseTo(temperature, 10);
    }
  });

  it('is taken from the other end where the coolant runs against the columns', () => {
    const turned = { flow: columns.flow.slice().reverse(), conductance: columns.conductance.slice().reverse() };
    const [ahead, against] = [
      sweep(COLD, detailOf(undefined, columns)),
      sweep(COLD, detailOf(undefined, turned, true)),
    ];
    expect([...against.out]).toEqual([...ahead.out]);
    expect(against.ends[0]).toBe(ahead.ends[0]);
  });

  it.each([
    ['dry', undefined],
    ['wet', vapourOf(DAMP)],
  ])('balances the heat of the whole block, %s', (_, vapour) => {
    const { out, ends, air } = sweep(COLD, detailOf(vapour, columns));
    let stored = 0;
    let lost = 0;
    for (let k = 0; k < out.length; k += 2) {
      stored += S * (RATES.metalCapacity * (out[k] - COLD[k]) + RATES.coolantCapacity * (out[k + 1] - COLD[k + 1]));
      lost += RATES.metalLoss * out[k] - RATES.metalSource;
    }
    const given = air.reduce((sum, leaving, j) => sum + RATES.airRate * columns.flow[j] * (AIR_IN - leaving), 0);
    expect(ends[0]).toBeCloseTo(AIR_IN - given / (FLOW * 1006), 9);
    const coolant = RATES.coolantRate * NX * (278 - ends[1]);
    expect(stored / (given + coolant + ends[SWEEP_LATENT_POWER] - lost)).toBeCloseTo(1, 10);
  });
});
