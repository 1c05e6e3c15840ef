import type { Scenario, SweepPlan, SweepResult } from '../sim/index.ts';
import { startThreads } from './threads.ts';
import type { SweepTask } from './worker.ts';

/** Cases under way for each thread: one runs, one waits, so that none stands idle. */
const UNDER_WAY = 2;

/**
 * Runs cases in threads and hands over each result when it is there, in any order. Only a few cases are under way at
 * once, so memory does not grow with their number.
 *
 * @param scenario - the car; goes to a thread with each case
 * @param plan - what each case changes
 * @param indices - cases to run
 * @param workers - count of threads
 * @param take - called with each case and its result; a case that broke off has its message in place of figures
 */
export async function runCases(
  scenario: Scenario,
  plan: SweepPlan,
  indices: readonly number[],
  workers: number,
  take: (index: number, result: SweepResult) => void,
): Promise<void> {
  const pool = startThreads(workers, 'runCase');
  const queue = indices.values();
  async function keepBusy(): Promise<void> {
    for (const index of queue) {
      const task: SweepTask = { scenario, changes: plan.changesOf(index) };
      const result: SweepResult = await pool.run(task).catch((error: unknown) => ({
        changes: task.changes,
        failed: error instanceof Error ? error.message : String(error),
      }));
      take(index, result);
    }
  }
  await Promise.all(Array.from({ length: UNDER_WAY * workers }, keepBusy));
  await pool.destroy();
}
