import { fileURLToPath } from 'node:url';
import { Tinypool } from 'tinypool';

/** Built, the worker lies beside the program; unbuilt, a thread must learn to read .ts first. */
const WORKER = import.meta.url.endsWith('.ts') ? './worker-boot.mjs' : './worker.mjs';

/** Threads that do one thing that `worker.ts` exports. */
export function startThreads(count: number, name: 'runCase' | 'runJob'): Tinypool {
  const filename = fileURLToPath(new URL(WORKER, import.meta.url));
  return new Tinypool({ filename, name, minThreads: count, maxThreads: count });
}
