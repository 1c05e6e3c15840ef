import { ESTIMATE_CAUTION } from '../sim/index.ts';

/** The form that an answer is asked for in; neither: text. */
export interface FormOptions {
  readonly json?: true;
  readonly csv?: true;
}

/** One answer in every form; only the one asked for is made. */
interface Answer {
  readonly json: () => unknown;
  /** left out where a command has no such form */
  readonly csv?: () => string;
  /** lines, without the caution below every answer */
  readonly text: () => readonly string[];
}

/** Prints an answer in the form that it is asked for in. */
export function printAnswer({ json, csv }: FormOptions, answer: Answer): void {
  if (json) console.log(JSON.stringify(answer.json(), knownNumber, 2));
  else if (csv && answer.csv) process.stdout.write(answer.csv());
  else console.log([...answer.text(), '', ESTIMATE_CAUTION].join('\n'));
}

/**
 * What a run did not come to is left out of JSON, as CSV leaves it empty; in a list it is null, so that every other item
 * keeps its place.
 */
const knownNumber = (_: string, value: unknown): unknown =>
  typeof value === 'number' && !Number.isFinite(value) ? undefined : value;
