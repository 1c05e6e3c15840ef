import { describe, expect, it } from 'vitest';
import { layOutCycle, makeInputs, readInputs } from '../../../src/sim/model/drive-cycle.ts';
import type { PhaseConfig, PhaseKind } from '../../../src/sim/scenario/config/cycle.ts';
import type { Config } from '../../../src/sim/scenario/config.ts';
import { shortConfig } from '../../support/short-session.ts';

function phase(name: string, kind: PhaseKind, duration: number): PhaseConfig {
  return {
    name,
    kind,
    duration,
    engineSpeed: { from: 2000, to: 6000 },
    manifoldPressure: { from: 40e3, to: 60e3 },
    exchangerAir: { speed: { from: 8, to: 4 }, pickUp: { from: 2, to: 6 } },
    secondExchangerAir: { speed: { from: 2, to: 1 }, pickUp: { from: 1, to: 3 } },
    isExchangerBypassed: false,
    isHeatSinkOn: true,
    outsideTemperature: { from: 290, to: 300 },
    outsidePressure: { from: 100e3, to: 80e3 },
    relativeHumidity: 0.5,
    bayAboveOutside: 20,
    engineMetalTemperature: 363,
    oilTemperature: 364,
    pumpVoltageRatio: 0.9,
    secondPumpVoltageRatio: 0.8,
  };
}

const CONFIG: Config = {
  ...shortConfig(),
  cycle: {
    before: [phase('out', 'cruise', 10)],
    block: [phase('a', 'pull', 7), phase('b', 'idle', 3), phase('c', 'pull', 0.8)],
    repeats: 2,
    after: [phase('in', 'cooldown', 5), phase('soak', 'hot soak', 100)],
  },
  numerics: { tolerance: 0.1, longestStepInPull: 0.4, longestStep: 6 },
};

describe('the laid-out cycle', () => {
  const segments = layOutCycle(CONFIG);

  it('runs its phases one after the other from time 0, the repeated block counted from 1', () => {
    expect(segments.map(({ phase: { name }, block, start, end }) => [name, block, start, end])).toEqual([
      ['out', 0, 0, 10],
      ['a', 1, 10, 17],
      ['b', 1, 17, 20],
      ['c', 1, 20, 20.8],
      ['a', 2, 20.8, 27.8],
      ['b', 2, 27.8, 30.8],
      ['c', 2, 30.8, expect.closeTo(31.6, 12)],
      ['in', 0, expect.closeTo(31.6, 12), expect.closeTo(36.6, 12)],
      ['soak', 0, expect.closeTo(36.6, 12), expect.closeTo(136.6, 12)],
    ]);
  });

  it('leaves no gap between phases, not even of rounding', () => {
    for (let k = 1; k < segments.length; k++) expect(segments[k].start).toBe(segments[k - 1].end);
  });

  it('stops a step 1 s into each pull that lasts longer, where its peak begins to count', () => {
    expect(segments.map(({ stops }) => [...stops])).toEqual([[], [11], [], [], [21.8], [], [], [], []]);
  });

  it('takes short steps in pulls only', () => {
    expect(segments.map(({ longestStep }) => longestStep)).toEqual([6, 0.4, 6, 0.4, 0.4, 6, 0.4, 6, 6]);
  });
});

describe('what a phase prescribes', () => {
  const [, pull] = layOutCycle(CONFIG);
  const at = (time: number) => {
    const inputs = makeInputs();
    readInputs(pull, time, inputs);
    return inputs;
  };

  it('runs in straight lines from the first to the second value', () => {
    expect(at(10)).toMatchObject({ engineSpeed: 2000, manifoldPressure: 40e3, airSpeed: 8 });
    expect(at(17)).toMatchObject({ engineSpeed: 6000, manifoldPressure: 60e3, airSpeed: 4 });
    const halfway = at(13.5);
    expect(halfway.engineSpeed).toBeCloseTo(4000, 9);
    expect(halfway.manifoldPressure).toBeCloseTo(50e3, 9);
    expect(halfway.airSpeed).toBeCloseTo(6, 12);
  });

  it('holds the rest, and does not run on beyond its ends', () => {
    expect(at(12)).toMatchObject({ bayAboveOutside: 20, engineMetal: 363, oil: 364, secondPickUp: 1 + (2 * 2) / 7 });
    expect(at(17.000001)).toEqual(at(17));
    expect(at(9.999999)).toEqual(at(10));
  });
});
