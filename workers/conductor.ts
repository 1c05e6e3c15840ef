import { conductWith, type RunJob, type Study, startJob, type TimeSeries } from '../src/sim/index.ts';
import type { Helper } from './helpers.ts';
import type { StudyProgress } from './sim-api.ts';
import type { Slicer } from './slicer.ts';

/** Jobs under way in each helper: one runs, one waits, so that it never stands idle. */
const UNDER_WAY = 2;

/** Conducts studies: shares out the runs that one asks for and tells how far it is. */
export class Conductor {
  private readonly slicer: Slicer;
  private readonly startHelpers: () => readonly Helper[];
  private helpers: readonly Helper[] | undefined;

  /** @param startHelpers - called with the first study that asks for several runs at once */
  constructor(slicer: Slicer, startHelpers: () => readonly Helper[]) {
    this.slicer = slicer;
    this.startHelpers = startHelpers;
  }

  /** Conducts a study to its end; undefined where it was cancelled. */
  async conduct<Result>(
    run: number,
    study: Study<Result>,
    onProgress?: (progress: StudyProgress) => void,
  ): Promise<{ readonly result: Result } | undefined> {
    let [done, of] = [0, 0];
    return conductWith(study, (jobs) => {
      of += jobs.length;
      return this.runAll(run, jobs, () => onProgress?.({ done: ++done, of }));
    });
  }

  /** One run in this worker; undefined where it was cancelled. */
  async runHere(run: number, job: RunJob): Promise<TimeSeries | undefined> {
    const solving = startJob(job);
    return (await this.slicer.work(run, solving.step)) ? solving.finish() : undefined;
  }

  cancel(run: number): void {
    this.slicer.cancelled.add(run);
    for (const helper of this.helpers ?? []) helper.cancel(run);
  }

  /** Runs jobs here and in the helpers, each of which takes the next as soon as it is free. */
  private async runAll(run: number, jobs: readonly RunJob[], told: () => void): Promise<TimeSeries[] | undefined> {
    const results: TimeSeries[] = [];
    const queue = jobs.entries();
    const work = async (take: (job: RunJob) => Promise<TimeSeries | undefined>) => {
      for (const [k, job] of queue) {
        const series = await take(job);
        if (series === undefined || this.slicer.cancelled.has(run)) return;
        results[k] = series;
        told();
      }
    };
    if (jobs.length > 1) this.helpers ??= this.startHelpers();
    const helpers = jobs.length > 1 ? (this.helpers ?? []) : [];
    const hands = helpers.flatMap((helper) => Array.from({ length: UNDER_WAY }, () => work(askOf(helper, run))));
    try {
      await Promise.all([...hands, work((job) => this.runHere(run, job))]);
    } catch (error) {
      // What the others still work on is of no use to anybody.
      this.cancel(run);
      throw error;
    }
    return this.slicer.cancelled.has(run) ? undefined : results;
  }
}

const askOf = (helper: Helper, run: number) => async (job: RunJob) => {
  const reply = await helper.runJob(run, job);
  if (reply.kind === 'failed') throw new Error(reply.message);
  return reply.kind === 'studied' ? reply.result : undefined;
};
