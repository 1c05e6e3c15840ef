import { describe, expect, it } from 'vitest';
import { simulate } from '../../src/sim/simulate.ts';
import type { StepperOptions } from '../../src/sim/solver/stepper.ts';
import { Bench, type PartSetup, runToEnd } from '../support/bench.ts';
import type { Profile } from '../support/profile.ts';
import { shortConfig } from '../support/short-session.ts';

/**
 * Loops whose answer is known in closed form: linear ordinary and delay differential equations, derived beside each
 * case; values from 50-digit arithmetic, confirmed by an eighth-order integrator to 1e-8. degC.
 */

const TINY = 1e-6;
/** A line without wall: what is in it holds no more than its coolant. */
const line = (capacity: number, ny: number): PartSetup => ({
  nx: 1,
  ny,
  metalCapacity: TINY,
  coolantCapacity: capacity,
  coolantConductance: 0,
});

/**
 * What takes up a share of the way from the coolant's temperature to one that is held: coolantConductance
 * -w ln(1 - share).
 */
function exchangerOf(share: number, rate: number, held: number): PartSetup {
  return {
    nx: 1,
    ny: 40,
    metalCapacity: TINY,
    coolantCapacity: TINY,
    coolantConductance: -rate * Math.log(1 - share),
    metalLoss: 1e12,
    metalSource: 1e12 * held,
  };
}

/** Values of a run at some of its times. */
function valuesAt(
  bench: Bench,
  start: Float64Array,
  times: readonly number[],
  options: StepperOptions,
  read: (state: Float64Array) => number,
): number[] {
  const found: number[] = [];
  runToEnd(bench, start, options, ({ time, state }) => {
    if (times.some((each) => Math.abs(each - time) < 1e-9)) found.push(read(state));
  });
  expect(found).toHaveLength(times.length);
  return found;
}

/** Equal steps: parts that hold nothing jump at the start, which no error control lets pass. */
const equal = (fixedStep: number): StepperOptions => ({ tolerance: 1, fixedStep });

function expectClose(found: readonly number[], expected: readonly number[], tolerance: number): void {
  found.forEach((value, k) => {
    expect(Math.abs(value - expected[k]), `value ${k}: ${value}`).toBeLessThan(tolerance);
  });
}

describe('heated metal and a reservoir that loses heat', () => {
  // 8000 dT1/dt = 15000 + 1200 (T2 - T1), 24000 dT2/dt = 1200 (T1 - T2) + 400 (25 - T2), both from 60 degC: eigenvalues
  // of the 2 x 2 matrix, time constants 81.775 s and 4.891 s. Coolant that races round has the reservoir's temperature.
  const bench = () =>
    new Bench({
      parts: [
        { nx: 1, ny: 1, metalCapacity: 8000, coolantCapacity: TINY, coolantConductance: 1200, metalSource: 15000 },
      ],
      coolantRate: 1e9,
      coolantIn: { capacity: 24000, loss: 400, surroundings: 25 },
      end: 1200,
    });
  const times = [1, 3, 10, 20, 60, 180];

  it('follow both time constants', () => {
    const metal = [61.70254449, 64.25794437, 68.37490269, 69.99818038, 72.02353233, 74.31388778];
    const tank = [59.4786627, 58.74085119, 57.87495162, 58.09495497, 59.76623986, 61.86982259];
    const options = { tolerance: 1e-5, interval: 1 };
    const own = bench();
    expectClose(
      valuesAt(own, own.startState(60), times, options, (state) => state[0]),
      metal,
      1e-3,
    );
    expectClose(
      valuesAt(own, own.startState(60), times, options, (state) => own.reservoirTemperature(state)),
      tank,
      1e-3,
    );
  });

  it('end at 75 and 62.5 degC', () => {
    const own = bench();
    const { state } = runToEnd(own, own.startState(60), { tolerance: 1e-3 });
    expectClose([state[0], own.reservoirTemperature(state)], [75, 62.5], 1e-2);
  });
});

// Tank, core (0.18 of the way to air of 140 degC), front exchanger (0.3 of the way to 25 degC), tank: 1200 W/K, 30
// kJ/K.
const RATE = 1200;
const core = exchangerOf(0.18, RATE, 140);
const front = exchangerOf(0.3, RATE, 25);
const tank = (capacity: number) => ({ capacity, loss: 0, surroundings: 0 });

describe('a tank in a loop with core and front exchanger', () => {
  // M c dT/dt = w [(1 - b)(T + a (Th - T)) + b Ta - T]: end 59.01408451 degC, time constant 58.68544601 s.
  it('warms as one exponential where the lines hold nothing', () => {
    const bench = new Bench({ parts: [core, front], coolantRate: RATE, coolantIn: tank(30000), end: 800 });
    const times = [5, 10, 20, 40, 80, 160, 800];
    const expected = [32.36962089, 34.54571153, 38.3792347, 44.33855592, 51.59109864, 57.11498205, 59.01405];
    const found = valuesAt(bench, bench.startState(30), times, equal(0.1), (state) =>
      bench.reservoirTemperature(state),
    );
    expectClose(found, expected, 2e-3);
  });

  // tau dT/dt = Tin - T, Tin = 30 until 4 s, then g T(t - 7) + (1 - b) a Th + b Ta: a series of incomplete gammas.
  it('warms with a kink on every lap behind lines of 3 and 4 s', () => {
    const bench = new Bench({
      parts: [line(3 * RATE, 240), core, front, line(4 * RATE, 320)],
      coolantRate: RATE,
      coolantIn: tank(30000),
      end: 200,
    });
    const times = [2, 4, 5, 8, 11, 15, 20, 30, 50, 100, 200];
    const expected = [
      30, 30, 30.48464253, 31.82750277, 33.01851296, 34.48139188, 36.20595612, 39.29912622, 44.2839209, 51.90625744,
      57.35909434,
    ];
    const found = valuesAt(bench, bench.startState(30), times, equal(0.05), (state) =>
      bench.reservoirTemperature(state),
    );
    // Behind a front the cells are of first order: 4 s smear by 4/320^0.5 = 0.22 s, at the first kink 0.4 of it x 0.5
    // K/s.
    expectClose(found, expected, 0.05);
  });
});

