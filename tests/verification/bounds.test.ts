import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { Bench, type BenchSetup, type PartSetup, runToEnd } from '../support/bench.ts';
import type { Profile } from '../support/profile.ts';

/**
 * No temperature leaves the range of its sources by more than 1 % of a 30 K step of the coolant entering, under the
 * default step control. Parts are invented, from small to large for the trade; flows run from 0 to 60 L/min.
 */

const COLD = 293;
const HOT = 323;
const ALLOWED = 0.01 * (HOT - COLD);
const TOLERANCE = 0.1;

const LITRES_PER_MINUTE = 4186 / 60;
const AIR_HEAT_CAPACITY = 1006;
/** One cell of line, as the simulator lays them out [m]. */
const LINE_CELL = 0.07;

const between = (min: number, max: number) => fc.double({ min, max, noNaN: true });
/** L/min: none, trickles of any size, or anything up to 60 */
const flow = fc.oneof(
  { weight: 1, arbitrary: fc.constant(0) },
  { weight: 2, arbitrary: between(-2, 1.778).map((power) => 10 ** power) },
  { weight: 4, arbitrary: between(0, 60) },
);

type Given<A> = A extends fc.Arbitrary<infer T> ? T : never;

/** Flow that jumps twice, so that the pump may stop and start again; times of the jumps and of the inlet's step. */
const drive = fc.record({
  flows: fc.tuple(flow, flow, flow),
  firstJump: between(3, 25),
  secondJump: between(3, 25),
  stepAt: between(2, 7),
  /** s that the inlet takes for its 30 K */
  ramp: fc.constantFrom(0, 0, 0.05, 0.2, 0.5, 1, 3, 10),
  isWarming: fc.boolean(),
});
type Drive = Given<typeof drive>;

function overPhases({ flows, firstJump, secondJump }: Drive, lawOf: (flow: number) => number): Profile {
  const [a, b, c] = flows.map(lawOf);
  const second = firstJump + secondJump;
  return [
    [0, a],
    [firstJump, a],
    [firstJump, b],
    [second, b],
    [second, c],
  ];
}

const core = fc.record({
  cells: fc.constantFrom([12, 6], [24, 12], [48, 24], [24, 24]),
  metalCapacity: between(500, 4000),
  coolantCapacity: between(800, 6000),
  coolantConductance: between(800, 4500),
  floor: fc.constantFrom(0.02, 0.15),
  /** kg/s */
  airFlow: fc.constantFrom(0, 0, 0.05, 0.3),
  airConductance: between(300, 1200),
  airIn: fc.constantFrom(COLD, HOT, 390),
  /** W/K that hold the metal at the temperature of something else */
  held: fc.constantFrom(0, 0, 1e3, 1e6),
  heldAt: fc.constantFrom(COLD, HOT),
});

function corePart(given: Given<typeof core>, driven: Drive): PartSetup {
  const { airFlow, airIn, floor, metalCapacity, coolantCapacity } = given;
  const [nx, ny] = given.cells;
  return {
    nx,
    ny,
    metalCapacity,
    coolantCapacity,
    coolantConductance: overPhases(driven, (f) => given.coolantConductance * Math.max((f / 18) ** 0.6, floor)),
    airRate: airFlow * AIR_HEAT_CAPACITY,
    airConductance: given.airConductance * (airFlow / 0.3) ** 0.62,
    airIn,
    metalLoss: given.held,
    metalSource: given.held * given.heldAt,
  };
}

const line = fc.record({
  /** m */
  length: between(0.1, 3),
  bore: between(0.012, 0.025),
  /** per metre */
  wall: between(10, 900),
  coolantToWall: between(1, 60),
  bay: fc.constantFrom(COLD, HOT, 308),
});

function linePart({ length, bore, wall, coolantToWall, bay }: Given<typeof line>): PartSetup {
  return {
    nx: 1,
    ny: Math.max(4, Math.ceil(length / LINE_CELL)),
    metalCapacity: wall * length,
    coolantCapacity: (Math.PI / 4) * bore ** 2 * length * 4.18e6,
    coolantConductance: coolantToWall * length,
    metalLoss: 0.6 * length,
    metalSource: 0.6 * length * bay,
  };
}

/** How far any temperature gets out of the range of its sources [K]. */
function excursion(parts: readonly PartSetup[], driven: Drive): number {
  const { isWarming, stepAt, ramp } = driven;
  const [from, to] = isWarming ? [COLD, HOT] : [HOT, COLD];
  const setup: BenchSetup = {
    parts,
    coolantRate: overPhases(driven, (f) => f * LITRES_PER_MINUTE),
    coolantIn: [
      [0, from],
      [stepAt, from],
      [stepAt + ramp, to],
    ],
    end: driven.firstJump + driven.secondJump + 25,
  };
  const airs = parts.map(({ airRate, airIn }) => (airRate !== undefined && airRate !== 0 ? (airIn as number) : COLD));
  const highest = Math.max(HOT, ...airs);
  const bench = new Bench(setup);
  let worst = 0;
  const see = (temperature: number) => {
    worst = Math.max(worst, COLD - temperature, temperature - highest);
  };
  runToEnd(bench, bench.startState(from), { tolerance: TOLERANCE }, ({ state }) => {
    state.forEach(see);
    for (const { airOut, coolantOut } of bench.blocks) {
      see(airOut);
      see(coolantOut);
    }
  });
  return worst;
}

function expectWithinSources(parts: readonly PartSetup[], driven: Drive): void {
  expect(excursion(parts, driven)).toBeLessThan(ALLOWED);
}

describe('a 30 K step of the coolant stays within its sources', () => {
  test('in a core, with air or without', () => {
    fc.assert(fc.property(core, drive, (given, driven) => expectWithinSources([corePart(given, driven)], driven)));
  });

  test('in one to three stretches of line', () => {
    const stretches = fc.array(line, { minLength: 1, maxLength: 3 });
    const claim = fc.property(stretches, drive, (lines, driven) => expectWithinSources(lines.map(linePart), driven));
    fc.assert(claim, { numRuns: 300 });
  });

  test('along line, core, line, exchanger and line', () => {
    fc.assert(
      fc.property(fc.tuple(line, core, line, core, line), drive, ([a, b, c, d, e], driven) => {
        expectWithinSources([linePart(a), corePart(b, driven), linePart(c), corePart(d, driven), linePart(e)], driven);
      }),
    );
  });
});

test('a front makes the cells it crosses plain upwind, and second order returns once it has passed', () => {
  const setup: BenchSetup = {
    parts: [linePart({ length: 1.5, bore: 0.019, wall: 400, coolantToWall: 10, bay: COLD })],
    coolantRate: 18 * LITRES_PER_MINUTE,
    coolantIn: [
      [0, COLD],
      [2, COLD],
      [2, HOT],
    ],
    end: 12,
  };
  const bench = new Bench(setup);
  const [block] = bench.blocks;
  const upwindUntil: number[] = [];
  runToEnd(bench, bench.startState(COLD), { tolerance: TOLERANCE }, ({ time }) => {
    if (time < 2) expect(block.isLinearUpwind).toBe(true);
    if (!block.isLinearUpwind) upwindUntil.push(time);
  });
  // 0.43 kg at 0.3 kg/s: the front takes 1.4 s, and a content more has to pass behind what is seen of it.
  expect(upwindUntil[0]).toBeLessThan(2.1);
  expect(upwindUntil[upwindUntil.length - 1]).toBeGreaterThan(3.4);
  expect(upwindUntil[upwindUntil.length - 1]).toBeLessThan(5.5);
});
