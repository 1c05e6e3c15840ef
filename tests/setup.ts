import fc from 'fast-check';

// A failure prints its seed and the shrunk case; FC_SEED repeats it.
fc.configureGlobal({ seed: Number(process.env.FC_SEED ?? 20240601), numRuns: Number(process.env.FC_RUNS ?? 100) });
