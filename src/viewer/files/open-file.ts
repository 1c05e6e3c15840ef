import { type Issue, type JsonValue, parseScenario, stepsOf, withValue } from '../../sim/index.ts';
import type { Session } from '../state/session.ts';

/** Bytes; a scenario has a few thousand. */
const LARGEST_FILE = 2_000_000;

/** A file that could not be opened, and why. */
export interface Refusal {
  readonly file: string;
  readonly issues: readonly Issue[];
  /** the text with every proposed fix made, where that makes it readable */
  readonly fixedText?: string;
}

/** Opens a file as Before. Where it cannot be read nothing changes. */
export async function openFile(session: Session, file: File): Promise<Refusal | undefined> {
  if (file.size > LARGEST_FILE) return { file: file.name, issues: [tooLarge(file)] };
  try {
    return openText(session, file.name, await file.text());
  } catch (error) {
    const message = `The browser could not read the file: ${error instanceof Error ? error.message : String(error)}.`;
    return { file: file.name, issues: [issueOfFile(message, 'nothing', 'a readable file')] };
  }
}

/** Opens a text as Before. Where it cannot be read nothing changes. */
export function openText(session: Session, file: string, text: string): Refusal | undefined {
  const issues = session.open(text);
  if (!issues.some(({ severity }) => severity === 'error')) return undefined;
  const fixedText = withFixes(text, issues);
  return { file, issues, ...(fixedText !== undefined && { fixedText }) };
}

/** The text with the fixes of all errors made; `undefined` where one has no fix, or where errors are left. */
function withFixes(text: string, issues: readonly Issue[]): string | undefined {
  const errors = issues.filter(({ severity }) => severity === 'error');
  if (errors.length === 0) return undefined;
  let document: JsonValue | undefined;
  try {
    document = JSON.parse(text) as JsonValue;
  } catch {
    return undefined;
  }
  for (const { fix } of errors) {
    if (fix === undefined || document === undefined) return undefined;
    document = withValue(document, stepsOf(fix.path), fix.value);
  }
  const fixed = JSON.stringify(document, undefined, 2);
  return parseScenario(fixed).scenario === undefined ? undefined : fixed;
}

function tooLarge({ size }: File): Issue {
  const found = `${(size / 1e6).toFixed(size < 1e7 ? 1 : 0)} MB`;
  const message = `The file has ${found}; a scenario has a few kilobytes. Is it a log?`;
  return issueOfFile(message, found, `at most ${LARGEST_FILE / 1e6} MB`);
}

function issueOfFile(message: string, found: string, expected: string): Issue {
  return { severity: 'error', path: 'file', message, found, expected };
}
