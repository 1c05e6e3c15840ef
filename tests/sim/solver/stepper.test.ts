import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import type { Segment, Stage } from '../../../src/sim/solver/stage-system.ts';
import { type StepKind, Stepper, type StepperOptions } from '../../../src/sim/solver/stepper.ts';
import { LinearSystem, lag, segmentOf } from '../../support/linear-system.ts';

interface Walk {
  readonly stepper: Stepper;
  readonly last: StepKind;
  /** times at which a step ended */
  readonly times: readonly number[];
}

function walk(system: LinearSystem, segments: readonly Segment[], start: number[], options: StepperOptions): Walk {
  const stepper = new Stepper(system, segments, Float64Array.from(start), options);
  const times: number[] = [];
  for (;;) {
    const kind = stepper.step();
    if (kind === 'finished' || kind === 'stopped') return { stepper, last: kind, times };
    if (kind === 'stepped') times.push(stepper.time);
  }
}

const tolerance = 0.01;

describe('a step ends exactly on', () => {
  const segments = [segmentOf(0, 10.3, { stops: [0.7, 7.7] }), segmentOf(10.3, 31.1)];
  const { times, last } = walk(lag(4, [80, 20]), segments, [20], { tolerance, interval: 0.3 });

  test('every segment end', () => {
    expect(last).toBe('finished');
    for (const { end } of segments) expect(times).toContain(end);
  });

  test('every stop', () => {
    for (const stop of segments[0].stops) expect(times).toContain(stop);
  });

  test('every multiple of the interval', () => {
    for (let k = 1; 0.3 * k < 31.1; k++) expect(times).toContain(0.3 * k);
  });

  test('and goes forward each time', () => {
    times.slice(1).forEach((time, k) => {
      expect(time).toBeGreaterThan(times[k]);
    });
  });
});

test('segment ends of any size are met to the last bit, with or without an interval', () => {
  const lengths = fc.array(fc.double({ min: 0.01, max: 300, noNaN: true }), { minLength: 1, maxLength: 4 });
  const claim = fc.property(lengths, fc.option(fc.double({ min: 0.5, max: 50, noNaN: true })), (parts, interval) => {
    const ends = parts.map((_, k) => parts.slice(0, k + 1).reduce((sum, length) => sum + length, 0));
    const segments = ends.map((end, k) => segmentOf(k === 0 ? 0 : ends[k - 1], end));
    const system = lag(50, Array(parts.length).fill(20));
    const { times } = walk(system, segments, [20], { tolerance, ...(interval === null ? {} : { interval }) });
    for (const { end } of segments) expect(times).toContain(end);
    expect(Math.min(...system.accepted)).toBeGreaterThan(1e-6);
  });
  fc.assert(claim);
});

test('the way to a stop is halved rather than left as a sliver', () => {
  const system = lag(4, [20]);
  walk(system, [segmentOf(0, 7.05, { longestStep: 1 })], [20], { tolerance });
  const [before, last] = system.accepted.slice(-2);
  expect(last).toBeCloseTo(before, 12);
  expect(last).toBeGreaterThan(0.5);
  expect(Math.max(...system.accepted)).toBe(1);
});

test('a short step onto a stop does not shorten the steps behind it', () => {
  const system = lag(4, [20]);
  walk(system, [segmentOf(0, 40, { longestStep: 2, stops: [20, 20.01] })], [20], { tolerance });
  const short = system.accepted.findIndex((h) => Math.abs(h - 0.01) < 1e-9);
  expect(short).toBeGreaterThan(0);
  expect(system.accepted[short + 1]).toBe(2);
});

describe('a segment', () => {
  const system = lag(30, [20, 70]);
  const { stepper, times } = walk(system, [segmentOf(0, 20), segmentOf(20, 40)], [20], { tolerance });

  test('is entered at its start, before any step in it', () => {
    expect(system.entered).toEqual([
      { index: 0, time: 0 },
      { index: 1, time: 20 },
    ]);
  });

  test('begins with a step of 0.1 s however long the last one was', () => {
    const first = times.findIndex((time) => time > 20);
    expect(times[0]).toBe(0.1);
    expect(system.accepted[first]).toBe(0.1);
    expect(system.accepted[first - 1]).toBeGreaterThan(1);
  });

  // Looking back at a slope of 0 across the jump to 50/30 K/s would estimate 0.046 K in the first step.
  test('keeps no slope of the one before', () => {
    expect(stepper.rejected).toBe(0);
  });

  test('takes the steps of the one before where it repeats it', () => {
    const twice = lag(1, [120, 220]);
    walk(twice, [segmentOf(0, 40), segmentOf(40, 80)], [20], { tolerance });
    const count = twice.accepted.length / 2;
    expect(Number.isInteger(count)).toBe(true);
    for (let k = 0; k < count; k++) expect(twice.accepted[count + k] / twice.accepted[k]).toBeCloseTo(1, 6);
  });
});

