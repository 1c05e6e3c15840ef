import { describe, expect, it } from 'vitest';
import { conductWith, type RunJob, type Study, together } from '../../../src/sim/answers/study.ts';
import type { TimeSeries } from '../../../src/sim/results/time-series.ts';

/** Stand-ins: a job has a name, its run is that name. */
const job = (name: string) => ({ config: { name } }) as unknown as RunJob;
const named = ({ config: { name } }: RunJob) => name as unknown as TimeSeries;

/** Asks for some batches of runs one after the other and tells what it was handed. */
function* asking(...batches: readonly (readonly string[])[]): Study<string> {
  const heard: string[] = [];
  for (const batch of batches) heard.push((yield batch.map(job)).join('+'));
  return heard.join(' ');
}

describe('a study whose runs are made elsewhere', () => {
  it('is asked for nothing more once the runner gives up', async () => {
    const asked: string[] = [];
    const done = await conductWith(asking(['a'], ['b', 'c'], ['d']), async (jobs) => {
      asked.push(jobs.map(named).join(''));
      return asked.length < 2 ? jobs.map(named) : undefined;
    });
    expect(asked).toEqual(['a', 'bc']);
    expect(done).toBeUndefined();
  });

  it('may come to undefined without being ended', async () => {
    function* nothing(): Study<undefined> {}
    expect(await conductWith(nothing(), async () => [])).toEqual({ result: undefined });
  });
});

describe('studies side by side', () => {
  it('ask at once for what each waits for, and each is handed its own', async () => {
    const study = together([asking(['a', 'b'], ['c']), asking(), asking(['d'], [], ['e', 'f']), asking(['g'])]);
    const asked: string[] = [];
    const done = await conductWith(study, async (jobs) => {
      asked.push(jobs.map(named).join(''));
      return jobs.map(named);
    });
    expect(asked).toEqual(['abdg', 'c', 'ef']);
    expect(done.result).toEqual(['a+b c', '', 'd  e+f', 'g']);
  });

  it('are over at once where there are none', () => {
    expect(together([]).next()).toEqual({ done: true, value: [] });
  });
});
