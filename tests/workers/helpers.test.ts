import { describe, expect, it } from 'vitest';
import { conduct } from '../../src/sim/answers/study.ts';
import { studyStore } from '../../src/sim/answers/tank-size.ts';
import { startRun } from '../../src/sim/simulate.ts';
import type { Helper } from '../../workers/helpers.ts';
import { createSimService } from '../../workers/sim-service.ts';
import { shippedConfig } from '../support/shipped.ts';

const config = shippedConfig('rolling-road-estate');
const silent = () => {};
const ask = { run: 1, config, question: 'store', asked: { kind: 'tank', pulls: 2 } } as const;

/** A service in the place of another worker, and what is asked of it. */
function helperInPlace() {
  const service = createSimService();
  const ran: number[] = [];
  const cancelled: number[] = [];
  const helper: Helper = {
    runJob: (run, job) => {
      ran.push(run);
      // What crosses to a worker is copied: nothing but plain data.
      return service.runJob(structuredClone({ run, job }));
    },
    cancel: (run) => {
      cancelled.push(run);
      void service.cancel(run);
    },
  };
  return { helper, ran, cancelled };
}

describe('a study with helpers', () => {
  it('comes to the same answer, with the runs shared out', async () => {
    const { helper, ran } = helperInPlace();
    const progress: number[] = [];
    const reply = await createSimService(() => [helper]).ask(ask, ({ done }) => progress.push(done));
    if (reply.kind !== 'studied') throw new Error(reply.kind);
    expect(reply.result).toEqual(conduct(studyStore(config, 'tank', 2)));
    expect(progress).toEqual(progress.map((_, k) => k + 1));
    expect(ran.length).toBeGreaterThan(2);
    expect(ran.length).toBeLessThan(progress.length);
  });

  it('starts none for a study that asks for one run at a time', async () => {
    let started = 0;
    const service = createSimService(() => {
      started++;
      return [];
    });
    // The one core that fits is looked for run by run; the grid before it is the first to ask for several.
    await service.runJob({ run: 1, job: { config, until: { kind: 'pull', pull: 1 } } });
    expect(started).toBe(0);
    await service.ask({ ...ask, run: 2 }, silent);
    await service.ask({ ...ask, run: 3 }, silent);
    expect(started).toBe(1);
  });

  it('ends with them when it is cancelled', async () => {
    const { helper, ran, cancelled } = helperInPlace();
    const service = createSimService(() => [helper]);
    const reply = await service.ask({ ...ask, run: 7 }, ({ done }) => {
      if (done === 3) void service.cancel(7);
    });
    expect(reply.kind).toBe('cancelled');
    expect(cancelled).toEqual([7]);
    // Of ten runs at once four are done or under way in the helper at most.
    expect(ran.length).toBeLessThan(7);
  });

  it('says what broke in one of them, and ends the rest', async () => {
    const { helper, cancelled } = helperInPlace();
    const broken: Helper = {
      runJob: async (run) => ({ kind: 'failed', run, message: 'the worker broke' }),
      cancel: silent,
    };
    const reply = await createSimService(() => [broken, helper]).ask({ ...ask, run: 3 }, silent);
    expect(reply).toEqual({ kind: 'failed', run: 3, message: 'the worker broke' });
    expect(cancelled).toEqual([3]);
  });
});

describe('a run that is handed over', () => {
  it('ends where the study wants it to end, with what was asked to be recorded', async () => {
    const reply = await createSimService().runJob({
      run: 1,
      job: { config, until: { kind: 'pull', pull: 2 }, interval: 7 },
    });
    if (reply.kind !== 'studied') throw new Error(reply.kind);
    const { phases, columns, outcome } = reply.result;
    expect(phases.filter(({ kind }) => kind === 'pull')).toHaveLength(2);
    expect(outcome.kind).toBe('cancelled');
    expect(columns.time).toContain(7);
    expect(startRun(config).duration).toBeGreaterThan(phases.at(-1)?.end ?? 0);
  });
});
