// Lets a thread run the unbuilt worker, as tests do: threads do not take over the loader of .ts from the main one.
import { register } from 'tsx/esm/api';

register();
export const { runCase, runJob } = await import('./worker.ts');
