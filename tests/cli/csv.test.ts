import { describe, expect, it } from 'vitest';
import { runCommandLine } from '../../src/cli/command-line.ts';
import { csvOf } from '../../src/cli/csv.ts';
import { listen } from '../support/said.ts';

const ESTATE = new URL('../../scenarios/rolling-road-estate.json', import.meta.url).pathname;
const said = listen();

describe('rows as comma-separated text', () => {
  // RFC 4180: cells with commas, quotes or line ends are quoted, quotes doubled; every row ends with CR LF.
  it('quotes what must be, keeps nine digits, and leaves empty what is no number', () => {
    expect(
      csvOf(
        ['a, b', 'c'],
        [
          ['x"y', 1 / 3],
          [undefined, Number.NaN],
        ],
      ),
    ).toBe('"a, b",c\r\n"x""y",0.333333333\r\n,\r\n');
  });
});

describe('every answer as CSV', () => {
  it.each([
    ['loop', [], 'part,pressure [Pa],flow [m3/s]', 6],
    ['rest', ['--pulls', '2'], 'rest [s],pulls wanted [-],pulls made [-],what it is', 4],
    ['drop', [], 'car,core pressure drop [Pa],', 4],
    ['routes', [], 'route,compressor inlet [K],', 2],
    ['agree', ['--gauge', '57,58'], 'pull [-],gauge [K],model [K],', 2],
    ['triage', ['--rise', '1', '--approach', '30'], 'cause,size [-],rise [K],', 8],
    ['day', ['--pulls', '1'], 'day,outside [K],pressure [Pa],', 2],
  ])('%s', async (command, more, head, least) => {
    expect(await runCommandLine([command, ESTATE, '--csv', ...more])).toBe(0);
    const [first, ...rows] = said.out.trimEnd().split('\r\n');
    expect(first.startsWith(head)).toBe(true);
    expect(rows.length).toBeGreaterThanOrEqual(least);
    const columns = first.split(',').length;
    for (const row of rows) expect(row.match(/("[^"]*"|[^,]*)(,|$)/g)?.length).toBeGreaterThanOrEqual(columns);
    expect(said.out).not.toMatch(/undefined|NaN|Infinity/);
    expect(await runCommandLine([command, ESTATE, '--csv', '--json', ...more])).toBe(3);
  });
});
