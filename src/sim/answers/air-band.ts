import type { Config } from '../scenario/config.ts';
import { withSwallowingExponent } from './car-changes.ts';
import { summarisePulls } from './pull-summary.ts';
import { jobToPull, type Study } from './study.ts';

/** Ends of what engines do: the plain density rule, and the most that ambient corrections suggest. */
export const EXPONENTS = [0, 0.5] as const;

/**
 * Air mass at the end of a pull for both ends of the swallowing exponent, kg/s: no claim of mass or power is better
 * than these two.
 */
export interface AirBand {
  /** counted from 1 */
  readonly pull: number;
  readonly plainDensity: number;
  readonly steepest: number;
}

/** Runs the car at both ends of the exponent, to the end of pull `pull`; absent where a run does not come so far. */
export function* studyAirBand(config: Config, pull: number): Study<AirBand | undefined> {
  const runs = yield EXPONENTS.map((exponent) => jobToPull(withSwallowingExponent(config, exponent), pull));
  const [plainDensity, steepest] = runs.map(
    (run) => summarisePulls(run, config.limit.chargeTemperature)[pull - 1]?.atEnd.airFlow,
  );
  return plainDensity === undefined || steepest === undefined ? undefined : { pull, plainDensity, steepest };
}
