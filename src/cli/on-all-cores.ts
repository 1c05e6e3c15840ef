import { availableParallelism } from 'node:os';
import { conductWith, type RunJob, runJob, type Study, type TimeSeries } from '../sim/index.ts';
import { startThreads } from './threads.ts';

/** A study that is over sooner has no use for threads: they take a while to start [ms]. */
const ALONE_FOR = 1000;
/** A long study tells how far it is this often [ms]. */
const PROGRESS_EVERY = 2000;

/**
 * Conducts a study: first in this thread, then on all cores what it asks for several at a time.
 *
 * @param aloneFor - how long in this thread [ms]
 */
export async function onAllCores<Result>(study: Study<Result>, aloneFor = ALONE_FOR): Promise<Result> {
  const started = performance.now();
  let threads: ReturnType<typeof startThreads> | undefined;
  let nextWord = started + PROGRESS_EVERY;
  let [done, of] = [0, 0];
  const told = (series: TimeSeries): TimeSeries => {
    done++;
    if (performance.now() > nextWord) {
      nextWord = performance.now() + PROGRESS_EVERY;
      console.error(`${done} of ${of} runs so far`);
    }
    return series;
  };
  const runAll = async (jobs: readonly RunJob[]): Promise<TimeSeries[]> => {
    of += jobs.length;
    const results: TimeSeries[] = [];
    const isShort = () => performance.now() - started < aloneFor || jobs.length - results.length === 1;
    while (results.length < jobs.length && isShort()) results.push(told(runJob(jobs[results.length])));
    const left = jobs.slice(results.length);
    if (left.length === 0) return results;
    threads ??= startThreads(availableParallelism(), 'runJob');
    const pool = threads;
    return [...results, ...(await Promise.all(left.map(async (job) => told(await pool.run(job)))))];
  };
  try {
    return (await conductWith(study, runAll)).result;
  } finally {
    await threads?.destroy();
  }
}
