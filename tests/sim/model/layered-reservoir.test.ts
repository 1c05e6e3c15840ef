import { describe, expect, it } from 'vitest';
import type { Store } from '../../../src/sim/model/reservoir.ts';
import { layeredTank, PER_VOLUME, StoreBench } from '../../support/store-bench.ts';

const COLD = 300;
const HOT = 320;
/** m3, m3/s: 20 s of flow */
const VOLUME = 0.006;
const FLOW = 0.0003;

/** Share of the step that has reached the draw-off, at times from an even start. */
function stepAt(store: Store, times: readonly number[], tolerance = 1e-3): number[] {
  const bench = new StoreBench(store, { rate: FLOW * PER_VOLUME, temperature: HOT }, times[times.length - 1]);
  const found: number[] = [];
  bench.run(
    COLD,
    tolerance,
    ({ time, state }) => {
      if (times.some((each) => Math.abs(each - time) < 1e-9))
        found.push((store.temperatureIn(state) - COLD) / (HOT - COLD));
    },
    1,
  );
  return found;
}

/** F at t/tau 0.5, 0.8, 1, 1.2, 2 by the regularised incomplete gamma function P(N, N t/tau). */
const ERLANG: readonly (readonly [number, readonly number[]])[] = [
  [5, [0.1088219811, 0.3711630648, 0.5595067149, 0.7149434997, 0.9707473119]],
  [10, [0.03182805731, 0.2833757413, 0.5420702855, 0.7576078383, 0.9950045877]],
  [20, [0.003454341976, 0.1877514717, 0.5297427332, 0.8197394858, 0.9998236971]],
];
const SHARES = [0.5, 0.8, 1, 1.2, 2];

// O. Levenspiel, Chemical Reaction Engineering, 3rd ed., 1999, tanks in series.
describe('hot coolant from above into a tank of N layers', () => {
  it.each(ERLANG)('of %i passes as through so many stirred tanks in a row', (layers, expected) => {
    const store = layeredTank({ layers, coolantVolume: VOLUME, returnHeight: 1, drawOffHeight: 0 });
    const found = stepAt(
      store,
      SHARES.map((share) => 20 * share),
    );
    expect(found).toHaveLength(5);
    for (const k of expected.keys()) expect(Math.abs(found[k] - expected[k])).toBeLessThan(1e-3);
  });

  it('of 200 as well, where it comes near to a plug', () => {
    const store = layeredTank({ layers: 200, coolantVolume: VOLUME, returnHeight: 1, drawOffHeight: 0 });
    const found = stepAt(store, [16, 20, 24], 1e-4);
    [0.001269692728, 0.509403418, 0.9963452981].forEach((expected, k) => {
      expect(Math.abs(found[k] - expected)).toBeLessThan(1e-3);
    });
  });

  it('of 200 reaches half height when the tank has passed once, to 0.1 s', () => {
    const store = layeredTank({ layers: 200, coolantVolume: VOLUME, returnHeight: 1, drawOffHeight: 0 });
    const bench = new StoreBench(store, { rate: FLOW * PER_VOLUME, temperature: HOT }, 25);
    let half = Number.NaN;
    let before = [0, COLD];
    bench.run(
      COLD,
      0.1,
      ({ time, state }) => {
        const here = store.temperatureIn(state);
        if (before[1] < 310 && here >= 310)
          half = before[0] + ((310 - before[1]) / (here - before[1])) * (time - before[0]);
        before = [time, here];
      },
      0.1,
    );
    expect(Math.abs(half - VOLUME / FLOW)).toBeLessThan(0.1);
  });
});

