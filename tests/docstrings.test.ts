import { readdirSync, readFileSync } from 'node:fs';
import { describe, expect, test } from 'vitest';

const FOLDER = new URL('../src/sim/correlations/', import.meta.url);

/** Marks and weights, not formulas: nothing in them was published. */
const NO_FORMULAS = new Set(['range-mark.ts', 'distribution-weights.ts']);

interface DocumentedFunction {
  readonly file: string;
  readonly name: string;
  readonly parameters: readonly string[];
  readonly docstring: string;
}

/** Every exported function of the folder with the comment directly above it; '' where there is none. */
function documentedFunctions(): DocumentedFunction[] {
  return readdirSync(FOLDER)
    .filter((file) => file.endsWith('.ts') && !NO_FORMULAS.has(file))
    .flatMap((file) => {
      const source = readFileSync(new URL(file, FOLDER), 'utf8');
      return [...source.matchAll(/^export function (\w+)\(([^)]*)\)/gm)].map((match) => ({
        file,
        name: match[1],
        parameters: match[2]
          .split(',')
          .map((parameter) => parameter.split(/[?:]/)[0].trim())
          .filter((parameter) => parameter !== ''),
        docstring: /\/\*\*(?:(?!\*\/)[\s\S])*\*\/\n$/.exec(source.slice(0, match.index))?.[0] ?? '',
      }));
    });
}

/** The example on one line, however many it is written on. */
function exampleOf(lines: readonly string[]): string {
  const first = lines.indexOf('@example') + 1;
  const last = lines.findIndex((line, k) => k >= first && (line === '' || / \/\/ -?\d/.test(line)));
  return lines
    .slice(first, lines[last] === '' ? last : last + 1)
    .map((line) => line.trim())
    .join(' ')
    .replace('( {', '({');
}

/** Numbers, texts and plain objects as they are written in code. */
function argumentsOf(written: string): unknown[] {
  return JSON.parse(`[${written.replace(/'/g, '"').replace(/([{,]\s*)(\w+):/g, '$1"$2":')}]`);
}

const UNIT = /\[[^\]]+\]/;

describe.each(documentedFunctions())('$name in $file', ({ file, name, parameters, docstring }) => {
  const lines = docstring.split('\n').map((line) => line.replace(/^ *\* ?/, ''));

  test('names every parameter in order, each with its unit', () => {
    const documented = lines.filter((line) => line.startsWith('@param '));
    expect(documented.map((line) => line.split(' ')[1])).toEqual(parameters);
    for (const line of documented) expect(line).toMatch(UNIT);
  });

  test('says its range, the unit of its result and a dated source', () => {
    expect(lines.some((line) => line.startsWith('Range: '))).toBe(true);
    expect(lines.find((line) => line.startsWith('@returns '))).toMatch(UNIT);
    expect(docstring).toMatch(/\[1\][^[]*\b(1[6-9]|20)\d\d\b/);
  });

  test('has an example that holds to its last digit', async () => {
    const line = exampleOf(lines);
    const worked = /^see (tests\/\S+\.test\.ts)$/.exec(line);
    if (worked) {
      // A function of a whole core has too many inputs for a line; the test it names works one through.
      expect(readFileSync(new URL(`../${worked[1]}`, import.meta.url), 'utf8')).toContain(`${name}(`);
      return;
    }
    const example = /^(\w+)\((.*)\)((?:\.\w+)*) \/\/ (-?\d+(?:\.(\d+))?)$/.exec(line);
    expect(example, line).not.toBeNull();
    const [, called, written, path, result, decimals = ''] = example as RegExpExecArray;
    expect(called).toBe(name);
    const module = await import(new URL(file, FOLDER).href);
    const value: number = path
      .split('.')
      .filter((key) => key !== '')
      .reduce((whole, key) => whole[key], module[called](...argumentsOf(written)));
    expect(Math.abs(value - Number(result))).toBeLessThanOrEqual(0.5000001 * 10 ** -decimals.length);
  });
});

test('there are correlations to read', () => {
  expect(documentedFunctions().length).toBeGreaterThanOrEqual(4);
});
