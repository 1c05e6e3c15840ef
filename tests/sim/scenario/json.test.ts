import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { readJson } from '../../../src/sim/scenario/json.ts';

describe('readJson', () => {
  it('reads what the built-in reader reads, to the same value', () => {
    fc.assert(
      fc.property(fc.jsonValue({ maxDepth: 5 }), fc.integer({ min: 0, max: 3 }), (value, indent) => {
        const text = JSON.stringify(value, undefined, indent);
        expect(readJson(text)).toEqual({ value: JSON.parse(text), issues: [] });
      }),
      { numRuns: 2000 },
    );
  });

  it('refuses what the built-in reader refuses', () => {
    const pieces = [
      '{',
      '}',
      '[',
      ']',
      ',',
      ':',
      '"a"',
      '"b"',
      '1',
      '-2.5e3',
      '01',
      '.5',
      'true',
      'nul',
      "'",
      '\n',
      ' ',
      '\\',
    ];
    const text = fc.array(fc.constantFrom(...pieces), { maxLength: 12 }).map((parts) => parts.join(''));
    const canBeParsed = (source: string): boolean => {
      try {
        JSON.parse(source);
        return true;
      } catch {
        return false;
      }
    };
    fc.assert(
      fc.property(text, (source) => {
        expect(readJson(source).value !== undefined, source).toBe(canBeParsed(source));
      }),
      { numRuns: 5000 },
    );
  });

  it.each([
    ['{\n  "a": 1,\n  "b" 2\n}', 3, 7, 'expected ":" after the key "b", found "2".'],
    ['{\r\n "a": 1,\r\n}', 3, 1, 'A comma before it is one too many.'],
    ['{ "a": 1\n  "b": 2 }', 2, 3, 'expected "," or "}"'],
    ['[1, 2', 1, 6, 'found the end of the file'],
    ['{ "a": 2,5 }', 1, 10, 'A number with a decimal comma or a unit stands in double quotes'],
    ['// a remark\n{}', 1, 1, 'JSON has no comments'],
    ["{ 'a': 1 }", 1, 3, 'Texts stand in double quotes.'],
    ['{ "a": NaN }', 1, 8, 'expected a value, found NaN.'],
    ['{ "a": .5 }', 1, 8, 'A number begins with a digit'],
    ['{ "a": "b\n" }', 1, 8, 'no closing double quote'],
    ['{ "a": "\\q" }', 1, 8, 'unknown "\\" sequence'],
    ['{} {}', 1, 4, 'expected nothing more'],
    ['', 1, 1, 'The file is cut off.'],
  ])('says where %j is broken', (text, line, column, message) => {
    const { value, issues } = readJson(text);
    expect(value).toBeUndefined();
    expect(issues).toHaveLength(1);
    expect(issues[0].path).toBe(`line ${line}, column ${column}`);
    expect(issues[0].message).toContain(`at line ${line}, column ${column}:`);
    expect(issues[0].message).toContain(message);
  });

  it('reports a key that stands twice, by its path', () => {
    const { value, issues } = readJson('{ "core": { "airDrop": 1, "airDrop": 2 }, "cycle": [{ "a": 1, "a": 1 }] }');
    expect(value).toBeDefined();
    expect(issues.map(({ path }) => path)).toEqual(['core.airDrop', 'cycle.0.a']);
    expect(issues[0].message).toBe('"airDrop" is given twice. Keep one.');
  });

  it('keeps "__proto__" a key like any other', () => {
    const { value } = readJson('{ "__proto__": { "polluted": true } }');
    expect(Object.keys(value as object)).toEqual(['__proto__']);
    expect(Object.getPrototypeOf(value)).toBe(Object.prototype);
    expect(({} as { polluted?: boolean }).polluted).toBeUndefined();
  });

  it('stops at brackets that go too deep instead of running out of stack', () => {
    const { issues } = readJson('['.repeat(200_000));
    expect(issues[0].message).toContain('more than 40 levels of brackets');
  });

  it('skips a byte-order mark', () => {
    expect(readJson('\uFEFF{"a":1}')).toEqual({ value: { a: 1 }, issues: [] });
  });
});
