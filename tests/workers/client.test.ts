import { describe, expect, it } from 'vitest';
import type { Config } from '../../src/sim/index.ts';
import { SimClient } from '../../workers/client.ts';
import type { WorkerHandle } from '../../workers/worker-handle.ts';

const CONFIG = {} as Config;
const silent = () => {};

/** A client whose workers never finish; each is told by its place in the order in which they were started. */
function clientOf({ deaf = [] as readonly number[] } = {}) {
  const told: [worker: number, run: number][] = [];
  const asked: [worker: number, run: number][] = [];
  const ended: number[] = [];
  let started = 0;
  const start = (): WorkerHandle => {
    const own = started++;
    let fail: (reason: string) => void = () => {};
    return {
      ask: (_, run) => {
        asked.push([own, run]);
        return new Promise((resolve) => {
          fail = (message) => resolve({ kind: 'failed', run, message });
        });
      },
      cancel: async (run) => {
        told.push([own, run]);
        return !deaf.includes(own);
      },
      end: (reason) => {
        ended.push(own);
        fail(reason);
      },
    };
  };
  return { client: new SimClient(start), told, asked, ended };
}

describe('a cancel', () => {
  it('goes to the worker that has the run, and to no other', async () => {
    const { client, told, ended } = clientOf();
    void client.solve(1, CONFIG, silent);
    void client.studyRoutes(2, CONFIG);
    await client.cancel(2);
    await client.cancel(1);
    await client.cancel(3);
    expect(told).toEqual([
      [1, 2],
      [0, 1],
    ]);
    expect(ended).toEqual([]);
  });

  it('ends a worker that does not listen: its spare solves from then on, and a new one studies', async () => {
    const { client, asked, ended } = clientOf({ deaf: [0] });
    const solve = client.solve(1, CONFIG, silent);
    await client.cancel(1);
    expect(ended).toEqual([0]);
    expect(await solve).toMatchObject({ kind: 'failed', run: 1 });
    void client.solve(2, CONFIG, silent);
    void client.studyRoutes(3, CONFIG);
    expect(asked.slice(1)).toEqual([
      [1, 2],
      [2, 3],
    ]);
  });

  it('finds a study that was begun before its worker took over the solving', async () => {
    const { client, told } = clientOf({ deaf: [0] });
    void client.studyRoutes(1, CONFIG);
    void client.solve(2, CONFIG, silent);
    await client.cancel(2);
    await client.cancel(1);
    expect(told).toEqual([
      [0, 2],
      [1, 1],
    ]);
  });
});
