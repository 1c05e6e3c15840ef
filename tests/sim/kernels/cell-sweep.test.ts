import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import {
  type CellRates,
  cellEffectiveness,
  fillSweepCoefficients,
  hasCoolantFront,
  marchOutlets,
  SWEEP_AIR_OUT,
  SWEEP_COEFFICIENT_COUNT,
  SWEEP_COOLANT_MEAN,
  SWEEP_COOLANT_OUT,
  SWEEP_END_COUNT,
  SWEEP_METAL_MEAN,
  sweepCells,
} from '../../../src/sim/kernels/cell-sweep.ts';

const rate = fc.double({ min: 0.01, max: 1e3, noNaN: true });
const rateOrNone = fc.oneof({ weight: 4, arbitrary: rate }, { weight: 1, arbitrary: fc.constant(0) });
const temperature = fc.double({ min: 250, max: 420, noNaN: true });

const rates: fc.Arbitrary<CellRates> = fc.record({
  nx: fc.integer({ min: 1, max: 5 }),
  ny: fc.integer({ min: 1, max: 5 }),
  metalCapacity: rate,
  coolantCapacity: rate,
  airRate: rateOrNone,
  airConductance: rateOrNone,
  coolantRate: rateOrNone,
  coolantConductance: rate,
  metalLoss: rateOrNone,
  metalSource: fc.double({ min: -1e5, max: 1e5, noNaN: true }),
  linearUpwind: fc.constantFrom(0, 1),
});

interface Swept {
  readonly cells: CellRates;
  readonly s: number;
  readonly airIn: number;
  readonly coolantIn: number;
  readonly base: Float64Array;
  readonly out: Float64Array;
  readonly ends: Float64Array;
}

const swept: fc.Arbitrary<Swept> = fc
  .record({
    cells: rates,
    s: fc.double({ min: 0.01, max: 1e3, noNaN: true }),
    airIn: temperature,
    coolantIn: temperature,
  })
  .chain((given) => {
    const size = 2 * given.cells.nx * given.cells.ny;
    return fc.array(temperature, { minLength: size, maxLength: size }).map((base) => ({
      ...given,
      ...sweep(given.cells, given.s, Float64Array.from(base), given.airIn, given.coolantIn),
    }));
  });

function sweep(cells: CellRates, s: number, base: Float64Array, airIn: number, coolantIn: number, reach = 1) {
  const { nx, ny } = cells;
  const coefficients = new Float64Array(SWEEP_COEFFICIENT_COUNT);
  fillSweepCoefficients(cells, s, reach, coefficients);
  const out = new Float64Array(base.length);
  const ends = new Float64Array(SWEEP_END_COUNT);
  sweepCells(nx, ny, coefficients, base, out, 0, coolantIn, new Float64Array(ny).fill(airIn), ends);
  return { base, out, ends };
}

/** Largest power that the equations of the cells, written out plainly, leave unbalanced, over the largest in them. */
function imbalance({ cells, s, airIn, coolantIn, base, out, ends }: Swept): number {
  const { nx, ny, coolantRate: w, coolantConductance: K } = cells;
  const b = cells.linearUpwind === 0 || w === 0 ? 0 : 1 / 2;
  const Na = cells.airRate > 0 ? cells.airConductance / cells.airRate : 0;
  const share = cells.airRate > 0 && Na < 2 ? Na / (1 + Na / 2) : 1;
  let worst = 0;
  const balance = (...powers: number[]) => {
    const sum = powers.reduce((total, power) => total + power, 0);
    worst = Math.max(worst, Math.abs(sum) / Math.max(...powers.map(Math.abs)));
  };
  const air = new Array<number>(ny).fill(airIn);
  let coolantOut = 0;
  for (let i = 0; i < nx; i++) {
    let inflow = coolantIn;
    let before = coolantIn;
    for (let j = 0; j < ny; j++) {
      const k = 2 * (i * ny + j);
      const [metal, coolant] = [out[k], out[k + 1]];
      const airOut = air[j] + share * (metal - air[j]);
      const outflow = (1 + b) * coolant - b * before;
      balance(
        cells.metalCapacity * s * metal,
        -cells.metalCapacity * s * base[k],
        cells.airRate * (airOut - air[j]),
        K * metal,
        -K * coolant,
        cells.metalLoss * metal,
        -cells.metalSource,
      );
      balance(
        cells.coolantCapacity * s * coolant,
        -cells.coolantCapacity * s * base[k + 1],
        w * outflow,
        -w * inflow,
        K * coolant,
        -K * metal,
      );
      air[j] = airOut;
      inflow = outflow;
      before = coolant;
    }
    coolantOut += inflow / nx;
  }
  balance(coolantOut, -ends[SWEEP_COOLANT_OUT]);
  balance(air.reduce((sum, t) => sum + t, 0) / ny, -ends[SWEEP_AIR_OUT]);
  return worst;
}

test('one sweep solves the equations of every cell, whatever the rates', () => {
  fc.assert(
    fc.property(swept, (given) => {
      expect(imbalance(given)).toBeLessThan(1e-9);
    }),
  );
});

