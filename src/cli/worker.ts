import {
  conduct,
  type JsonObject,
  type RunJob,
  runJob as runJobHere,
  type Scenario,
  type SweepResult,
  studySweepCase,
  type TimeSeries,
} from '../sim/index.ts';

/** One case of a sweep, as it crosses to a thread. */
export interface SweepTask {
  readonly scenario: Scenario;
  readonly changes: JsonObject;
}

/** Runs one case of a sweep in this thread. */
export function runCase({ scenario, changes }: SweepTask): SweepResult {
  return conduct(studySweepCase(scenario, changes));
}

/** Runs one run of a study in this thread. */
export const runJob = (job: RunJob): TimeSeries => runJobHere(job);