describe('coolant that comes in halfway up', () => {
  // The lower half is N/2 tanks of half the volume: their residence time is 10 s, t/tau the same.
  it.each([
    [10, ERLANG[0][1]],
    [20, ERLANG[1][1]],
  ])('%i layers: on the way down only the lower half takes part', (layers, expected) => {
    const store = layeredTank({ layers, coolantVolume: VOLUME, returnHeight: 0.5, drawOffHeight: 0 });
    // What comes in is warmer than below it and colder than above: nothing overturns.
    const start = new Float64Array(layers).fill(COLD, 0, layers / 2).fill(HOT, layers / 2);
    const middle = (COLD + HOT) / 2;
    const times = SHARES.map((share) => 10 * share);
    const bench = new StoreBench(store, { rate: FLOW * PER_VOLUME, temperature: middle }, 20);
    const found: number[] = [];
    const { state } = bench.run(
      start,
      1e-3,
      ({ time, state }) => {
        if (times.some((each) => Math.abs(each - time) < 1e-9))
          found.push((store.temperatureIn(state) - COLD) / (middle - COLD));
        for (let k = layers / 2; k < layers; k++) expect(Math.abs(state[k] - HOT)).toBeLessThan(1e-9);
      },
      1,
    );
    expect(found).toHaveLength(5);
    for (const k of expected.keys()) expect(Math.abs(found[k] - expected[k])).toBeLessThan(1e-3);
    expect(store.temperatureIn(state)).toBe(state[0]);
  });

  it('on the way up only the upper half', () => {
    const store = layeredTank({ layers: 10, coolantVolume: VOLUME, returnHeight: 0.5, drawOffHeight: 1 });
    const start = new Float64Array(10).fill(COLD, 0, 5).fill(HOT, 5);
    const bench = new StoreBench(store, { rate: FLOW * PER_VOLUME, temperature: (COLD + HOT) / 2 }, 20);
    const found: number[] = [];
    bench.run(
      start,
      1e-3,
      ({ time, state }) => {
        if (SHARES.some((share) => Math.abs(10 * share - time) < 1e-9))
          found.push((HOT - state[9]) / (0.5 * (HOT - COLD)));
        for (let k = 0; k < 5; k++) expect(Math.abs(state[k] - COLD)).toBeLessThan(1e-9);
      },
      1,
    );
    for (const k of SHARES.keys()) expect(Math.abs(found[k] - ERLANG[0][1][k])).toBeLessThan(1e-3);
  });

  it('and leaves at the same height passes through one layer', () => {
    const store = layeredTank({ layers: 10, coolantVolume: VOLUME, returnHeight: 0.5, drawOffHeight: 0.5 });
    // One stirred tank of a tenth of the volume, 2 s: 1 - exp(-t/2). Between colder and warmer layers it stays there.
    const start = new Float64Array(10).fill(COLD, 0, 5).fill(HOT, 5);
    const middle = (COLD + HOT) / 2;
    const bench = new StoreBench(store, { rate: FLOW * PER_VOLUME, temperature: middle }, 8);
    let count = 0;
    bench.run(
      start,
      1e-4,
      ({ time, state }) => {
        count++;
        const share = (HOT - store.temperatureIn(state)) / (HOT - middle);
        expect(Math.abs(share - (1 - Math.exp(-time / 2)))).toBeLessThan(1e-3);
        for (const k of [0, 4]) expect(Math.abs(state[k] - COLD)).toBeLessThan(1e-9);
        for (const k of [6, 9]) expect(Math.abs(state[k] - HOT)).toBeLessThan(1e-9);
      },
      1,
    );
    expect(count).toBeGreaterThan(7);
  });
});

describe('hot coolant that comes in at the bottom', () => {
  const LAYERS = 12;
  const hot = () => layeredTank({ layers: LAYERS, coolantVolume: VOLUME, returnHeight: 0, drawOffHeight: 0 });

  it('rises: energy is kept to rounding while it does', () => {
    const bench = new StoreBench(hot(), { rate: FLOW * PER_VOLUME, temperature: HOT, gain: 2, around: 290 }, 60);
    const { ledger } = bench.run(COLD, 1e-3, () => {});
    expect(ledger.worstGap).toBeLessThan(1e-9);
    expect(ledger.stored - ledger.storedAtStart).toBeGreaterThan(1e5);
  });

  it('leaves no warm layer under a colder one once it stands', () => {
    const store = hot();
    const start = new Float64Array(LAYERS).fill(COLD);
    start[0] = HOT;
    const { state } = new StoreBench(store, {}, 600).run(start, 1e-3, () => {});
    for (let k = 1; k < LAYERS; k++) expect(state[k]).toBeGreaterThan(state[k - 1] - 1e-6);
    // What was in one layer is now in all of them.
    expect(Math.abs(store.meanIn(state) - (COLD + 20 / LAYERS))).toBeLessThan(1e-9);
  });
});
