import type { Config } from '../scenario/config.ts';
import { type AirBand, studyAirBand } from './air-band.ts';
import { type Bottleneck, studyBottleneck } from './bottleneck.ts';
import type { PullSummary } from './pull-summary.ts';
import { type PullsToLimit, studyPullsToLimit } from './pulls-to-limit.ts';
import type { Study } from './study.ts';

/** All that stands beside a run's own pulls and takes more runs. */
export interface RunStudy {
  readonly answer: PullsToLimit;
  /** absent where there is no pull to look at */
  readonly bottleneck?: Bottleneck;
  readonly airBand?: AirBand;
}

/** Answers for one run: pulls to the limit first, then what holds its deciding pull back. */
export function* studyRun(config: Config, pulls: readonly PullSummary[]): Study<RunStudy> {
  const answer = yield* studyPullsToLimit(config, pulls);
  const deciding = pulls.find(({ pull }) => pull === answer.decidingPull);
  if (deciding === undefined) return { answer };
  const bottleneck = yield* studyBottleneck(config, deciding.pull, deciding.peak);
  const airBand = yield* studyAirBand(config, deciding.pull);
  return { answer, bottleneck, ...(airBand && { airBand }) };
}
