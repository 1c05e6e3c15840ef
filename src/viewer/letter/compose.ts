import { explainHottestDay, type Letter, type LetterRun, writeLetter } from '../../sim/index.ts';
import { onScreen, wordingIn } from '../format.ts';
import type { UnitChoice } from '../state/display.ts';
import type { ShownRun } from '../time/runs.ts';
import { labelOf } from './asked.ts';
import type { Told } from './use-told.ts';

/** A run as the letter takes it; undefined where nothing of it is recorded. */
function letterRun({ car, run, pulls }: ShownRun, label: string): LetterRun | undefined {
  const { series, study } = run;
  return series && { label, config: car.config, series, pulls, ...(study && { study }) };
}

/**
 * The letter in the units of the page. Where the car is asked about as it stands, on another day, the answer is that
 * day's alone: nothing was done to the car that could be compared.
 *
 * @param steps - what upgrades would buy, in sentences, where it was worked out
 */
export function composeLetter({ runs, asked }: Told, steps: readonly string[], units: UnitChoice): Letter | undefined {
  const hand = runs[runs.length - 1];
  const isAlone = asked.kind === 'as it stands';
  const before = letterRun(isAlone ? hand : runs[0], 'as it stands');
  const after = isAlone ? undefined : letterRun(hand, labelOf(asked));
  if (before === undefined) return undefined;
  const { notes } = hand.car.scenario.values;
  const { hottestDay } = hand.run;
  const wording = wordingIn(units);
  const otherDays = hottestDay === undefined ? [] : explainHottestDay(hand.car, hottestDay, hand.pulls.length, wording);
  const letter = writeLetter({ before, ...(after && { after }), steps, otherDays, ...(notes && { notes }) }, wording);
  return {
    ...letter,
    parts: letter.parts.map((part) => ({ ...part, paragraphs: part.paragraphs.map(onScreen) })),
  };
}
