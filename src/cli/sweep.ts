import { createHash } from 'node:crypto';
import { availableParallelism } from 'node:os';
import {
  FILE_WORDING,
  gridPlan,
  isGridAxis,
  isRange,
  type Scenario,
  type SweepAxis,
  type SweepLine,
  type SweepPlan,
  type SweepResult,
  samplePlan,
  written,
} from '../sim/index.ts';
import { EXIT } from './exit-codes.ts';
import { readScenarioFile } from './read-scenario.ts';
import type { Shard } from './sweep-axis.ts';
import { openSweepFile, type SweepFile, SweepFileError } from './sweep-file.ts';
import { runCases } from './sweep-pool.ts';

export interface SweepCommandOptions {
  readonly variant?: string;
  readonly vary: readonly SweepAxis[];
  /** size of a sample of all ranges; absent: a grid of all values */
  readonly sample?: number;
  readonly seed: number;
  readonly shard: Shard;
  readonly workers?: number;
  readonly out?: string;
}

const MOST_CASES = 1e6;
/** A long sweep tells how far it is this often [ms]. */
const PROGRESS_EVERY = 10_000;

/** Runs every case of a grid or a sample, a JSON line each; goes on where an earlier sweep of the same was ended. */
export async function sweep(file: string, options: SweepCommandOptions): Promise<number> {
  const scenario = readScenarioFile(file, options.variant);
  if (typeof scenario === 'number') return scenario;
  const plan = planOf(options);
  if (typeof plan === 'string') {
    console.error(plan);
    return EXIT.badUsage;
  }
  const car = markOf(scenario);
  let out: SweepFile | undefined;
  try {
    out = options.out === undefined ? undefined : openSweepFile(options.out, plan, car);
  } catch (error) {
    console.error(`${options.out}: ${error instanceof Error ? error.message : String(error)}`);
    return error instanceof SweepFileError ? EXIT.badUsage : EXIT.unreadable;
  }

  const { part, of } = options.shard;
  const indices: number[] = [];
  for (let index = part - 1; index < plan.count; index += of) if (!out?.done.has(index)) indices.push(index);
  let left = indices.length;
  const say = (): void =>
    console.error(`${left} of ${plan.count} cases to go${of === 1 ? '' : ` in part ${part} of ${of}`}`);
  const interrupted = (): void => {
    say();
    process.exit(EXIT.interrupted);
  };
  const progress = setInterval(say, PROGRESS_EVERY);
  // Every line is in its file already, and threads end with the process.
  process.once('SIGINT', interrupted);
  await runCases(scenario, plan, indices, options.workers ?? availableParallelism(), (index, result) => {
    const line = JSON.stringify(lineOf(index, car, result));
    if (out === undefined) console.log(line);
    else out.add(line);
    left--;
  });
  process.off('SIGINT', interrupted);
  clearInterval(progress);
  out?.close();
  say();
  return EXIT.done;
}

/** The cases, or why there are none. */
function planOf({ vary, sample, seed }: SweepCommandOptions): SweepPlan | string {
  const ranges = vary.filter(isRange);
  const lists = vary.filter(isGridAxis);
  if (sample === undefined && ranges.length > 0) return `${ranges[0].path}: expected from:to:count, or --sample.`;
  if (sample !== undefined && lists.length > 0) return `${lists[0].path}: --sample draws from a range, from:to.`;
  const plan = sample === undefined ? gridPlan(lists) : samplePlan(ranges, sample, seed);
  return plan.count <= MOST_CASES ? plan : `${plan.count} cases; expected ${MOST_CASES} at most.`;
}

/** Words of a result in the units of the file. */
function lineOf(index: number, car: string, { stoppedBecause, ...figures }: SweepResult): SweepLine {
  return {
    case: index,
    car,
    ...figures,
    ...(stoppedBecause && { stopped_because: written(stoppedBecause, FILE_WORDING) }),
  };
}

/** Tells cars apart by all that their files say, and by the car that a flow was measured on where it is another. */
function markOf({ document, measuredOn }: Scenario): string {
  const said = { ...document, ...(measuredOn && { measuredOn: measuredOn.document }) };
  return createHash('sha256').update(JSON.stringify(said)).digest('hex').slice(0, 12);
}
