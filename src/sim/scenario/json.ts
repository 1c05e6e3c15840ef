import type { Issue, JsonValue } from './issue.ts';

/** Deeper than any scenario; what lies deeper is no scenario and could exhaust the stack. */
const DEEPEST = 40;
const NUMBER = /-?(?:0|[1-9]\d*)(?:\.\d+)?(?:[eE][-+]?\d+)?/y;
const WORD = /[\w.+-]+/y;

class Fault extends Error {
  readonly position: number;
  constructor(message: string, position: number) {
    super(message);
    this.position = position;
  }
}

/**
 * Reads JSON and says where it is broken, by line and column.
 *
 * Stricter than the built-in reader in one thing: a key that stands twice in one object is an issue, since the first
 * value would be lost. A byte-order mark is skipped. Never throws.
 *
 * @param text - any text
 * @returns the value, and the issues: one for broken syntax (then without a value), one for each doubled key
 */
export function readJson(text: string): { readonly value?: JsonValue; readonly issues: readonly Issue[] } {
  const issues: Issue[] = [];
  try {
    const reader = new Reader(text, issues);
    return { value: reader.document(), issues };
  } catch (fault) {
    if (!(fault instanceof Fault)) throw fault;
    const { line, column } = placeOf(text, fault.position);
    return {
      issues: [
        {
          severity: 'error',
          path: `line ${line}, column ${column}`,
          message: `The file is not readable as JSON at line ${line}, column ${column}: ${fault.message}`,
          found: shown(text, fault.position),
          expected: 'JSON',
        },
      ],
    };
  }
}

function placeOf(text: string, position: number): { line: number; column: number } {
  const before = text.slice(0, position).split(/\r\n|\r|\n/);
  return { line: before.length, column: before[before.length - 1].length + 1 };
}

function shown(text: string, position: number): string {
  const character = text.codePointAt(position);
  return character === undefined ? 'the end of the file' : JSON.stringify(String.fromCodePoint(character));
}

class Reader {
  private at = 0;
  private readonly path: (string | number)[] = [];
  private readonly text: string;
  private readonly issues: Issue[];

  constructor(text: string, issues: Issue[]) {
    this.text = text;
    this.issues = issues;
    if (text.startsWith('\uFEFF')) this.at = 1;
  }

  document(): JsonValue {
    const value = this.value();
    if (this.peek() !== undefined) throw this.fault(`expected nothing more, found ${shown(this.text, this.at)}.`);
    return value;
  }

  private value(): JsonValue {
    const character = this.peek();
    if (this.path.length > DEEPEST) throw this.fault(`more than ${DEEPEST} levels of brackets.`);
    if (character === '{') return this.object();
    if (character === '[') return this.array();
    if (character === '"') return this.string();
    if (character !== undefined && /[-\d]/.test(character)) return this.number();
    for (const [word, value] of [
      ['true', true],
      ['false', false],
      ['null', null],
    ] as const) {
      if (this.wordHere() === word) {
        this.at += word.length;
        return value;
      }
    }
    throw this.fault(`expected a value, found ${this.wordHere() ?? shown(this.text, this.at)}.${this.hint()}`);
  }

  private object(): JsonValue {
    const entries = new Map<string, JsonValue>();
    this.at++;
    if (this.took('}')) return {};
    do {
      if (this.peek() !== '"') {
        throw this.fault(`expected a key in double quotes, found ${shown(this.text, this.at)}.${this.hint()}`);
      }
      const key = this.string();
      if (!this.took(':')) throw this.fault(`expected ":" after the key "${key}", found ${shown(this.text, this.at)}.`);
      this.path.push(key);
      if (entries.has(key)) this.reportTwice();
      entries.set(key, this.value());
      this.path.pop();
    } while (this.took(','));
    if (!this.took('}')) throw this.fault(`expected "," or "}", found ${shown(this.text, this.at)}.`);
    // Own properties whatever the key: "__proto__" stays a key like any other.
    return Object.fromEntries(entries);
  }

  private array(): JsonValue {
    const items: JsonValue[] = [];
    this.at++;
    if (this.took(']')) return items;
    do {
      this.path.push(items.length);
      items.push(this.value());
      this.path.pop();
    } while (this.took(','));
    if (!this.took(']')) throw this.fault(`expected "," or "]", found ${shown(this.text, this.at)}.`);
    return items;
  }

  private string(): string {
    const start = this.at;
    let end = start + 1;
    while (end < this.text.length && this.text[end] !== '"' && this.text[end] !== '\n') {
      end += this.text[end] === '\\' ? 2 : 1;
    }
    if (this.text[end] !== '"') throw this.fault('a text has no closing double quote on its line.');
    this.at = end + 1;
    try {
      return JSON.parse(this.text.slice(start, end + 1));
    } catch {
      this.at = start;
      throw this.fault('a text holds a control character or an unknown "\\" sequence.');
    }
  }

  private number(): number {
    NUMBER.lastIndex = this.at;
    const match = NUMBER.exec(this.text);
    const word = this.wordHere() ?? '';
    if (match === null || match[0] !== word) throw this.fault(`${word} is not a number.${this.hint()}`);
    this.at += word.length;
    return Number(word);
  }

  /** Next character that is no white space; `undefined` at the end. */
  private peek(): string | undefined {
    while (/[ \t\r\n]/.test(this.text[this.at] ?? '')) this.at++;
    return this.text[this.at];
  }

  private took(character: string): boolean {
    const isNext = this.peek() === character;
    if (isNext) this.at++;
    return isNext;
  }

  private wordHere(): string | undefined {
    WORD.lastIndex = this.at;
    return WORD.exec(this.text)?.[0];
  }

  /** What is usually meant where JSON does not allow what stands here. */
  private hint(): string {
    const character = this.text[this.at];
    if (character === undefined) return ' The file is cut off.';
    if (character === '/' || character === '#') return ' JSON has no comments; "notes" is the place for them.';
    if (character === '}' || character === ']') return ' A comma before it is one too many.';
    if (character === "'") return ' Texts stand in double quotes.';
    if (/[.+]/.test(character)) return ' A number begins with a digit, or with a minus and a digit.';
    if (/[-\d]/.test(character)) return ' A number with a decimal comma or a unit stands in double quotes: "2,5 kPa".';
    return '';
  }

  private reportTwice(): void {
    const path = this.path.join('.') || 'file';
    const message = `${JSON.stringify(this.path[this.path.length - 1])} is given twice. Keep one.`;
    this.issues.push({ severity: 'error', path, message, found: 'a second value', expected: 'one value' });
  }

  private fault(message: string): Fault {
    return new Fault(message, this.at);
  }
}
