import { spawn } from 'node:child_process';
import { readFileSync } from 'node:fs';
import { availableParallelism } from 'node:os';

/**
 * Throughput of a sweep of the default scenario with two threads over one, and the memory of the program at its start
 * and its end. Beside it stands how many cores the program got: where two threads get hardly more than one does, others
 * had the machine, and the ratio says nothing. One thread and two take turns in this one run, since a machine is faster
 * at one hour than at another; only the ratio is worth comparing. Needs the built program and Linux, for /proc.
 */
const RUNS = Number(process.argv[2] ?? 1000);
const ROUNDS = 2;
const PROGRAM = new URL('../../dist/cli/soakbench.mjs', import.meta.url).pathname;
const CAR = new URL('../../scenarios/rolling-road-estate.json', import.meta.url).pathname;
/** Memory at the start is read when this share of the runs is there: threads and compiled code are in place. */
const WARM = 0.1;
/** Clock ticks a second in /proc. */
const TICKS = 100;

interface Sweep {
  readonly seconds: number;
  /** MB */
  readonly atStart: number;
  readonly atEnd: number;
  /** processor time over wall time */
  readonly cores: number;
}

async function sweep(workers: number): Promise<Sweep> {
  const args = [PROGRAM, 'sweep', CAR, '--vary', `core.airConductance=300:700:${RUNS}`, '--workers', String(workers)];
  const started = performance.now();
  const child = spawn(process.execPath, args, { stdio: ['ignore', 'pipe', 'ignore'] });
  const memory = (): number => {
    const resident = /VmRSS:\s+(\d+) kB/.exec(readFileSync(`/proc/${child.pid}/status`, 'utf8'));
    return Number(resident?.[1]) / 1024;
  };
  const processorSeconds = (): number => {
    const fields = readFileSync(`/proc/${child.pid}/stat`, 'utf8').split(' ');
    return (Number(fields[13]) + Number(fields[14])) / TICKS;
  };
  let lines = 0;
  let cores = 0;
  let atStart = 0;
  let atEnd = 0;
  for await (const chunk of child.stdout) {
    lines += String(chunk).split('\n').length - 1;
    if (lines >= WARM * RUNS && atStart === 0) atStart = memory();
    if (lines >= RUNS) continue;
    atEnd = memory();
    cores = (1e3 * processorSeconds()) / (performance.now() - started);
  }
  if (lines !== RUNS) throw new Error(`${lines} lines of ${RUNS}`);
  return { seconds: (performance.now() - started) / 1e3, atStart, atEnd, cores };
}

console.log(`${RUNS} runs of the default scenario, each with its block repeated on; ${availableParallelism()} cores`);
console.log('threads   runs a second   cores got   MB at a tenth   MB at the end');
const seconds = new Map([
  [1, 0],
  [2, 0],
]);
for (let round = 0; round < ROUNDS; round++) {
  for (const [workers, before] of seconds) {
    const result = await sweep(workers);
    seconds.set(workers, before + result.seconds);
    const cells = [
      (RUNS / result.seconds).toFixed(1),
      result.cores.toFixed(2),
      result.atStart.toFixed(0),
      result.atEnd.toFixed(0),
    ];
    const widths = [16, 12, 16, 16];
    console.log(`${String(workers).padStart(7)}${cells.map((cell, k) => cell.padStart(widths[k])).join('')}`);
  }
}
console.log(`two threads over one: ${((seconds.get(1) ?? 0) / (seconds.get(2) ?? 1)).toFixed(2)}`);