test('what the cells gain is what the streams and surroundings give', () => {
  fc.assert(
    fc.property(swept, ({ cells, s, airIn, coolantIn, base, out, ends }) => {
      const count = cells.nx * cells.ny;
      const meanOf = (state: Float64Array, first: number) =>
        state.reduce((sum, t, k) => sum + (k % 2 === first ? t : 0), 0) / count;
      const powers = [
        cells.metalCapacity * s * count * (ends[SWEEP_METAL_MEAN] - meanOf(base, 0)),
        cells.coolantCapacity * s * count * (ends[SWEEP_COOLANT_MEAN] - meanOf(base, 1)),
        cells.airRate * cells.ny * (ends[SWEEP_AIR_OUT] - airIn),
        cells.coolantRate * cells.nx * (ends[SWEEP_COOLANT_OUT] - coolantIn),
        count * (cells.metalLoss * ends[SWEEP_METAL_MEAN] - cells.metalSource),
      ];
      const scale = (cells.metalCapacity + cells.coolantCapacity) * s + cells.airRate + cells.coolantRate;
      const left = powers.reduce((sum, power) => sum + power, 0);
      expect(meanOf(out, 0)).toBeCloseTo(ends[SWEEP_METAL_MEAN], 6);
      expect(meanOf(out, 1)).toBeCloseTo(ends[SWEEP_COOLANT_MEAN], 6);
      expect(Math.abs(left)).toBeLessThan(1e-9 * count * (400 * scale + Math.abs(cells.metalSource) + 400));
    }),
  );
});

test('a state that was swept has the outlets and means of its sweep', () => {
  fc.assert(
    fc.property(swept, ({ cells, airIn, coolantIn, out, ends }) => {
      const marched = new Float64Array(SWEEP_END_COUNT);
      marchOutlets(cells, out, 0, coolantIn, new Float64Array(cells.ny).fill(airIn), marched);
      marched.forEach((end, k) => {
        expect(Math.abs(end - ends[k])).toBeLessThan(1e-9 * Math.abs(ends[k]) + 1e-9);
      });
    }),
  );
});

test('a block leaves what lies before and behind it in the state alone', () => {
  const cells: CellRates = {
    nx: 2,
    ny: 3,
    metalCapacity: 1,
    coolantCapacity: 1,
    airRate: 1,
    airConductance: 1,
    coolantRate: 1,
    coolantConductance: 1,
    metalLoss: 0,
    metalSource: 0,
    linearUpwind: 1,
  };
  const coefficients = new Float64Array(SWEEP_COEFFICIENT_COUNT);
  fillSweepCoefficients(cells, 1, 1, coefficients);
  const out = new Float64Array(20).fill(-1);
  const base = new Float64Array(20).fill(Number.NaN).fill(300, 4, 16);
  sweepCells(2, 3, coefficients, base, out, 4, 300, new Float64Array(3).fill(300), new Float64Array(SWEEP_END_COUNT));
  expect([...out.subarray(0, 4), ...out.subarray(16)]).toEqual(new Array(8).fill(-1));
  for (const value of out.subarray(4, 16)) expect(value).toBeCloseTo(300, 10);
});

describe('the share of a temperature difference that air makes up in one cell', () => {
  test.each([
    ['nothing where nothing is exchanged', 5, 0, 0],
    ['the share of the mean of in and out', 10, 4, 1 / 3],
    ['all of it from two transfer units on', 3, 6, 1],
    ['all of it beyond', 3, 60, 1],
    ['all of it for air at rest', 0, 6, 1],
  ])('is %s', (_, airRate, airConductance, share) => {
    expect(cellEffectiveness(airRate, airConductance)).toBeCloseTo(share, 15);
  });
});

describe('the reach of a sweep', () => {
  test('carries what is written on beyond the stage values, and nothing else', () => {
    fc.assert(
      fc.property(swept, fc.double({ min: 0, max: 3, noNaN: true }), (stage, reach) => {
        const { cells, s, base, out, ends, airIn, coolantIn } = stage;
        const further = sweep(cells, s, base, airIn, coolantIn, reach);
        expect(further.ends).toEqual(ends);
        out.forEach((value, k) => {
          const expected = base[k] + reach * (value - base[k]);
          expect(Math.abs(further.out[k] - expected)).toBeLessThanOrEqual(
            1e-12 * (Math.abs(value) + Math.abs(base[k])),
          );
        });
      }),
    );
  });
});

describe('a front', () => {
  const ny = 12;
  const rowOf = (profile: (j: number) => number) => Float64Array.from({ length: 2 * ny }, (_, k) => profile(k >> 1));
  const flat = rowOf(() => 300);
  const step = rowOf((j) => (j < 6 ? 330 : 300));

  test.each([
    ['a step inside the row', step, 330, true],
    ['a step that stands at the inlet', flat, 330, true],
    ['a step of half a kelvin', rowOf((j) => (j < 6 ? 300.5 : 300)), 300.5, false],
    ['a straight slope', rowOf((j) => 300 + 2 * (j + 1)), 300, false],
    [
      'an exponential approach of two transfer units',
      rowOf((j) => 300 + 30 * Math.exp((-2 * (j + 1)) / ny)),
      330,
      false,
    ],
    ['half a wave', rowOf((j) => 300 + 10 * Math.sin((Math.PI * (j + 1)) / ny)), 300, false],
  ])('is seen as it should be in %s', (_, row, inlet, isFront) => {
    expect(hasCoolantFront(1, ny, row, 0, inlet)).toBe(isFront);
  });

  test.each([0, 2, 4])('is seen in row %i of five', (i) => {
    const state = new Float64Array(10 * ny + 2).fill(300);
    state.set(step, 2 + 2 * ny * i);
    expect(hasCoolantFront(5, ny, state, 2, 300)).toBe(true);
  });

  // Carried by linear upwinding a front this wide ripples by some 4 % after 100 cells and by less than 0.1 % after 12.
  test.each([
    [12, false],
    [100, true],
  ])('five cells wide in a row of %i cells counts: %s', (cells, isFront) => {
    const smeared = Float64Array.from({ length: 2 * cells }, (_, k) => 300 + 30 / (1 + Math.exp((k >> 1) / 3 - 1)));
    expect(hasCoolantFront(1, cells, smeared, 0, 300 + 30 / (1 + Math.exp(-4 / 3)))).toBe(isFront);
  });
});
