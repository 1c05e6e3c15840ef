import { describe, expect, it } from 'vitest';
import { runCommandLine } from '../../src/cli/command-line.ts';
import { shortFile } from '../support/car-file.ts';
import { listen } from '../support/said.ts';
import { WITHOUT_PULL } from '../support/short-session.ts';

const CAR = shortFile({
  'limit.chargeTemperature': 60,
  variants: [{ name: 'larger core', changes: { 'core.airConductance': 585 } }],
});
const NO_PULL = shortFile(WITHOUT_PULL);
const BOILING = shortFile({ 'start.coolant': 140 });

const said = listen();

describe('soakbench day', () => {
  it('prints the day, the typed one, the hottest day and what does not follow', async () => {
    expect(await runCommandLine(['day', CAR, '--ambient', '35', '--altitude', '1500', '--humidity', '30'])).toBe(0);
    const lines = said.out.split('\n');
    expect(lines[0]).toMatch(/^35\.0 degC outside, 84\.6 kPa, 30 % humidity: \d of 2 pulls/);
    expect(lines[1]).toMatch(/^As typed, 27\.0 degC outside, 99\.5 kPa, 50 % humidity/);
    expect(lines[2]).toMatch(/^Hottest day with 2 pulls made at 84\.6 kPa, 30 % humidity: -?\d+\.\d degC outside/);
    expect(lines[3]).toContain('coolant 30.0 degC');
    expect(said.out).toContain('An estimate');
  });

  it('gives the same as data, of a variant and a number of pulls', async () => {
    expect(await runCommandLine(['day', CAR, '--variant', 'larger core', '--pulls', '3', '--json'])).toBe(0);
    const { day, typed, pulls, hottest } = JSON.parse(said.out);
    expect(day).toEqual(typed);
    expect(pulls).toBe(3);
    expect(hottest.kind).toBe('found');
    expect(said.out).not.toContain('null');
  });

  it.each([
    [1, 'a run that stops', ['day', BOILING], ''],
    [5, 'a session without a pull', ['day', NO_PULL], 'The cycle has no pull'],
    [3, 'an unknown variant', ['day', CAR, '--variant', 'largest core'], 'There is no variant'],
    [3, 'a temperature out of range', ['day', CAR, '--ambient', '200'], 'got 200; expected -50 to 150 degC'],
    [3, 'an altitude that is no number', ['day', CAR, '--altitude', 'high'], 'got high; expected -500 to 6000 m'],
    [3, 'no pulls', ['day', CAR, '--pulls', '0'], 'got 0; expected a whole number from 1 to 500'],
    [3, 'a day that the file refuses', ['day', CAR, '--ambient', '-40'], 'freez'],
    [4, 'no file', ['day', 'missing.json'], 'Cannot read'],
  ])('ends with %d for %s', async (code, _, args, message) => {
    expect(await runCommandLine(args)).toBe(code);
    expect(said.err).toContain(message);
  });
});

describe('soakbench sensitivity', () => {
  const SHORT = ['sensitivity', CAR, '--runs', '12'];

  it('prints both bands and what to measure next, largest share first, with the ranges and where they come from', async () => {
    expect(await runCommandLine(SHORT)).toBe(0);
    expect(said.out).toMatch(/^Pulls to limit: \d as typed; (\d|\d to \d) in (nine tenths of|all) 12 runs/);
    expect(said.out).toMatch(/^Peak of pull \d: \d+\.\d degC as typed; \d+\.\d degC to \d+\.\d degC in nine tenths/m);
    const rows = [...said.out.matchAll(/^(\S.*?) {2,}(\d+\.\d) +\d+\.\d +\d+\.\d +\S/gm)];
    expect(rows).toHaveLength(8);
    const shares = rows.map(([, , share]) => Number(share));
    expect(shares).toEqual(shares.toSorted((a, b) => b - a));
    const open = Number(/^(\d+\.\d) % of the spread follows no straight line/m.exec(said.out)?.[1]);
    expect(shares.reduce((sum, share) => sum + share, open)).toBeCloseTo(100, 0);
    expect(said.out).toContain('common practice, no published source');
    expect(said.out).not.toMatch(/undefined|NaN/);
  });

  it('gives a row for each run as CSV, as many values as headings', async () => {
    expect(await runCommandLine([...SHORT, '--csv', '--range', 'intake.pickUp=0:20'])).toBe(0);
    const [heading, ...rows] = said.out.trimEnd().split('\r\n');
    expect(heading).toBe(
      'run,"core conductance, air side","core conductance, coolant side",pump free flow,pump shut-off pressure,air speed at the front exchanger,compressor idle power,swallowing exponent,outside temperature [K],intake pick-up [K],pulls,peak [degC]',
    );
    expect(rows).toHaveLength(12);
    for (const row of rows) expect(row.split(',').map(Number).filter(Number.isFinite)).toHaveLength(12);
  });

  it('calls a range of the user as the guide to keys does, with its unit', async () => {
    const own = ['--range', 'intake.pickUp=2:12', '--range', 'lines.afterCore.length=1:3'];
    expect(await runCommandLine([...SHORT, ...own])).toBe(0);
    expect(said.out).toMatch(/^intake pick-up .* 2 to 12 K$/m);
    expect(said.out).toMatch(/^segment length \(lines\.afterCore\.length\) .* 1 to 3 m$/m);
  });

  it('is the same to the byte for the same seed', async () => {
    await runCommandLine([...SHORT, '--seed', '9', '--json']);
    const first = said.out;
    said.out = '';
    await runCommandLine([...SHORT, '--seed', '9', '--json']);
    expect(said.out).toBe(first);
    expect(JSON.parse(said.out).runs).toHaveLength(12);
  });

  it.each([
    [5, 'a car without a pull', ['sensitivity', NO_PULL, '--runs', '12'], 'Nothing to rank'],
    [3, 'too small a sample', ['sensitivity', CAR, '--runs', '9'], 'expected more than 9, for 8 inputs'],
    [3, 'a range upside down', [...SHORT, '--range', 'intake.pickUp=20:0'], 'low below high'],
    [3, 'a range of one number', [...SHORT, '--range', 'intake.pickUp=20'], 'expected path=low:high'],
    [3, 'a range that the file refuses', [...SHORT, '--range', 'intake.pickUp=-9:20'], '-9'],
    [3, 'a key twice', [...SHORT, '--range', 'a=1:2', '--range', 'a=1:2'], 'a is varied twice'],
  ])('ends with %d for %s', async (code, _, args, message) => {
    expect(await runCommandLine(args)).toBe(code);
    expect(said.err).toContain(message);
  });
});
