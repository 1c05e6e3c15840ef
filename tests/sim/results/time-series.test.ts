import { describe, expect, it } from 'vitest';
import { summarisePulls } from '../../../src/sim/answers/pull-summary.ts';
import { simulate, startRun } from '../../../src/sim/simulate.ts';
import { shortConfig } from '../../support/short-session.ts';

const config = shortConfig();
const series = simulate(config);

describe('a run that came to its end', () => {
  it('has every phase of the cycle, whole, one after the other', () => {
    expect(series.outcome).toEqual({ kind: 'finished' });
    expect(series.phases.map(({ kind, block, start, end, isWhole }) => [kind, block, start, end, isWhole])).toEqual([
      ['idle', 0, 0, 15, true],
      ['pull', 1, 15, 21, true],
      ['cruise', 1, 21, 33, true],
      ['pull', 2, 33, 39, true],
      ['cruise', 2, 39, 51, true],
      ['hot soak', 0, 51, 71, true],
    ]);
  });

  it('records both sides of every joint, and time that never falls', () => {
    const { time, engineSpeed } = series.columns;
    let next = 0;
    for (const { start, end, firstRow, lastRow } of series.phases) {
      expect(firstRow).toBe(next);
      expect(time[firstRow]).toBe(start);
      expect(time[lastRow]).toBe(end);
      next = lastRow + 1;
    }
    expect(next).toBe(series.rowCount);
    for (let row = 1; row < series.rowCount; row++) expect(time[row]).toBeGreaterThanOrEqual(time[row - 1]);
    const [idle, pull] = series.phases;
    expect([engineSpeed[idle.lastRow], engineSpeed[pull.firstRow], engineSpeed[pull.lastRow]]).toEqual([
      1200, 2500, 6600,
    ]);
  });

  it('records the instant at which a peak begins to count', () => {
    expect(series.columns.time).toContain(16);
    expect(series.columns.time).toContain(34);
  });

  it('also records every multiple of an interval', () => {
    const { time } = simulate(config, { interval: 0.7 }).columns;
    for (let k = 0; k <= 101; k++) expect(Math.min(...time.map((each) => Math.abs(each - 0.7 * k)))).toBeLessThan(1e-9);
  });
});

describe('a run that ends early', () => {
  it('is cancelled at the end of the phase after which it is told to', () => {
    const cancelled = simulate(config, { continueAfter: ({ kind }) => kind !== 'pull' });
    expect(cancelled.outcome).toEqual({ kind: 'cancelled', time: 21 });
    expect(cancelled.phases.map(({ kind, isWhole }) => [kind, isWhole])).toEqual([
      ['idle', true],
      ['pull', true],
    ]);
    expect(cancelled.rowCount).toBe(cancelled.phases[1].lastRow + 1);
  });

  it('has a last phase that is not whole where it is left inside one, and no pull to count there', () => {
    const run = startRun(config);
    while (run.time < 18) run.step();
    const left = run.finish();
    expect(left.outcome).toMatchObject({ kind: 'cancelled', time: left.columns.time[left.rowCount - 1] });
    expect(left.phases.map(({ kind, isWhole }) => [kind, isWhole])).toEqual([
      ['idle', true],
      ['pull', false],
    ]);
    expect(summarisePulls(left, 400)).toEqual([]);
  });

  it('keeps a whole pull where the phase after it cannot begin', () => {
    // All of the 99.5 kPa outside in the manifold, past a compressor that turns too slowly to let the engine have it.
    const stopped = simulate(
      shortConfig({
        'cycle.1.phases.1.manifoldPressure': 99.5,
        'compressor.driveRatio': 0.9,
        'cycle.1.phases.1.engineSpeed': 6600,
      }),
    );
    expect(stopped.outcome).toMatchObject({
      kind: 'stopped',
      time: 21,
      reason: expect.arrayContaining([expect.stringContaining('cannot be reached')]),
    });
    expect(summarisePulls(stopped, 400)).toHaveLength(1);
    expect(stopped.columns.time[stopped.rowCount - 1]).toBe(21);
  });
});

describe('a tolerance that no step can keep', () => {
  it('stops the run with that reason, and no row of a step that was refused', () => {
    const { outcome, rowCount, columns } = simulate(config, { tolerance: 1e-14 });
    expect(outcome).toEqual({
      kind: 'stopped',
      time: 0,
      cause: 'no answer',
      reason: [
        'no step is short enough for the wanted accuracy: raise numerics.tolerance, or look for a value far outside its usual range',
      ],
    });
    expect(rowCount).toBe(1);
    expect(columns.chargeTemperature[0]).toBe(series.columns.chargeTemperature[0]);
  });
});

describe('events', () => {
  it('mark where the charge passes the limit, within a ten-thousandth of a second', () => {
    const { events, columns } = simulate(shortConfig({ 'limit.chargeTemperature': 45 }));
    const passes = events.filter(({ kind }) => kind.startsWith('limit'));
    expect(passes.length).toBeGreaterThan(1);
    passes.forEach(({ time, kind }, k) => {
      expect(kind).toBe(k % 2 === 0 ? 'limit exceeded' : 'limit met again');
      const rows = [...columns.time.keys()].filter((row) => columns.time[row] === time);
      expect(rows.length).toBeGreaterThan(0);
      // At a joint the charge jumps past the limit; elsewhere it stands on it, to 1e-4 s at less than 5 K/s.
      const isJoint = [15, 21, 33, 39, 51].includes(time);
      const gap = Math.min(...rows.map((row) => Math.abs(columns.chargeTemperature[row] - 318.15)));
      if (!isJoint) expect(gap).toBeLessThan(5e-4);
    });
  });
});
