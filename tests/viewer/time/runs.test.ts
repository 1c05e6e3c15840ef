import { describe, expect, it } from 'vitest';
import estate from '../../../scenarios/rolling-road-estate.json';
import { type PullSummary, startRun, summarisePulls } from '../../../src/sim/index.ts';
import { Session } from '../../../src/viewer/state/session.ts';
import { inHand, lengthOf, shownRuns } from '../../../src/viewer/time/runs.ts';

function openSession(): Session {
  const session = new Session();
  expect(session.open(JSON.stringify(estate))).toEqual([]);
  return session;
}

describe('what of a run is shown', () => {
  it('plans every pull before any is solved', () => {
    const [run, ...others] = shownRuns(openSession());
    expect(others).toEqual([]);
    expect(run.pulls).toEqual([]);
    expect(run.solvedTo).toBe(0);
    // 5 min of idle and 8 times 12 s with 90 s of rest.
    expect(lengthOf([run])).toBe(300 + 8 * 102);
    expect(run.phases.filter(({ kind }) => kind === 'pull')).toHaveLength(8);
  });

  it('shows as much of a run as it has told', () => {
    const session = openSession();
    const pulls = [{ pull: 1 }] as unknown as PullSummary[];
    session.beforeRun.value = { kind: 'running', time: 400, duration: 1116, pulls };
    expect(shownRuns(session)[0]).toMatchObject({ solvedTo: 400, pulls });
    session.beforeRun.value = { kind: 'cancelled', time: 450, duration: 1116, pulls };
    expect(shownRuns(session)[0].solvedTo).toBe(450);
    session.beforeRun.value = { kind: 'solved', time: 1115.999999, duration: 1116, pulls };
    expect(shownRuns(session)[0].solvedTo).toBe(1116);
  });

  it('keeps the last whole answer under a moving finger', () => {
    const session = openSession();
    const car = session.before.value;
    if (car === undefined) throw new Error('no car');
    const run = startRun(car.config);
    while (run.step());
    const series = run.finish();
    // The last whole answer is of a car with another limit: it is read with that.
    const limit = car.config.limit.chargeTemperature + 1;
    const of = { ...car, config: { ...car.config, limit: { chargeTemperature: limit } } };
    session.preview({ 'core.airConductance': 420 }, 'core');
    expect(session.isDragging.value).toBe(true);
    session.afterRun.value = { kind: 'running', time: 320, duration: 1116, pulls: [], series, of };
    const shown = inHand(shownRuns(session));
    expect(shown?.which).toBe('after');
    expect(shown?.pulls).toEqual(summarisePulls(series, limit));
    expect(shown?.solvedTo).toBe(1116);
    session.commit('core');
    expect(inHand(shownRuns(session))?.pulls).toEqual([]);
  });
});
