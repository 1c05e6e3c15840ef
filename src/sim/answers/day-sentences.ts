import type { Config } from '../scenario/config.ts';
import { listed } from '../scenario/issue.ts';
import type { Scenario } from '../scenario/scenario.ts';
import {
  type DayPulls,
  type DayStudy,
  type HottestDay,
  type NotMade,
  RESOLUTION,
  type TypedStart,
  typedStart,
} from './other-day.ts';
import { tooFewPulls } from './why-no-answer.ts';
import { countedPulls, type Wording, written } from './wording.ts';

/** A day in sentences: what it makes of the count, the hottest day, and what does not follow the weather. */
export function explainDay({ typed, day, pulls, hottest, typedStart: start }: DayStudy, wording: Wording): string[] {
  const said = (each: DayPulls) =>
    `${wording.temperature(each.temperature)} outside, ${placeOf(each, wording)}: ${countOf(each, wording)}.`;
  const sentences = [said(day)];
  if (typed.temperature !== day.temperature || isElsewhere(typed, day)) sentences.push(`As typed, ${said(typed)}`);
  const place = isElsewhere(typed, day) ? ` at ${placeOf(day, wording)}` : '';
  return [...sentences, hottestSentence(hottest, pulls, wording, place), startSentence(start, wording)];
}

/** The hottest day by itself, and what does not follow the weather. */
export const explainHottestDay = (
  { scenario, config }: { readonly scenario: Scenario; readonly config: Config },
  hottest: HottestDay,
  pulls: number,
  wording: Wording,
): string[] => [hottestSentence(hottest, pulls, wording), startSentence(typedStart(scenario, config), wording)];

function startSentence(start: TypedStart, { temperature }: Pick<Wording, 'temperature'>): string {
  const parts = Object.entries(start).map(([part, at]) => `${part} ${temperature(at)}`);
  return parts.length === 0
    ? 'Coolant, casing and plenum start at the temperature outside on every day.'
    : `The file gives temperatures at the start (${listed(parts)}): they stay on every day, however warm the car would really stand.`;
}

const placeOf = ({ pressure, relativeHumidity }: DayPulls, wording: Pick<Wording, 'pressure'>): string =>
  `${wording.pressure(pressure)}, ${Math.round(100 * relativeHumidity)} % humidity`;

/** Whether two days differ in more than their temperature. */
const isElsewhere = (one: DayPulls, other: DayPulls): boolean =>
  one.pressure !== other.pressure || one.relativeHumidity !== other.relativeHumidity;

function countOf({ count, pullsRun, deciding, lower, higher, stopped }: DayPulls, wording: Wording): string {
  const { temperature, difference } = wording;
  const early = stopped === undefined ? '' : `; the run stops early: ${written(stopped, wording)}`;
  if (deciding === undefined) return `no whole pull${early}`;
  const { pull, peak, margin } = deciding;
  const band = `${lower.count} / ${higher.count} with 5 % less / 5 % more core conductance`;
  const side = margin < 0 ? `${difference(-margin)} over` : `${difference(margin)} under`;
  const ends = [lower.peak, higher.peak].map((each) => (each === undefined ? 'not run' : temperature(each)));
  return `${count} of ${countedPulls(pullsRun)} (${band}); pull ${pull} decides and peaks at ${temperature(peak)}, ${side} the limit (${ends[0]} / ${ends[1]})${early}`;
}

function hottestSentence(hottest: HottestDay, pulls: number, wording: Wording, place = ''): string {
  const { temperature, difference } = wording;
  const because = (why: NotMade): string => {
    if (why.kind === 'limit') return `pull ${why.pull} goes over the limit.`;
    if (why.kind === 'stopped') return `the run stops: ${written(why.reason, wording)}.`;
    // A message is whole sentences.
    return `the file is refused: ${why.message}`;
  };
  switch (hottest.kind) {
    case 'found':
      return `Hottest day with ${countedPulls(pulls)} made${place}: ${temperature(hottest.temperature)} outside; ${difference(RESOLUTION)} warmer, ${because(hottest.beyond)}`;
    case 'made on every day':
      return `On every day up to ${temperature(hottest.upTo)} outside${place} it makes ${countedPulls(pulls)}.`;
    case 'made on no day':
      return `On no day down to ${temperature(hottest.downTo)} outside${place} does it make ${countedPulls(pulls)}: there ${because(hottest.because)}`;
    case 'too few pulls':
      return tooFewPulls(hottest.pulls, pulls);
  }
}