describe('a ring of plug flow without a tank', () => {
  // T(n + 1) = g T(n) + (1 - b) a Th + b Ta.
  it('climbs a stair, one step a lap', () => {
    const lap = 10;
    const bench = new Bench({
      parts: [line(lap * RATE, 500), core, front],
      coolantRate: RATE,
      coolantIn: tank(TINY),
      end: 6 * lap,
    });
    const times = [0.5, 1.5, 2.5, 3.5, 4.5, 5.5].map((laps) => laps * lap);
    const found = valuesAt(bench, bench.startState(30), times, equal(0.05), () => bench.blocks[0].coolantOut);
    expectClose(found, [30, 42.36, 49.45464, 53.52696336, 55.86447697, 57.20620978], 0.02);
  });
});

describe('a line that pushes its coolant through', () => {
  // 2.5 m of 19 mm hold 0.7088218425 L: 2.83528737 s at 0.25 L/s. A ramp of 0.5 K/s lags by a td = 1.417643685 K.
  it('lags a ramp by its delay', () => {
    const rate = 0.00025 * 4e6;
    const bench = new Bench({
      parts: [line(0.0007088218425 * 4e6, 36)],
      coolantRate: rate,
      coolantIn: [
        [0, 20],
        [30, 35],
      ],
      end: 30,
    });
    const found = valuesAt(
      bench,
      bench.startState(20),
      [10, 20, 30],
      { tolerance: 1e-4, interval: 0.5 },
      () => bench.blocks[0].coolantOut,
    );
    expectClose(found, [25 - 1.417643685, 30 - 1.417643685, 35 - 1.417643685], 2e-3);
  });

  // 1.2 L while the pump speeds up from 0.1 L/s by 0.01 L/s2: the volume that has passed decides, not the flow of one
  // instant.
  it.each([
    [0, 8.439088915],
    [2, 9.595917942],
    [5, 11.56385865],
    [10, 15.29822128],
    [20, 23.76388603],
  ])('hands on at its time what came in at %f s while the pump speeds up: %f s', (entry, exit) => {
    const end = exit + 5;
    const step: Profile = [
      [0, 20],
      [entry, 20],
      [entry, 40],
      [end, 40],
    ];
    const bench = new Bench({
      parts: [line(0.0012 * 4e6, 200)],
      coolantRate: [
        [0, 0.0001 * 4e6],
        [end, (0.0001 + 1e-5 * end) * 4e6],
      ],
      coolantIn: step,
      end,
    });
    expect(Math.abs(halfTime(bench, 30) - exit)).toBeLessThan(0.1);
  });
});

/** When the last part hands on this temperature [s]. */
function halfTime(bench: Bench, level: number): number {
  let before = [0, 20];
  let half = Number.NaN;
  runToEnd(bench, bench.startState(20), { tolerance: 0.01, interval: 0.1 }, ({ time }) => {
    const here = bench.blocks[bench.blocks.length - 1].coolantOut;
    if (before[1] < level && here >= level)
      half = before[0] + ((level - before[1]) / (here - before[1])) * (time - before[0]);
    before = [time, here];
  });
  return half;
}

describe('a line without wall in a car', () => {
  // The volume between reservoir and core passes at the flow that is recorded.
  it('brings the reservoir to the core when its volume has passed, to 0.1 s', () => {
    const edits = {
      'lines.coolantToWall': 0,
      'lines.afterReservoir': { length: 4, bore: 20 },
      'lines.afterPump': { length: 3 },
      'lines.bore': 15,
      'start.coolant': 20,
      'start.reservoir': 60,
      'pump.shareIntoCoolant': 0,
      'numerics.tolerance': 0.01,
      cycle: [
        { kind: 'hot soak', duration: 40, pump: 'on' },
        { kind: 'pull', duration: 1, engineSpeed: 2500, exchangerAirSpeed: 5 },
      ],
    };
    const { columns, rowCount } = simulate(shortConfig(edits), { interval: 0.1 });
    const { time, coolantFlow, coolantIntoCore } = columns;
    const volume = (Math.PI / 4) * (4 * 0.02 ** 2 + 3 * 0.015 ** 2);
    let passed = 0;
    let due = Number.NaN;
    let arrival = Number.NaN;
    for (let row = 1; row < rowCount; row++) {
      const duration = time[row] - time[row - 1];
      const before = passed;
      passed += 0.5 * (coolantFlow[row] + coolantFlow[row - 1]) * duration;
      if (before < volume && passed >= volume) due = time[row] - ((passed - volume) / (passed - before)) * duration;
      const [from, to] = [coolantIntoCore[row - 1], coolantIntoCore[row]];
      const half = 273.15 + 40;
      if (Number.isNaN(arrival) && from < half && to >= half)
        arrival = time[row - 1] + ((half - from) / (to - from)) * duration;
    }
    expect(due).toBeGreaterThan(3);
    expect(Math.abs(arrival - due)).toBeLessThan(0.1);
  });
});
