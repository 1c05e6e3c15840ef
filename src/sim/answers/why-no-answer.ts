import { counted } from '../scenario/issue.ts';
import type { NoSuchPull } from './car-agreement.ts';
import { countedPulls } from './wording.ts';

/** Why a question has no answer, in the same words on the page and on the command line. */
export const WHY_NO_ANSWER = {
  noPull: 'The cycle has no pull: there is nothing to count.',
  noRest: 'The cycle does not repeat a pull and a rest: there is no rest between pulls to change.',
  noWholePull: 'No pull of this cycle runs to its end: there is no drop to speak of.',
  noPump: 'No pump is on in any phase: there is no flow to speak of.',
  noPumpedPull:
    'What follows from the measures is unknown: the first pull does not come to its end with coolant flowing, so the flows through the core are not known.',
  noPartLoad:
    'Nothing to compare: no part-load phase of this run came to its end. Air goes back only with the bypass open, not in a pull and not in a hot soak.',
  noPartLoadBeforePull: 'Nothing to compare: the run has no part-load phase with a whole pull after it.',
  tooFewDecided: 'Nothing to rank: too few of the runs have the pull that decides.',
} as const;

/** The same of a reading of a pull that the run does not come to. */
export const whyNoSuchPull = ({ pull, pullsRun }: NoSuchPull): string =>
  `Pull ${pull} was read, but this run has ${counted(pullsRun, 'whole pull')}.`;

/** Why more pulls than a session has cannot be asked for, where it repeats none. */
export const tooFewPulls = (has: number, asked: number): string =>
  `The session has ${countedPulls(has)} and repeats none, so ${countedPulls(asked)} cannot be asked for.`;
