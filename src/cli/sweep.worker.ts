import { conduct, type JsonObject, type Scenario, type SweepResult, studySweepCase } from '../sim/index.ts';

/** One case, as it crosses to a thread. */
export interface SweepTask {
  readonly scenario: Scenario;
  readonly changes: JsonObject;
}

/** Runs one case in this thread. */
export function runCase({ scenario, changes }: SweepTask): SweepResult {
  return conduct(studySweepCase(scenario, changes));
}
