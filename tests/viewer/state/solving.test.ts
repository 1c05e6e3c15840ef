import { beforeEach, describe, expect, it } from 'vitest';
import {
  conduct,
  type RunJob,
  type RunStudy,
  startJob,
  studyHottestDay,
  summarisePulls,
  type TimeSeries,
} from '../../../src/sim/index.ts';
import { Session } from '../../../src/viewer/state/session.ts';
import { keepSolved, type Solving } from '../../../src/viewer/state/solving.ts';
import type { SimClient } from '../../../workers/client.ts';
import type { SolveReply, StudyReply } from '../../../workers/sim-api.ts';
import { shippedDocument } from '../../support/shipped.ts';

/** Stands in for both workers: takes what is asked of it and answers when told to. */
class Asked {
  private run = 0;
  readonly solves = new Map<number, (reply: SolveReply) => void>();
  readonly cancelled: number[] = [];
  readonly studies: number[] = [];
  /** answers the last cancel */
  hear: () => void = () => {};
  nextRun = () => ++this.run;
  solve = (run: number) => new Promise<SolveReply>((resolve) => this.solves.set(run, resolve));
  cancel = (run: number) => {
    this.cancelled.push(run);
    return new Promise<void>((resolve) => {
      this.hear = resolve;
    });
  };
  answerStudy: (reply: StudyReply<RunStudy>) => void = () => {};
  study = () =>
    new Promise<StudyReply<RunStudy>>((resolve) => {
      this.answerStudy = resolve;
    });
  readonly jobs: { readonly run: number; readonly answer: (reply: StudyReply<TimeSeries>) => void }[] = [];
  runJob = (run: number, job: RunJob) =>
    new Promise<StudyReply<TimeSeries>>((resolve) => {
      this.jobs.push({ run, answer: resolve });
      if (this.runsJobs) resolve({ kind: 'studied', run, result: runNow(job) });
    });
  runsJobs = true;
  studyRoutes = (run: number) => {
    this.studies.push(run);
    return new Promise(() => {});
  };
}

function runNow(job: RunJob): TimeSeries {
  const run = startJob(job);
  while (run.step());
  return run.finish();
}

const tick = () => new Promise((resolve) => setTimeout(resolve, 0));

let session: Session;
let asked: Asked;
let solving: Solving;
beforeEach(() => {
  session = new Session();
  asked = new Asked();
  solving = keepSolved(session, asked as unknown as SimClient);
  session.open(JSON.stringify(shippedDocument('rolling-road-estate')));
});

describe('a run that nobody waits for', () => {
  it('is ended by itself: the run of the other car goes on', () => {
    session.change({ 'core.airConductance': 468 }, 'core');
    expect([...asked.solves.keys()]).toEqual([1, 2]);
    session.undo();
    expect(asked.cancelled).toEqual([2]);
  });
});

describe('the hottest day', () => {
  /** Run and causes of the opened car are there: 2 pulls of the run, to keep the search short. */
  async function settle(): Promise<void> {
    const car = session.before.value;
    if (car === undefined) throw new Error('no car');
    const series = runNow({ config: car.config, until: { kind: 'pull', pull: 2 } });
    const pulls = summarisePulls(series, car.config.limit.chargeTemperature);
    asked.solves.get(1)?.({ kind: 'solved', run: 1, series, pulls });
    await tick();
    asked.answerStudy({ kind: 'studied', run: 2, result: {} as RunStudy });
    await tick();
  }

  it('is looked for after the causes, and is the one that the study finds here', async () => {
    await settle();
    const { scenario } = session.before.value ?? {};
    if (scenario === undefined) throw new Error('no car');
    await expect.poll(() => session.beforeRun.value.hottestDay).toEqual(conduct(studyHottestDay(scenario, 2)));
    expect(new Set(asked.jobs.map(({ run }) => run))).toEqual(new Set([2]));
  });

  it('is not looked for where the run stopped, nor are the causes', async () => {
    const car = session.before.value;
    if (car === undefined) throw new Error('no car');
    const whole = runNow({ config: car.config, until: { kind: 'pull', pull: 2 } });
    const outcome = { kind: 'stopped', time: 60, cause: 'boiling', reason: ['coolant boils'] } as const;
    const pulls = summarisePulls(whole, car.config.limit.chargeTemperature);
    asked.solves.get(1)?.({ kind: 'solved', run: 1, series: { ...whole, outcome }, pulls });
    await tick();
    asked.answerStudy({ kind: 'studied', run: 2, result: {} as RunStudy });
    await tick();
    expect(session.beforeRun.value).toMatchObject({ kind: 'stopped', series: { outcome } });
    expect(session.beforeRun.value.study).toBeUndefined();
    expect(asked.jobs).toEqual([]);
  });

  it('is given up when the car changes', async () => {
    asked.runsJobs = false;
    await settle();
    expect(asked.jobs).toHaveLength(1);
    session.clear();
    expect(asked.cancelled).toEqual([2]);
    asked.jobs[0].answer({ kind: 'cancelled', run: 2 });
    await tick();
    expect(asked.jobs).toHaveLength(1);
    expect(session.beforeRun.value.hottestDay).toBeUndefined();
  });
});

describe('routes of the recirculated air', () => {
  it('are asked for once the study before them has been ended, since its worker may be ended with it', async () => {
    const car = session.before.value;
    if (car === undefined) throw new Error('no car');
    void solving.studyRoutes(car);
    await Promise.resolve();
    expect(asked.studies).toHaveLength(1);
    solving.cancelRoutes();
    void solving.studyRoutes(car);
    await Promise.resolve();
    expect(asked.studies).toHaveLength(1);
    asked.hear();
    await new Promise((resolve) => setTimeout(resolve, 0));
    expect(asked.studies).toHaveLength(2);
  });

  it('are not asked for where they were cancelled while they waited', async () => {
    const car = session.before.value;
    if (car === undefined) throw new Error('no car');
    const first = solving.studyRoutes(car);
    solving.cancelRoutes();
    expect(await first).toMatchObject({ kind: 'cancelled' });
    expect(asked.studies).toEqual([]);
  });
});
