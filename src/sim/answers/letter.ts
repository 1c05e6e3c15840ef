import type { TimeSeries } from '../results/time-series.ts';
import { pullsOfCycle } from '../scenario/config/cycle.ts';
import { ESTIMATE_CAUTION, freezeCaution, LETTER_CAUTIONS } from './cautions.ts';
import { compareCooling, explainCooling } from './cooling-consequence.ts';
import { findings } from './findings.ts';
import { askQuestion, explainUnlike } from './letter-question.ts';
import {
  answerQuestion,
  explainCount,
  explainDoubt,
  explainLog,
  explainPart,
  explainReturn,
  explainWhy,
  isStopped,
  type LetterCar,
} from './letter-rules.ts';
import { countPulls } from './pulls-to-limit.ts';
import type { Wording } from './wording.ts';

/** A car of a letter with all that was recorded of it. */
export interface LetterRun extends LetterCar {
  readonly series: TimeSeries;
}

/** Parts of a letter in their order; those without anything to say are left out. */
const LETTER_PARTS = ['why', 'log', 'steps', 'return', 'doubt', 'cautions', 'notes'] as const;
type LetterPart = (typeof LETTER_PARTS)[number];

/** The customer's report. Plain data: the page sets it as a document, the command line prints it. */
export interface Letter {
  readonly question: string;
  readonly answer: string;
  /** where before and after are not asked the same */
  readonly unlike?: string;
  readonly counts: readonly {
    readonly label: string;
    /** absent where the run stopped */
    readonly count?: number;
    /** pulls of the cycle */
    readonly of: number;
    readonly said: string;
  }[];
  readonly parts: readonly {
    readonly part: LetterPart;
    readonly heading: string;
    readonly paragraphs: readonly string[];
  }[];
}

export interface LetterInput {
  readonly before: LetterRun;
  readonly after?: LetterRun;
  /**
   * sentences about upgrade steps with the shop's prices, and about another day, where they were worked out; not told
   * where a run stopped
   */
  readonly steps?: readonly string[];
  readonly otherDays?: readonly string[];
  /** the scenario's own */
  readonly notes?: string;
}

const HEADINGS: Readonly<Record<LetterPart, string>> = {
  why: 'Why',
  log: 'What the log will show',
  steps: 'What each step would buy',
  return: 'What it takes in return',
  doubt: 'How sure this is',
  cautions: 'Before you test or build',
  notes: 'Notes',
};

/**
 * Writes the letter. Every sentence follows from the numbers by a rule of its own. Where a run stopped there is no
 * answer, and nothing that hangs on one.
 */
export function writeLetter(
  { before, after, steps = [], otherDays = [], notes }: LetterInput,
  wording: Wording,
): Letter {
  const cars = after === undefined ? [before] : [before, after];
  const inHand = after ?? before;
  const stopped = cars.find(isStopped);
  const found = findings((stopped ?? inHand).config, (stopped ?? inHand).series, wording)
    .filter(({ rank }) => rank !== 'note')
    .map(({ text }) => text);
  const told: Partial<Record<LetterPart, readonly string[]>> = {
    ...(stopped === undefined && {
      why: cars.flatMap((car) => explainWhy(car, wording)),
      log: explainLog(inHand, wording),
      steps,
      return: after && [...explainReturn(before, after, wording), ...cooling(before, after, wording)],
    }),
    doubt: stopped === undefined ? [...explainDoubt(inHand, wording), ...otherDays, ...found] : found,
    cautions: [ESTIMATE_CAUTION, freezeCaution(inHand.config, wording), ...LETTER_CAUTIONS],
    notes: notes === undefined ? [] : [notes],
  };
  const unlike = after === undefined ? '' : explainUnlike(before, after, wording);
  return {
    question: askQuestion(inHand, wording),
    answer: answerQuestion(before, after, wording),
    ...(unlike !== '' && { unlike }),
    counts: cars.map((car) => ({
      label: car.label,
      ...(!isStopped(car) && { count: countPulls(car.pulls) }),
      of: pullsOfCycle(car.config.cycle),
      said: isStopped(car) ? explainPart(car, wording) : explainCount(car, wording),
    })),
    parts: LETTER_PARTS.flatMap((part) => {
      const paragraphs = told[part] ?? [];
      return paragraphs.length === 0 ? [] : [{ part, heading: HEADINGS[part], paragraphs }];
    }),
  };
}

function cooling(before: LetterRun, after: LetterRun, wording: Wording): string[] {
  const [from, to] = [before.pulls.at(0), after.pulls.at(0)];
  if (from === undefined || to === undefined) return [];
  const bandOf = ({ study }: LetterRun) => (study?.airBand?.pull === 1 ? study.airBand : undefined);
  const change = compareCooling({ pull: from, airBand: bandOf(before) }, { pull: to, airBand: bandOf(after) });
  return [explainCooling(change, after.config.compressor, wording)];
}
