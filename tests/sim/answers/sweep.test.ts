import { describe, expect, it } from 'vitest';
import { reportRun } from '../../../src/sim/answers/run-report.ts';
import { conduct } from '../../../src/sim/answers/study.ts';
import { evenly, gridPlan, samplePlan, studyGrid, studySweepCase } from '../../../src/sim/answers/sweep.ts';
import { parseScenario } from '../../../src/sim/scenario/parse.ts';
import { toConfig } from '../../../src/sim/scenario/to-config.ts';
import { simulate } from '../../../src/sim/simulate.ts';
import { type Edits, shortDocument } from '../../support/short-session.ts';

function scenarioOf(edits: Edits = {}) {
  const { scenario } = parseScenario(JSON.stringify(shortDocument(edits)));
  if (scenario === undefined) throw new Error('not read');
  return scenario;
}

describe('the cases of a sweep', () => {
  it('are every combination once, the last axis fastest', () => {
    const plan = gridPlan([
      { path: 'a', values: [1, 2] },
      { path: 'b', values: ['x', 'y', 'z'] },
    ]);
    expect(Array.from({ length: plan.count }, (_, k) => plan.changesOf(k))).toEqual([
      { a: 1, b: 'x' },
      { a: 1, b: 'y' },
      { a: 1, b: 'z' },
      { a: 2, b: 'x' },
      { a: 2, b: 'y' },
      { a: 2, b: 'z' },
    ]);
    expect(Object.keys(plan.changesOf(5))).toEqual(['a', 'b']);
  });

  it('have both ends and no crumbs of binary fractions', () => {
    expect(evenly(0, 0.3, 4)).toEqual([0, 0.1, 0.2, 0.3]);
    expect(evenly(5, -5, 3)).toEqual([5, 0, -5]);
  });

  it('stay within their ranges when drawn, and stay the same when more are asked for', () => {
    const axes = [
      { path: 'a', low: -1, high: 1 },
      { path: 'b', low: 300, high: 600 },
    ];
    const [few, many, other] = [samplePlan(axes, 4, 1), samplePlan(axes, 400, 1), samplePlan(axes, 4, 2)];
    for (let k = 0; k < 4; k++) {
      expect(few.changesOf(k)).toEqual(many.changesOf(k));
      expect(few.changesOf(k)).not.toEqual(other.changesOf(k));
    }
    const drawn = Array.from({ length: many.count }, (_, k) => Number(many.changesOf(k).b));
    expect(Math.min(...drawn)).toBeGreaterThanOrEqual(300);
    expect(Math.max(...drawn)).toBeLessThan(600);
    expect(Math.max(...drawn) - Math.min(...drawn)).toBeGreaterThan(295);
  });
});

describe('a grid', () => {
  it('has every case as it is alone, in order, the refused ones too', () => {
    const scenario = scenarioOf();
    const axes = [
      { path: 'core.airConductance', values: [300, -1, 500] },
      { path: 'cycle.1.repeat', values: [1, 2, 3, 4, 5, 6] },
    ];
    const plan = gridPlan(axes);
    const alone = Array.from({ length: plan.count }, (_, k) => conduct(studySweepCase(scenario, plan.changesOf(k))));
    expect(conduct(studyGrid(scenario, axes))).toEqual(alone);
    expect(alone.filter(({ refused }) => refused !== undefined)).toHaveLength(6);
  });
});

describe('one case', () => {
  it('has the figures of a run of a file with that value', () => {
    const limit = { 'limit.chargeTemperature': 60 };
    const line = conduct(studySweepCase(scenarioOf(limit), { 'core.airConductance': 500 }));
    const config = toConfig(scenarioOf({ ...limit, 'core.airConductance': 500 }));
    const { pulls_to_limit: answer, pulls, loop } = reportRun(config, simulate(config));
    expect(answer.first_pull_over_limit_when_repeated).toBeGreaterThan(2);
    expect(line).toMatchObject({
      changes: { 'core.airConductance': 500 },
      pulls: answer.count,
      pulls_run: answer.pulls_run,
      deciding_pull: answer.deciding_pull,
      deciding_peak_degC: pulls[(answer.deciding_pull ?? 0) - 1].peak_degC,
      hottest_peak_degC: Math.max(...pulls.map(({ peak_degC }) => peak_degC)),
      settled: answer.settled,
      settled_peak_degC: answer.settled_peak_degC,
      first_pull_over_limit_when_repeated: answer.first_pull_over_limit_when_repeated,
      coolant_flow_at_end_of_first_pull_L_min: loop.flow_at_end_of_first_pull_L_min,
      outcome: 'finished',
    });
  });

  it('says why it is refused, and when and why it stopped', () => {
    const car = scenarioOf();
    expect(conduct(studySweepCase(car, { 'core.airConductance': -5 }))).toEqual({
      changes: { 'core.airConductance': -5 },
      refused: [expect.stringContaining('-5')],
    });
    expect(conduct(studySweepCase(car, { 'core.airConductanze': 5 })).refused?.join()).toContain('airConductanze');
    const stopped = conduct(studySweepCase(car, { 'start.coolant': 140 }));
    expect(stopped).toMatchObject({ outcome: 'stopped', stopped_at_s: 0, pulls: 0, settled: 'no repeated pulls' });
    expect(stopped.stoppedBecause?.[0]).toContain('coolant boils');
  });
});
