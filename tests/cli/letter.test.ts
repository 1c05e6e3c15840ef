import { describe, expect, it } from 'vitest';
import { runCommandLine } from '../../src/cli/command-line.ts';
import { boilingDocument } from '../support/boiling.ts';
import { carFile, shortFile } from '../support/car-file.ts';
import { listen } from '../support/said.ts';
import { WITHOUT_PULL } from '../support/short-session.ts';

const ESTATE = new URL('../../scenarios/rolling-road-estate.json', import.meta.url).pathname;

const said = listen();

describe('soakbench letter', () => {
  it('prints question, answer, counts and every part, with the steps of the file and the hottest day', async () => {
    expect(await runCommandLine(['letter', ESTATE, '--change', 'bigger core'])).toBe(0);
    const text = said.out.replaceAll('\n', ' ');
    expect(text).toMatch(/Will the car with bigger core keep the charge at or under 58\.0 degC through 8 back-to-back/);
    expect(text).toMatch(/Yes\. The car as it stands goes over 58\.0 degC in pull 1; .* stays under in all 8/);
    for (const heading of ['Why', 'What the log will show', 'What each step would buy', 'What it takes in return'])
      expect(said.out).toContain(`\n${heading}\n`);
    expect(text).toMatch(
      /Each by itself: bigger core: 8 pulls .* One after the other: .* The shop's prices, and hours to fit:/,
    );
    expect(text).toMatch(/Hottest day with 8 pulls made: 30\.\d degC outside/);
    expect(said.out.split('\n').every((line) => line.length <= 100)).toBe(true);
    expect(said.out).not.toMatch(/undefined|NaN|Infinity/);
  });

  it('has no answer, no hottest day and another exit code where the run stops', async () => {
    expect(await runCommandLine(['letter', carFile(boilingDocument())])).toBe(1);
    const text = said.out.replaceAll('\n', ' ');
    expect(text).toContain('through 4 back-to-back pulls of 30 s');
    expect(text).toMatch(/ No answer: the run stops at \d+\.\d s \(pull 4\), because coolant boils in the core/);
    expect(text).toContain('No count as it stands. Pulls that came to their end: 3.');
    expect(text).not.toMatch(/Yes|Hottest day|What holds/);
  });

  it('has nothing to tell of upgrades and doubt in a session without a pull', async () => {
    const upgrades = [{ name: 'cooler intake', price: 10, changes: { 'intake.pickUp': 0 } }];
    expect(await runCommandLine(['letter', shortFile({ upgrades, ...WITHOUT_PULL })])).toBe(5);
    expect(said.out).toContain('There is no pull in this session: nothing to answer.');
    expect(said.out).not.toMatch(/cooler intake|count is the same/);
  });

  it('as data has the same parts, and an unknown change is refused by name', async () => {
    expect(await runCommandLine(['letter', ESTATE, '--json'])).toBe(0);
    const { counts, parts } = JSON.parse(said.out);
    expect(counts).toMatchObject([{ label: 'as it stands', count: 0, of: 8 }]);
    expect(parts.map(({ part }: { part: string }) => part)).toEqual([
      'why',
      'log',
      'steps',
      'doubt',
      'cautions',
      'notes',
    ]);
    expect(await runCommandLine(['letter', ESTATE, '--change', 'biger core'])).toBe(3);
    expect(said.err).toContain('bigger core');
  });
});
