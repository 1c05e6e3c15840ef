import { describe, expect, it } from 'vitest';
import { mixedTank, PER_VOLUME, StoreBench } from '../../support/store-bench.ts';

/**
 * The mixed tank by itself against closed forms (O. Levenspiel, Chemical Reaction Engineering, 3rd ed., 1999, chapters
 * on ideal flow; heat balances by hand). Values from high-precision arithmetic, the first two confirmed by an
 * eighth-order integrator.
 */

const KELVIN = 273.15;
const TOLERANCE = 1e-6;

function temperaturesAt(bench: StoreBench, start: number, times: readonly number[]): number[] {
  const found: number[] = [];
  bench.run(
    start,
    TOLERANCE,
    ({ time, state }) => {
      if (times.some((each) => Math.abs(each - time) < 1e-9)) found.push(bench.store.temperatureIn(state));
    },
    5,
  );
  return found;
}

describe('a mixed tank without ice', () => {
  it('washes out: 6 L, 0.3 L/s, from 350 K with 290 K coming in', () => {
    const store = mixedTank({ coolantVolume: 0.006 });
    const bench = new StoreBench(store, { rate: 0.0003 * PER_VOLUME, temperature: 290 }, 80);
    const expected = [326.3918396, 312.0727665, 298.120117, 291.0989383];
    const found = temperaturesAt(bench, 350, [10, 20, 40, 80]);
    expect(found).toHaveLength(4);
    for (const k of expected.keys()) expect(Math.abs(found[k] - expected[k])).toBeLessThan(1e-4);
  });

  it('warms up with coolant, surroundings and 3 kW: 6 kg, 0.3 kg/s at 300 K, 20 W/K to 303 K', () => {
    const store = mixedTank({ coolantVolume: 0.006 });
    // 3 kW through 20 W/K is surroundings 150 K warmer.
    const inflow = { rate: 0.3 * 4186, temperature: 300, gain: 20, around: 303 + 3000 / 20 };
    const expected = [296.6594371, 299.7197444, 302.047331, 302.3982086];
    const found = temperaturesAt(new StoreBench(store, inflow, 200), 295, [5, 20, 60, 200]);
    expect(found).toHaveLength(4);
    for (const k of expected.keys()) expect(Math.abs(found[k] - expected[k])).toBeLessThan(1e-4);
  });
});

describe('a tank of ice', () => {
  it('of 2 kg at 0 degC melts in 133.42 s of 5 kW, in a straight line where heat passes easily', () => {
    // m L / Q = 2 x 333.55 kJ / 5 kW. Little water, and no resistance to speak of between it and the ice.
    const store = mixedTank({ coolantVolume: 1e-6, iceMass: 2, meltConductance: 1e7 });
    const bench = new StoreBench(store, { gain: 1e-3, around: KELVIN + 5e6 }, 140, 0.5);
    const stepper = bench.run(KELVIN, 1e-4, ({ time, state }) => {
      if (time < 130) expect(Math.abs(store.iceIn(state) - 2 * (1 - time / 133.42))).toBeLessThan(1e-4);
    });
    const [gone] = stepper.events;
    // The last gram has little surface left: its water is a degree warm.
    expect(Math.abs(gone.time - 133.42)).toBeLessThan(0.2);
    // What comes afterwards warms 2.001 kg.
    const after = ((140 - 133.42) * 5000) / (2.001 * 4186);
    expect(Math.abs(store.temperatureIn(stepper.state) - KELVIN - after)).toBeLessThan(1e-4);
  });

  it('of 1 kg in 4 kg of water of 25 degC ends at 4.06354515 degC, all melted', () => {
    const store = mixedTank({ coolantVolume: 0.004, iceMass: 1 });
    const { state } = new StoreBench(store, {}, 20_000).run(KELVIN + 25, 1e-3, () => {});
    expect(Math.abs(store.temperatureIn(state) - KELVIN - 4.06354515)).toBeLessThan(1e-8);
    expect(store.iceIn(state)).toBe(0);
  });

  it('of 2 kg in 4 kg of water of 10 degC ends at 0 degC with 1.4980063 kg left', () => {
    const store = mixedTank({ coolantVolume: 0.004, iceMass: 2 });
    const { state } = new StoreBench(store, {}, 20_000).run(KELVIN + 10, 1e-4, () => {});
    expect(Math.abs(store.temperatureIn(state) - KELVIN)).toBeLessThan(1e-6);
    expect(Math.abs(store.iceIn(state) - 1.4980063)).toBeLessThan(1e-6);
  });
});
