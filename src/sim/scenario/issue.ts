/** Any value that JSON can hold. */
export type JsonValue = null | boolean | number | string | readonly JsonValue[] | JsonObject;
export interface JsonObject {
  readonly [key: string]: JsonValue;
}

/** One change to the file that removes an issue: set `path` to `value`. `label` is the text of its button. */
export interface Fix {
  readonly path: string;
  readonly value: JsonValue;
  readonly label: string;
}

/** One thing that is wrong (the run cannot start) or doubtful (it runs as typed) in a scenario file. Plain data. */
export interface Issue {
  readonly severity: 'error' | 'warning';
  /** where in the file, keys and indices joined by dots: "cycle.1.phases.0.duration" */
  readonly path: string;
  /** full sentences */
  readonly message: string;
  readonly found: string;
  readonly expected: string;
  readonly fix?: Fix;
}

export type Report = (issue: Issue) => void;

export const isError = ({ severity }: Issue): boolean => severity === 'error';

export const isObject = (value: JsonValue | undefined): value is JsonObject =>
  typeof value === 'object' && value !== null && !Array.isArray(value);

export const isList = (value: JsonValue | undefined): value is readonly JsonValue[] => Array.isArray(value);

/** A value as a message quotes it, shortened where it is long. */
export function quoted(value: JsonValue | undefined): string {
  if (value === undefined) return 'nothing';
  const text = typeof value === 'number' ? String(value) : JSON.stringify(value);
  return text.length > 60 ? `${text.slice(0, 57)}...` : text;
}

export const capitalised = (text: string): string => text.charAt(0).toUpperCase() + text.slice(1);

/** "1 tube", "3 tubes". */
export const counted = (count: number, noun: string): string => `${count} ${noun}${count === 1 ? '' : 's'}`;

const ALL = new Intl.ListFormat('en-GB');
const ANY = new Intl.ListFormat('en-GB', { type: 'disjunction' });

/** "a", "a and b", "a, b and c" */
export const listed = (words: readonly string[]): string => ALL.format(words);

/** "a", "a or b", "a, b or c" */
export const alternatives = (words: readonly string[]): string => ANY.format(words);
