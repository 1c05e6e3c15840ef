import type { TimeSeries } from '../results/time-series.ts';
import { pullsOfCycle } from '../scenario/config/cycle.ts';
import { capitalised } from '../scenario/issue.ts';
import { CAUSE_WORDS, causeInWords } from './bottleneck.ts';
import { whenAt } from './finding.ts';
import type { AskedCar } from './letter-question.ts';
import type { PullSummary } from './pull-summary.ts';
import { countPulls, decidingPull, type SettledPeak } from './pulls-to-limit.ts';
import type { RunStudy } from './study-run.ts';
import { countedPulls, type Wording, written } from './wording.ts';

/** Peaks that move by less than this count as the same [K]. */
const SAME = 0.1;

/** One car of a letter with its run. */
export interface LetterCar extends AskedCar {
  /** those that came to their end: fewer than the cycle has where the run stopped */
  readonly pulls: readonly PullSummary[];
  readonly series: Pick<TimeSeries, 'outcome' | 'phases'>;
  readonly study?: RunStudy;
}

/** Whether a run ended before its cycle did: then there is no answer. */
export const isStopped = ({ series }: Pick<LetterCar, 'series'>): boolean => series.outcome.kind === 'stopped';

/**
 * The answer in one sentence or two. Its first word follows from the counts alone: "Yes" where the change makes all
 * pulls, "Not needed" where the car makes them without, "In part" where it gains some, "No" where it gains none. Where
 * a run stopped there is no answer.
 */
export function answerQuestion(before: LetterCar, after: LetterCar | undefined, wording: Wording): string {
  const of = pullsOfCycle((after ?? before).config.cycle);
  const stops = [before, ...(after ? [after] : [])].flatMap((car) =>
    explainStop(car, after === undefined ? 'the run' : `the run of the car ${car.label}`, wording),
  );
  if (stops.length > 0) return `No answer: ${stops.join('; ')}.`;
  if (of === 0) return 'There is no pull in this session: nothing to answer.';
  if (after === undefined) return answerAlone(before, wording);
  const [from, to] = [countPulls(before.pulls), countPulls(after.pulls)];
  const limit = wording.temperature(before.config.limit.chargeTemperature);
  const isEnough = from >= before.pulls.length;
  const asItStands = isEnough
    ? `stays under ${limit} ${inAll(before.pulls.length)}`
    : `goes over ${limit} in pull ${from + 1}`;
  const change = capitalised(after.label);
  if (isEnough && to >= of) {
    const hotter = (hottest(after)?.peak ?? 0) - (hottest(before)?.peak ?? 0);
    return Math.abs(hotter) < SAME
      ? `Not needed. The car ${before.label} ${asItStands}, and ${after.label} nothing changes that counts.`
      : `Not needed. The car ${before.label} ${asItStands}; ${after.label} its hottest pull is ${wording.difference(Math.abs(hotter))} ${hotter < 0 ? 'cooler' : 'hotter'}.`;
  }
  const cooler = peakChange(before, after);
  const by = wording.difference(Math.abs(cooler));
  if (to >= of) {
    const spare = wording.difference(hottest(after)?.margin ?? 0);
    return `Yes. The car ${before.label} ${asItStands}; ${after.label} it stays under ${inAll(of)}, with ${spare} to spare.`;
  }
  if (to > from)
    return `In part. ${change} it makes ${to} of ${countedPulls(of)} in place of ${from}, then goes over ${limit}.`;
  if (to < from) return `No, it gets worse. ${change} the car makes ${to} of ${countedPulls(of)} in place of ${from}.`;
  if (Math.abs(cooler) < SAME) {
    return `No. ${change} nothing changes that counts: ${to} of ${countedPulls(of)}, before and after.`;
  }
  return cooler < 0
    ? `No. ${change} pull ${to + 1} is ${by} cooler, not enough: it still goes over ${limit}.`
    : `No, it gets worse. ${change} pull ${to + 1} is ${by} hotter, and goes over ${limit} as before.`;
}