describe('the tolerance', () => {
  test.each([1, 0.1, 0.01, 0.001])('of %f K holds the error of a decay to a few times itself', (wanted) => {
    const { stepper } = walk(lag(10, [20]), [segmentOf(0, 15)], [120], { tolerance: wanted });
    const error = Math.abs(stepper.state[0] - (20 + 100 * Math.exp(-1.5)));
    expect(error).toBeLessThan(10 * wanted);
    expect(error).toBeGreaterThan(0.01 * wanted);
  });

  test('refuses a step that is too long and tries a shorter one', () => {
    const { stepper, times } = walk(lag(0.01, [20]), [segmentOf(0, 1)], [120], { tolerance });
    expect(stepper.rejected).toBeGreaterThan(0);
    expect(times[0]).toBeLessThan(0.02);
    expect(stepper.accepted).toBe(times.length);
  });
});

describe('the time of an event', () => {
  // From 20 towards 120 with 10 s: level L is met at -10 ln((120 - L)/100).
  const riseTo = (level: number) => -10 * Math.log((120 - level) / 100);

  test.each([25, 60, 83.2, 115])('is that of the exact exponential to 1e-4 s at level %f', (level) => {
    const thresholds = [{ index: 0, level }];
    const { stepper, times } = walk(lag(10, [120], { thresholds }), [segmentOf(0, 40)], [20], { tolerance: 1e-8 });
    expect(stepper.events.length).toBe(1);
    expect(stepper.events[0].rising).toBe(true);
    expect(Math.abs(stepper.events[0].time - riseTo(level))).toBeLessThan(1e-4);
    expect(times).toContain(stepper.events[0].time);
  });

  test('is found in four tries where the way to it is smooth', () => {
    const tries: number[] = [];
    class Counted extends LinearSystem {
      override solveStage(stage: Stage): number {
        if (stage.number === 2) tries.push(stage.time);
        return super.solveStage(stage);
      }
    }
    const setup = { matrix: [[-0.1]], constants: [[12]], thresholds: [{ index: 0, level: 80 }] };
    const { stepper, times } = walk(new Counted(setup), [segmentOf(0, 40)], [20], { tolerance: 0.1 });
    const steps = times.length + stepper.rejected;
    expect(tries.length - steps).toBeLessThanOrEqual(4);
  });

  // 14 kJ/K warmed by 6 W/K from a bay of 95 degC, 35 degC at first: T = 95 - 60 e^(-6 t/14000), so 0.015 K/s at 60
  // degC.
  test('is met to 3e-4 s where the temperature creeps', () => {
    const soak = lag(14000 / 6, [95], { thresholds: [{ index: 0, level: 60 }] });
    const { stepper } = walk(soak, [segmentOf(0, 2400)], [35], { tolerance: 1e-8 });
    expect(Math.abs(stepper.events[0].time - 1257.658502)).toBeLessThan(3e-4);
  });

  test('comes in order for several in one step, and again on the way back', () => {
    const thresholds = [30, 30.001, 100].map((level) => ({ index: 0, level }));
    const system = lag(10, [120, 20], { thresholds });
    const { stepper } = walk(system, [segmentOf(0, 50), segmentOf(50, 100)], [20], { tolerance: 0.1 });
    expect(stepper.events.map(({ index, rising }) => [index, rising])).toEqual([
      [0, true],
      [1, true],
      [2, true],
      [2, false],
      [1, false],
      [0, false],
    ]);
    const times = stepper.events.map(({ time }) => time);
    expect(times).toEqual([...times].sort((a, b) => a - b));
  });

  test('is the end of the step where no shorter step has an answer', () => {
    /** Once a crossing is seen, answers nothing shorter until a step stands. */
    class Choosy extends LinearSystem {
      private asked = 0;
      private limit = Number.POSITIVE_INFINITY;
      override solveStage(stage: Stage): number {
        this.asked = stage.s;
        return this.asked > this.limit ? 0 : super.solveStage(stage);
      }
      override examine(state: Float64Array, events: Float64Array): number {
        const energy = super.examine(state, events);
        if (events[0] > 0) this.limit = this.asked;
        return energy;
      }
      override acceptStep(h: number): void {
        super.acceptStep(h);
        this.limit = Number.POSITIVE_INFINITY;
      }
    }
    const system = new Choosy({ matrix: [[-0.1]], constants: [[12]], thresholds: [{ index: 0, level: 60 }] });
    const { stepper, times, last } = walk(system, [segmentOf(0, 40)], [20], { tolerance: 0.1 });
    expect(last).toBe('finished');
    expect(stepper.events.length).toBe(1);
    expect(times).toContain(stepper.events[0].time);
    expect(stepper.events[0].time).toBeGreaterThan(riseTo(60) + 0.01);
    expect(Math.abs(stepper.state[0] - (120 - 100 * Math.exp(-4)))).toBeLessThan(0.5);
  });

  test('is the start for what has happened by then', () => {
    const system = lag(10, [120], { thresholds: [{ index: 0, level: 10 }] });
    const { stepper } = walk(system, [segmentOf(0, 5)], [20], { tolerance });
    expect(stepper.events).toEqual([{ time: 0, index: 0, rising: true }]);
  });
});

