import {
  type BottleneckPart,
  counted,
  countPulls,
  decidingPull,
  type HottestDay,
  type PullSummary,
  type RunStudy,
  written,
} from '../../sim/index.ts';
import { degrees, fixed, joined, kelvins, onScreen, seconds, signed, wordingIn } from '../format.ts';
import type { CarRun } from '../state/cars.ts';
import type { UnitChoice } from '../state/display.ts';

/** A stretch of a sentence; what matters most is bold. */
export interface Words {
  readonly text: string;
  readonly isStrong?: true;
}

const plain = (text: string): Words => ({ text });
const strong = (text: string): Words => ({ text, isStrong: true });

/**
 * What a run of whole pulls says: where it breaks, its peak and margin; told in full also where later pulls go and
 * what a log would show.
 */
export function describePulls(pulls: readonly PullSummary[], units: UnitChoice, isInFull = true): Words[] {
  const deciding = decidingPull(pulls);
  if (deciding === undefined) return [plain('There is no pull in this run: nothing to count.')];
  const count = countPulls(pulls);
  const peak = degrees(deciding.peak, units);
  const margin = kelvins(Math.abs(deciding.margin), units);
  if (count === pulls.length) {
    const limit = degrees(deciding.peak + deciding.margin, units);
    return [
      plain(`Never over ${limit} in ${inWords(pulls.length)}. Hottest is pull ${deciding.pull}: `),
      strong(`${peak}, ${margin} to spare`),
      plain('.'),
    ];
  }
  const into = `${joined(seconds((deciding.crossedAtShare ?? 0) * deciding.duration))} into pull ${deciding.pull}`;
  if (!isInFull) {
    return [plain(`Breaks ${into}. Peak `), strong(`${peak}, ${margin} over`), plain('.')];
  }
  return [
    plain('Breaks the limit '),
    strong(into),
    plain(' and peaks at '),
    strong(`${peak}, ${margin} over`),
    plain('.'),
    ...laterPulls(pulls, deciding, units),
  ];
}

function laterPulls(pulls: readonly PullSummary[], deciding: PullSummary, units: UnitChoice): Words[] {
  const words: Words[] = [];
  const last = pulls[pulls.length - 1];
  if (last.pull > deciding.pull && last.peak > deciding.peak) {
    words.push(plain(` Later pulls climb to ${degrees(last.peak, units)}.`));
  }
  if (deciding.indicatedPeak < deciding.peak - 0.5) {
    words.push(
      plain(
        ` A log of pull ${deciding.pull} would show only ${degrees(deciding.indicatedPeak, units)}: the sensor lags.`,
      ),
    );
  }
  return words;
}

/** What a part of a run tells of the whole one, of so many planned pulls. */
export function describeKnown(pulls: readonly PullSummary[], planned: number): string {
  const solved = pulls.length;
  if (planned === 0) return 'There is no pull in this run.';
  if (solved === 0) return 'No pull is solved.';
  const count = countPulls(pulls);
  const known =
    count < solved
      ? `Pull ${count + 1} is over the limit: the count stands.`
      : solved === 1
        ? 'Pull 1 stays under.'
        : `Pulls 1 to ${solved} stay under.`;
  if (solved >= planned) return known;
  const rest = solved + 1 === planned ? `Pull ${planned} is` : `Pulls ${solved + 1} to ${planned} are`;
  return `${known} ${rest} not known.`;
}

/** Why a run has no answer; '' where it has, or has none yet. */
export function explainNoAnswer({ message, series }: CarRun, units: UnitChoice): string {
  if (message !== undefined) return onScreen(message);
  return series?.outcome.kind === 'stopped' ? onScreen(written(series.outcome.reason, wordingIn(units))) : '';
}

/** Where repeated pulls end up, and how much the count hangs on the core: what needs more runs. */
export function describeStudy(
  { answer }: RunStudy,
  units: UnitChoice,
): { readonly settled: string; readonly doubt: string; readonly isStopped?: true } {
  const { settled, count, countAtLowerConductance: low, countAtHigherConductance: high } = answer;
  const doubt =
    low === count && high === count
      ? 'Same count with core conductance 5\u00a0% up or down'
      : `${low} with core conductance 5\u00a0% down, ${high} with 5\u00a0% up`;
  if (settled.kind === 'no repeated pulls') return { settled: '', doubt };
  const where = `${degrees(settled.peak, units)} after ${counted(settled.afterPulls, 'pull')}`;
  if (settled.kind === 'not settled' && settled.stoppedBecause !== undefined) {
    const pulls = counted(settled.afterPulls, 'pull');
    const why = onScreen(written(settled.stoppedBecause, wordingIn(units)));
    const peak = degrees(settled.peak, units);
    return {
      settled: `Repeated on, the run stops after ${pulls}, the last at ${peak}: ${why}`,
      doubt,
      isStopped: true,
    };
  }
  if (settled.kind === 'not settled') return { settled: `Not settled yet: ${where}`, doubt };
  const beyond = settled.firstOverLimit !== undefined && settled.firstOverLimit > answer.pullsRun;
  const never = settled.firstOverLimit === undefined ? ', never over' : '';
  return {
    settled: beyond
      ? `Repeated on, pull ${settled.firstOverLimit} breaks it; settles at ${where}`
      : `Settles at ${where}${never}`,
    doubt,
  };
}

/** The hottest day on which all pulls of a session are made, as it stands beside their count. */
export function describeHottestDay(day: HottestDay, pulls: number, units: UnitChoice): string {
  const all = pulls === 1 ? 'the pull' : `all ${pulls}`;
  switch (day.kind) {
    case 'found':
      return `${all} up to ${degrees(day.temperature, units)} outside`;
    case 'made on every day':
      return `${all} on every day up to ${degrees(day.upTo, units)}`;
    case 'made on no day':
      return `${all} on no day down to ${degrees(day.downTo, units)}`;
    case 'too few pulls':
      return '';
  }
}

/** What After changes, in pulls and at the first pull: said plainly also where it is nothing. */
export function describeGain(before: readonly PullSummary[], after: readonly PullSummary[], units: UnitChoice): string {
  if (before.length === 0 || after.length === 0) return '';
  const gain = countPulls(after) - countPulls(before);
  const first = before[0].peak - after[0].peak;
  const cooler = `pull 1 is ${kelvins(Math.abs(first), units)} ${first >= 0 ? 'cooler' : 'hotter'}`;
  if (gain === 0) return `no pull gained, ${cooler}`;
  return `${signed(fixed(gain, 0))} ${Math.abs(gain) === 1 ? 'pull' : 'pulls'}, ${cooler}`;
}

/** Names of the idealised parts as the list of causes shows them. */
export const CAUSE_NAMES: Record<BottleneckPart, string> = {
  'core conductance': 'Core conductance',
  'coolant flow': 'Coolant flow, four times',
  'front exchanger': 'Front exchanger',
  'stored coolant': 'Stored coolant, endless',
  'core pressure drop': 'Core pressure drop',
  'intake air': 'Intake air at ambient',
};

const NUMBERS = [
  'no',
  'one',
  'two',
  'three',
  'four',
  'five',
  'six',
  'seven',
  'eight',
  'nine',
  'ten',
  'eleven',
  'twelve',
];

function inWords(count: number): string {
  return NUMBERS[count] ?? String(count);
}
