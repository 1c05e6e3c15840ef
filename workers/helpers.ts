import type { RunJob, TimeSeries } from '../src/sim/index.ts';
import type { StudyReply } from './sim-api.ts';
import { holdWorker } from './worker-handle.ts';

/** Most workers that share a study, the one that conducts it among them. */
const MOST_WORKERS = 8;

/** Another worker that takes runs off a study. */
export interface Helper {
  runJob(run: number, job: RunJob): Promise<StudyReply<TimeSeries>>;
  cancel(run: number): void;
}

/** Workers of this worker's own kind, one for every core but its own; they end when it does. */
export function startHelpers(): Helper[] {
  const count = Math.min(navigator.hardwareConcurrency, MOST_WORKERS) - 1;
  return Array.from({ length: count }, () => {
    const worker = holdWorker(new Worker(self.location.href, { type: 'module' }));
    return {
      runJob: (run, job) =>
        worker.ask(async (api): Promise<StudyReply<TimeSeries>> => await api.runJob({ run, job }), run),
      cancel: (run) => void worker.cancel(run),
    };
  });
}
