import { beforeEach, describe, expect, it } from 'vitest';
import { Session } from '../../../src/viewer/state/session.ts';
import { keepSolved, type Solving } from '../../../src/viewer/state/solving.ts';
import type { SimClient } from '../../../workers/client.ts';
import type { SolveReply } from '../../../workers/sim-api.ts';
import { shippedDocument } from '../../support/shipped.ts';

/** Stands in for both workers: takes what is asked of it and answers when told to. */
class Asked {
  private run = 0;
  readonly solves = new Map<number, (reply: SolveReply) => void>();
  readonly cancelled: number[] = [];
  readonly studies: number[] = [];
  endStudies: () => void = () => {};
  nextRun = () => ++this.run;
  solve = (run: number) => new Promise<SolveReply>((resolve) => this.solves.set(run, resolve));
  cancel = async (run: number) => {
    this.cancelled.push(run);
  };
  study = () => new Promise(() => {});
  studyRoutes = (run: number) => {
    this.studies.push(run);
    return new Promise(() => {});
  };
  cancelStudies = () =>
    new Promise<void>((resolve) => {
      this.endStudies = resolve;
    });
}

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
  it('is ended, but not while that ended the older run of the other car with it', async () => {
    session.change({ 'core.airConductance': 468 }, 'core');
    expect([...asked.solves.keys()]).toEqual([1, 2]);
    session.undo();
    expect(asked.cancelled).toEqual([]);
    asked.solves.get(1)?.({ kind: 'failed', run: 1, message: 'as good as any end' });
    asked.solves.get(2)?.({ kind: 'failed', run: 2, message: 'as good as any end' });
    await Promise.resolve();
    await Promise.resolve();
    session.change({ 'core.airConductance': 480 }, 'core');
    session.undo();
    expect(asked.cancelled).toEqual([3]);
  });
});

describe('routes of the returned air', () => {
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
    asked.endStudies();
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
