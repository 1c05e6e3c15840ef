import { conduct, type JsonObject, type Scenario, type SweepResult, studySweepCase } from '../sim/index.ts';

/** Runs one run of a study in this thread. */
export { runJob } from '../sim/index.ts';

/** One case of a sweep, as it crosses to a thread. */
export interface SweepTask {
  readonly scenario: Scenario;
  readonly changes: JsonObject;
}

/** Runs one case of a sweep in this thread. */
export function runCase({ scenario, changes }: SweepTask): SweepResult {
  return conduct(studySweepCase(scenario, changes));
}
