import { fileURLToPath } from 'node:url';
import { Tinypool } from 'tinypool';

/** Built, the worker lies beside the program; unbuilt, a thread must learn to read .ts first. */
const WORKER = import.meta.url.endsWith('.ts') ? './worker-boot.mjs' : './worker.mjs';
/** A thread without a job is kept this long [ms]: between the rounds of a study it waits far less. */
const KEPT_FOR = 60_000;

/** Up to `most` threads that do one thing that `worker.ts` exports; each starts when there is a job for it. */
export function startThreads(most: number, name: 'runCase' | 'runJob'): Tinypool {
  const filename = fileURLToPath(new URL(WORKER, import.meta.url));
  return new Tinypool({ filename, name, minThreads: 0, maxThreads: most, idleTimeout: KEPT_FOR });
}