function answerAlone(car: LetterCar, wording: Wording): string {
  const count = countPulls(car.pulls);
  const limit = wording.temperature(car.config.limit.chargeTemperature);
  const of = car.pulls.length;
  const deciding = decidingPull(car.pulls);
  if (count >= of) {
    const { pull = 0, peak = 0, margin = 0 } = deciding ?? {};
    return `Yes. It stays under ${limit} ${inAll(of)}; hottest is pull ${pull} at ${wording.temperature(peak)}, with ${wording.difference(margin)} to spare.`;
  }
  const over = wording.difference(Math.abs(deciding?.margin ?? 0));
  return count === 0
    ? `No. It goes over ${limit} in its first pull, by ${over}.`
    : `No. It makes ${count} of ${of}, and goes over ${limit} in pull ${count + 1}, by ${over}.`;
}

/** When and why a run stopped; nothing where it is whole. */
function explainStop({ series }: LetterCar, run: string, wording: Wording): string[] {
  const { outcome } = series;
  if (outcome.kind !== 'stopped') return [];
  return [`${run} stops ${whenAt({ series, wording }, outcome.time)}, because ${written(outcome.reason, wording)}`];
}

/** Where the count of one car comes from. */
export function explainCount({ pulls }: Pick<LetterCar, 'pulls'>, wording: Wording): string {
  const deciding = decidingPull(pulls);
  if (deciding === undefined) return 'No pull was run.';
  const { pull, peak, margin, crossedAtShare, duration } = deciding;
  if (margin < 0) {
    const into = wording.duration((crossedAtShare ?? 0) * duration);
    return `Goes over the limit in pull ${pull}, ${into} into it. Peak of that pull ${wording.temperature(peak)}, ${wording.difference(-margin)} over.`;
  }
  return `Hottest is pull ${pull} at ${wording.temperature(peak)}, ${wording.difference(margin)} under the limit.`;
}

/** What there is of a run that stopped. */
export function explainPart({ pulls }: Pick<LetterCar, 'pulls'>, wording: Wording): string {
  if (pulls.length === 0) return 'No pull came to its end.';
  return `Pulls that came to their end: ${pulls.length}. ${explainCount({ pulls }, wording)}`;
}

/** What holds a car back, and by how much each part alone. */
export function explainWhy({ label, study }: LetterCar, wording: Wording): string[] {
  const bottleneck = study?.bottleneck;
  if (bottleneck === undefined) return [];
  const { heldBackBy, falls, pull } = bottleneck;
  const first =
    heldBackBy.length === 0
      ? `No one part holds the car ${label} back.`
      : `What holds the car ${label} back is ${causeInWords(heldBackBy)}.`;
  const list = falls
    .filter(({ fall }) => fall >= SAME)
    .map(({ part, fall }) => `${CAUSE_WORDS[part]} ${wording.difference(fall)}`)
    .join(', ');
  return [
    first,
    list === ''
      ? `If one part alone were perfect, pull ${pull} would peak no lower.`
      : `If one part alone were perfect, pull ${pull} would peak lower by: ${list}.`,
  ];
}

/** What a log of the session would show, and why that is not the charge itself. */
export function explainLog({ pulls, label }: LetterCar, wording: Wording): string[] {
  const deciding = decidingPull(pulls);
  if (deciding === undefined) return [];
  const { pull, peak, indicatedPeak, indicatedPeakAfterLift, atEnd } = deciding;
  const lag = peak - indicatedPeak;
  const shown = `In pull ${pull} of the car ${label} a log shows ${wording.temperature(indicatedPeak)} at most`;
  const sentences = [
    lag > SAME
      ? `${shown}; the charge itself peaks at ${wording.temperature(peak)}: the sensor lags by ${wording.difference(lag)}.`
      : lag < -SAME
        ? `${shown}; the charge itself peaks at ${wording.temperature(peak)}: the sensor still shows heat from before the pull, or of the metal that holds it.`
        : `${shown}, which is what the charge reaches.`,
  ];
  if (indicatedPeakAfterLift > indicatedPeak + SAME) {
    sentences.push(`It goes on rising to ${wording.temperature(indicatedPeakAfterLift)} after lift.`);
  }
  sentences.push(
    `Coolant goes into the core at ${wording.temperature(atEnd.coolantIntoCore)} and out at ${wording.temperature(atEnd.coolantOutOfCore)}, ${wording.flow(atEnd.coolantFlow)} of it.`,
  );
  return sentences;
}