describe('a run stops, and keeps what it had,', () => {
  function expectKept({ stepper, last }: Walk, system: LinearSystem): void {
    expect(last).toBe('stopped');
    expect(stepper.accepted).toBe(system.accepted.length);
    expect(system.accepted.reduce((sum, h) => sum + h, 0)).toBeCloseTo(stepper.time, 9);
    for (const temperature of stepper.state) expect(Number.isFinite(temperature)).toBe(true);
  }

  test('at an event that ends it, and tells which', () => {
    const thresholds = [
      { index: 0, level: 50 },
      { index: 0, level: 83.2, ends: true },
    ];
    const system = lag(10, [120], { thresholds });
    const result = walk(system, [segmentOf(0, 40)], [20], { tolerance });
    expectKept(result, system);
    expect(result.stepper.terminalEvent).toBe(1);
    expect(result.stepper.state[0]).toBeCloseTo(83.2, 3);
  });

  test('where the system has no answer', () => {
    const system = lag(10, [120], { noAnswerAfter: 7 });
    const result = walk(system, [segmentOf(0, 40)], [20], { tolerance });
    expectKept(result, system);
    expect(result.stepper.terminalEvent).toBeUndefined();
    expect(result.stepper.time).toBeLessThanOrEqual(7);
    expect(result.stepper.time).toBeGreaterThan(7 - 1e-5);
  });

  test('where a temperature is not a number, having refused every such step', () => {
    const system = new LinearSystem({
      matrix: [
        [-1, 0],
        [0, -1],
      ],
      constants: [[20, 20]],
      notANumberAfter: 3,
    });
    const result = walk(system, [segmentOf(0, 40)], [20, 50], { tolerance });
    expectKept(result, system);
    expect(result.stepper.terminalEvent).toBeUndefined();
    expect(result.stepper.time).toBeLessThanOrEqual(3);
    expect(result.stepper.time).toBeGreaterThan(3 - 1e-5);
  });

  test('where a step of fixed length has no answer', () => {
    const system = lag(10, [120], { notANumberAfter: 3 });
    const result = walk(system, [segmentOf(0, 40)], [20], { tolerance, fixedStep: 0.5 });
    expectKept(result, system);
    expect(result.stepper.time).toBe(3);
  });
});

test('steps of fixed length are taken as asked, whatever their error', () => {
  const system = lag(0.1, [20]);
  const { stepper } = walk(system, [segmentOf(0, 2.25)], [120], { tolerance: 1e-9, fixedStep: 0.5 });
  expect(system.accepted).toEqual([0.5, 0.5, 0.5, 0.5, 0.25]);
  expect(stepper.rejected).toBe(0);
});
