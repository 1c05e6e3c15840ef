import { describe, expect, it } from 'vitest';
import { onAllCores } from '../../src/cli/on-all-cores.ts';
import { startThreads } from '../../src/cli/threads.ts';
import { conduct, type RunJob, type Study } from '../../src/sim/answers/study.ts';
import { shortConfig } from '../support/short-session.ts';

const job = (airConductance: number): RunJob => ({
  config: shortConfig({ 'core.airConductance': airConductance }),
  until: { kind: 'pull', pull: 1 },
});

/** Last charge temperature of each run: several at once, one alone, none, several again. */
function* study(): Study<number[]> {
  const found: number[] = [];
  for (const batch of [[300, 400, 500], [450], [], [350, 550]]) {
    const runs = yield batch.map(job);
    found.push(...runs.map(({ columns, rowCount }) => columns.chargeTemperature[rowCount - 1]));
  }
  return found;
}

it('threads start as there are jobs for them, no more than may, and stay for the next', async () => {
  const threads = startThreads(2, 'runJob');
  try {
    const counts: number[] = [threads.threads.length];
    for (const batch of [[300], [400], [300, 400, 500], [300]]) {
      await Promise.all(batch.map((airConductance) => threads.run(job(airConductance))));
      counts.push(threads.threads.length);
    }
    expect(counts).toEqual([0, 1, 1, 2, 2]);
  } finally {
    await threads.destroy();
  }
});

describe('a study on all cores', () => {
  it.each([0, 60_000])('comes to the same, run for run, after %d ms alone', async (aloneFor) => {
    expect(await onAllCores(study(), aloneFor)).toEqual(conduct(study()));
  });

  it('breaks off with what broke in a thread', async () => {
    function* broken(): Study<number> {
      const runs = yield [job(300), { config: {} as RunJob['config'] }];
      return runs.length;
    }
    await expect(onAllCores(broken(), 0)).rejects.toThrow(/./);
  });
});
