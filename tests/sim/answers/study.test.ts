import { describe, expect, it } from 'vitest';
import { type RunJob, type Study, together } from '../../../src/sim/answers/study.ts';
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

describe('studies side by side', () => {
  it('ask at once for what each waits for, and each is handed its own', () => {
    const study = together([asking(['a', 'b'], ['c']), asking(), asking(['d'], [], ['e', 'f']), asking(['g'])]);
    const asked: string[] = [];
    let step = study.next();
    while (!step.done) {
      asked.push(step.value.map(named).join(''));
      step = study.next(step.value.map(named));
    }
    expect(asked).toEqual(['abdg', 'c', 'ef']);
    expect(step.value).toEqual(['a+b c', '', 'd  e+f', 'g']);
  });

  it('are over at once where there are none', () => {
    expect(together([]).next()).toEqual({ done: true, value: [] });
  });
});
