import { describe, expect, it } from 'vitest';
import { summarisePulls } from '../../../src/sim/answers/pull-summary.ts';
import { type PullsToLimit, studyPullsToLimit } from '../../../src/sim/answers/pulls-to-limit.ts';
import { conduct } from '../../../src/sim/answers/study.ts';
import type { Config } from '../../../src/sim/scenario/config.ts';
import { simulate } from '../../../src/sim/simulate.ts';
import { type Edits, shortConfig } from '../../support/short-session.ts';

const bay = { bayAboveAmbient: 25 };
/** Pulls of 8 s with five minutes between them: from block to block little is left of what was. */
const CYCLE = [
  { kind: 'idle', duration: 30, engineSpeed: 1200, manifoldPressure: 38, exchangerAirSpeed: 2.5, ...bay },
  {
    repeat: 2,
    phases: [
      { kind: 'pull', duration: 8, engineSpeed: [2500, 6600], exchangerAirSpeed: 2.5, ...bay },
      { kind: 'idle', duration: 300, engineSpeed: 1200, manifoldPressure: 38, exchangerAirSpeed: 2.5, ...bay },
    ],
  },
];
const TIGHT = { 'numerics.tolerance': 0.01 };

function answer(edits: Edits): { config: Config; answer: PullsToLimit } {
  const config = shortConfig({ cycle: CYCLE, ...TIGHT, ...edits });
  const pulls = summarisePulls(simulate(config), config.limit.chargeTemperature);
  return { config, answer: conduct(studyPullsToLimit(config, pulls)) };
}

/** Peaks of all pulls when the block runs this often, degC. */
function peaksOf(config: Config, repeats: number): number[] {
  const series = simulate({ ...config, cycle: { ...config.cycle, repeats } });
  return summarisePulls(series, 0).map(({ peak }) => peak - 273.15);
}

const LONG = peaksOf(shortConfig({ cycle: CYCLE, ...TIGHT }), 40);
const SETTLED = LONG[LONG.length - 1];

describe('pulls to the limit', () => {
  it('has peaks to speak of in this session: rising, then settled', () => {
    expect(LONG[1] - LONG[0]).toBeGreaterThan(0.2);
    expect(SETTLED - LONG[1]).toBeGreaterThan(0.2);
    expect(Math.abs(SETTLED - LONG[LONG.length - 2])).toBeLessThan(1e-3);
  });

  it('finds the peak that a run with many more repeats comes to', () => {
    const { settled } = answer({}).answer;
    if (settled.kind !== 'settled') throw new Error(settled.kind);
    expect(Math.abs(settled.peak - 273.15 - SETTLED)).toBeLessThan(0.02);
    expect(settled.afterPulls).toBeLessThan(LONG.length);
    expect(settled.afterPulls).toBeGreaterThan(2);
  });

  it('"never": above the settled peak no pull breaks the limit however often it is repeated', () => {
    const never = answer({ 'limit.chargeTemperature': SETTLED + 0.1 }).answer;
    expect(never).toMatchObject({ count: 2, pullsRun: 2, settled: { kind: 'settled' } });
    expect(never).not.toHaveProperty('breakingPull');
    expect(never.settled).not.toHaveProperty('firstOverLimit');
  });

  it('"not in two": between the peaks of this run and the settled one a later pull does', () => {
    const limit = 0.5 * (LONG[1] + SETTLED);
    const later = answer({ 'limit.chargeTemperature': limit }).answer;
    expect(later).toMatchObject({ count: 2, pullsRun: 2, decidingPull: 2 });
    expect(later).not.toHaveProperty('breakingPull');
    const first = 1 + LONG.findIndex((peak) => peak > limit);
    expect(first).toBeGreaterThan(2);
    expect(later.settled).toMatchObject({ firstOverLimit: first });
  });

  it('names the pull that breaks the limit, and the counts of a car with 5 % less and more core', () => {
    const limit = 0.5 * (LONG[0] + LONG[1]);
    const { config, answer: broken } = answer({ 'limit.chargeTemperature': limit });
    expect(broken).toMatchObject({ count: 1, breakingPull: 2, decidingPull: 2 });
    // The counts stand against runs of scenarios whose file has the other conductances.
    const counts = [0.95, 1.05].map((factor) => {
      const edits = {
        'core.airConductance': 390 * factor,
        'core.coolantConductance': 1900 * factor,
      };
      const peaks = peaksOf(shortConfig({ cycle: CYCLE, ...TIGHT, ...edits }), config.cycle.repeats);
      const over = peaks.findIndex((peak) => peak > limit);
      return over < 0 ? peaks.length : over;
    });
    expect([broken.countAtLowerConductance, broken.countAtHigherConductance]).toEqual(counts);
    expect(counts[0]).toBeLessThan(counts[1]);
  });

  it('has nothing to settle where nothing repeats', () => {
    const [idle, repetition] = CYCLE;
    for (const cycle of [[idle, ...(repetition.phases ?? [])], [idle, { ...repetition, repeat: 1 }], [idle]]) {
      expect(answer({ cycle }).answer.settled).toEqual({ kind: 'no repeated pulls' });
    }
  });

  it('says why the repeated run ended where it does not come to settle', () => {
    // Water under no cap at 50 kPa boils at 81.3 degC (steam tables); without air the front exchanger cools nothing.
    const hot = { 'coolant.glycolByVolume': 0, 'coolant.capPressure': 0, 'ambient.pressure': 50, 'start.coolant': 60 };
    const cycle = structuredClone(CYCLE);
    for (const phase of cycle[1].phases ?? []) phase.exchangerAirSpeed = 0;
    const { settled } = answer({ ...hot, cycle, 'compressor.driveRatio': 2.6 }).answer;
    expect(settled).toMatchObject({
      kind: 'not settled',
      stoppedBecause: expect.arrayContaining([expect.stringContaining('coolant boils')]),
    });
    if (settled.kind !== 'not settled') return;
    expect(settled.afterPulls).toBeGreaterThanOrEqual(1);
    expect(Number.isFinite(settled.peak)).toBe(true);
  });

  it('has no settled peak where the run stops before its first block is over', () => {
    const stopped = answer({ 'start.coolant': 140 }).answer;
    expect(stopped).toMatchObject({ count: 0, pullsRun: 0, settled: { kind: 'no repeated pulls' } });
  });
});
