import { type Remote, wrap } from 'comlink';
import type { Failure, SimApi } from './sim-api.ts';

/** A cancelled worker that has not answered after this long [ms] counts as one that does not listen. */
export const PATIENCE = 150;

/** A worker that exposes the simulator, as whoever started it sees it. */
export interface WorkerHandle {
  /** A worker that breaks or is ended answers as a failure, never by throwing. */
  ask<Reply>(call: (api: Remote<SimApi>) => Promise<Reply>, run: number): Promise<Reply | Failure>;
  /** false where the worker did not answer in time */
  cancel(run: number): Promise<boolean>;
  end(reason: string): void;
}

/** Takes hold of a worker that was just started. */
export function holdWorker(worker: Worker): WorkerHandle {
  const api = wrap<SimApi>(worker);
  let fail: (reason: string) => void = () => {};
  const broken = new Promise<string>((resolve) => {
    fail = resolve;
  });
  worker.onerror = ({ message }) => fail(message || 'the worker broke');
  return {
    ask: (call, run) =>
      Promise.race([call(api), broken.then((message): Failure => ({ kind: 'failed', run, message }))]).catch(
        (error: unknown): Failure => ({ kind: 'failed', run, message: String(error) }),
      ),
    cancel: async (run) => {
      const answered = api.cancel(run).then(() => true);
      const late = new Promise<boolean>((resolve) => setTimeout(() => resolve(false), PATIENCE));
      return Promise.race([answered, late]);
    },
    end: (reason) => {
      worker.terminate();
      fail(reason);
    },
  };
}
