import { spawn } from 'node:child_process';
import { readFileSync } from 'node:fs';
import { availableParallelism } from 'node:os';

/**
 * Throughput of a sweep of the default scenario with two threads over one, and the memory of the program at its start
 * and its end. One thread and two take turns in this one run, since a machine is faster at one hour than at another;
 * only the ratio is worth comparing. Needs the built program and Linux, for /proc.
 */
const RUNS = Number(process.argv[2] ?? 1000);
const ROUNDS = 2;
const PROGRAM = new URL('../../dist/cli/soakbench.mjs', import.meta.url).pathname;
const CAR = new URL('../../scenarios/rolling-road-estate.json', import.meta.url).pathname;
/** Memory at the start is read when this share of the runs is there: threads and compiled code are in place. */
const WARM = 0.1;

interface Sweep {
  readonly seconds: number;
  /** MB */
  readonly atStart: number;
  readonly atEnd: number;
}

async function sweep(workers: number): Promise<Sweep> {
  const args = [PROGRAM, 'sweep', CAR, '--vary', `core.airConductance=300:700:${RUNS}`, '--workers', String(workers)];
  const started = performance.now();
  const child = spawn(process.execPath, args, { stdio: ['ignore', 'pipe', 'ignore'] });
  const memory = (): number => {
    const resident = /VmRSS:\s+(\d+) kB/.exec(readFileSync(`/proc/${child.pid}/status`, 'utf8'));
    return Number(resident?.[1]) / 1024;
  };
  let lines = 0;
  let atStart = 0;
  let atEnd = 0;
  for await (const chunk of child.stdout) {
    lines += String(chunk).split('\n').length - 1;
    if (lines >= WARM * RUNS && atStart === 0) atStart = memory();
    if (lines < RUNS) atEnd = memory();
  }
  if (lines !== RUNS) throw new Error(`${lines} lines of ${RUNS}`);
  return { seconds: (performance.now() - started) / 1e3, atStart, atEnd };
}

console.log(`${RUNS} runs of the default scenario, each with its block repeated on; ${availableParallelism()} cores`);
console.log('threads   runs a second   MB at a tenth   MB at the end');
const seconds = new Map([
  [1, 0],
  [2, 0],
]);
for (let round = 0; round < ROUNDS; round++) {
  for (const [workers, before] of seconds) {
    const result = await sweep(workers);
    seconds.set(workers, before + result.seconds);
    const cells = [(RUNS / result.seconds).toFixed(1), result.atStart.toFixed(0), result.atEnd.toFixed(0)];
    const widths = [16, 16, 16];
    console.log(`${String(workers).padStart(7)}${cells.map((cell, k) => cell.padStart(widths[k])).join('')}`);
  }
}
console.log(`two threads over one: ${((seconds.get(1) ?? 0) / (seconds.get(2) ?? 1)).toFixed(2)}`);
