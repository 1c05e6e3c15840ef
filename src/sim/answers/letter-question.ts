import { pullsOfCycle } from '../scenario/config/cycle.ts';
import type { Config } from '../scenario/config.ts';
import type { Wording } from './wording.ts';

/** Quantities of a question in the order in which it names them; a session that is no one pull repeated lacks three. */
export type QuestionSlot = 'change' | 'limit' | 'pulls' | 'length' | 'rest' | 'day';

/** A stretch of the question; one with a slot is a quantity, and may be set where it stands. */
export interface QuestionPiece {
  readonly text: string;
  readonly slot?: QuestionSlot;
}

/** What of a car a question hangs on; it may have been run or not. */
export interface AskedCar {
  /** as a sentence names it: "as it stands", "with a bigger core" */
  readonly label: string;
  readonly config: Config;
}

/** What the customer asked. */
export const askQuestion = (car: AskedCar, wording: Wording): string =>
  questionPieces(car, wording)
    .map(({ text }) => text)
    .join('');

/** The question piece by piece, for whoever sets its quantities where they stand. */
export function questionPieces({ config, label }: AskedCar, wording: Wording): QuestionPiece[] {
  const { block, repeats } = config.cycle;
  const pulls = pullsOfCycle(config.cycle);
  const inBlock = block.filter(({ kind }) => kind === 'pull');
  const rest = block.filter(({ kind }) => kind !== 'pull').reduce((sum, { duration }) => sum + duration, 0);
  const session: QuestionPiece[] =
    repeats > 0 && inBlock.length === 1 && pulls === repeats
      ? [
          { slot: 'pulls', text: String(pulls) },
          { text: pulls === 1 ? ' pull of ' : ' back-to-back pulls of ' },
          { slot: 'length', text: seconds(inBlock[0].duration) },
          { text: ', with ' },
          { slot: 'rest', text: seconds(rest) },
          { text: pulls === 1 ? ' of rest,' : ' between them,' },
        ]
      : [{ text: pulls === 1 ? 'the pull of this session' : `the ${pulls} pulls of this session` }];
  return [
    { text: 'Will the car ' },
    { slot: 'change', text: label },
    { text: ' keep the charge at or under ' },
    { slot: 'limit', text: wording.temperature(config.limit.chargeTemperature) },
    { text: ' through ' },
    ...session,
    { text: ' on a day of ' },
    { slot: 'day', text: wording.temperature(config.ambient.temperature) },
    { text: '?' },
  ];
}

const CONDITION_NAMES: Readonly<Partial<Record<QuestionSlot, string>>> = {
  limit: 'the limit',
  pulls: 'the number of pulls',
  length: 'the length of a pull',
  rest: 'the time between pulls',
  day: 'the day',
};

/**
 * Says where two cars are not asked the same, so that their answers do not compare like for like; '' where they are.
 */
export function explainUnlike(before: AskedCar, after: AskedCar, wording: Wording): string {
  const asked = questionPieces(before, wording);
  const unlike = questionPieces(after, wording).flatMap(({ slot, text }) => {
    const name = slot && CONDITION_NAMES[slot];
    const other = asked.find((piece) => piece.slot === slot)?.text;
    return name === undefined || other === undefined || other === text
      ? []
      : [`${name} is ${other} before and ${text} after`];
  });
  if (unlike.length === 0) return '';
  return `Before and after are not asked the same: ${unlike.join('; ')}.`;
}

const seconds = (s: number): string => `${Number(s.toPrecision(3))} s`;