/** What the change takes in return: flow, pressure, power. */
export function explainReturn(before: LetterCar, after: LetterCar, wording: Wording): string[] {
  const [from, to] = [before.pulls.at(0)?.atEnd, after.pulls.at(0)?.atEnd];
  if (from === undefined || to === undefined) return [];
  const pair = (name: string, write: (value: number) => string, a: number, b: number): string =>
    write(a) === write(b) ? `${name} stays at ${write(b)}` : `${name} goes from ${write(a)} to ${write(b)}`;
  return [
    `At the end of pull 1 ${pair('the core pressure drop', wording.pressure, from.coreAirDrop, to.coreAirDrop)}, ${pair(
      'the manifold',
      wording.pressure,
      from.manifoldPressure,
      to.manifoldPressure,
    )}, ${pair('drive power', wording.power, from.drivePower, to.drivePower)} and ${pair(
      'the coolant flow',
      wording.flow,
      from.coolantFlow,
      to.coolantFlow,
    )}.`,
  ];
}

/** How much the answer hangs on what is not known well. */
export function explainDoubt({ study, pulls }: LetterCar, wording: Wording): string[] {
  if (study === undefined || pulls.length === 0) return [];
  const { count, countAtLowerConductance: low, countAtHigherConductance: high, settled } = study.answer;
  const core =
    low === count && high === count
      ? `With a core that passes 5 % less or 5 % more heat the count is the same.`
      : `With a core that passes 5 % less heat it is ${low} of ${pulls.length}, with 5 % more ${high}.`;
  if (settled.kind === 'no repeated pulls') return [core];
  return [core, `Repeated on, ${repeatedWords(settled, pulls.length, wording)}.`];
}

/** Where the peaks of a session of so many pulls go when it is repeated. */
function repeatedWords(
  settled: Exclude<SettledPeak, { kind: 'no repeated pulls' }>,
  pulls: number,
  wording: Wording,
): string {
  const after = `after ${countedPulls(settled.afterPulls)}`;
  const where = `${wording.temperature(settled.peak)} ${after}`;
  if (settled.kind === 'not settled') {
    const { stoppedBecause } = settled;
    return stoppedBecause === undefined
      ? `the peak has not settled: ${where}`
      : `the run stops ${after}: ${written(stoppedBecause, wording)}`;
  }
  const { firstOverLimit: first } = settled;
  if (first === undefined) return `the peak settles at ${where} and never goes over the limit`;
  return first > pulls
    ? `pull ${first} goes over the limit; the peak settles at ${where}`
    : `the peak settles at ${where}`;
}

const hottest = ({ pulls }: LetterCar): PullSummary | undefined =>
  pulls.reduce<PullSummary | undefined>((most, pull) => (most && most.peak >= pull.peak ? most : pull), undefined);

/** K by which the same pull is hotter after: the one that decides before, else the hottest. */
function peakChange(before: LetterCar, after: LetterCar): number {
  const deciding = decidingPull(before.pulls);
  const same = after.pulls.find(({ pull }) => pull === deciding?.pull);
  return deciding === undefined || same === undefined ? 0 : same.peak - deciding.peak;
}

const inAll = (pulls: number): string => (pulls === 1 ? 'in its one pull' : `in all ${pulls}`);
