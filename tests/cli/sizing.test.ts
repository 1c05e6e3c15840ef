import { afterEach, describe, expect, it } from 'vitest';
import { runCommandLine } from '../../src/cli/command-line.ts';
import { shortFile } from '../support/car-file.ts';
import { listen } from '../support/said.ts';

const scenario = (name: string) => new URL(`../../scenarios/${name}.json`, import.meta.url).pathname;
const SALOON = scenario('quarter-mile-saloon');
const ESTATE = scenario('rolling-road-estate');

const said = listen();
afterEach(() => {
  expect(said.out).not.toMatch(/undefined|NaN|Infinity/);
});

describe('soakbench tank', () => {
  it('prints pulls against ice, how much is enough, and how long it lasts', async () => {
    expect(await runCommandLine(['tank', SALOON, '--ice'])).toBe(0);
    expect(said.out).toMatch(/10\.0 kg +4 of 6 +30\.1 degC +58\.\d degC +3 on ice/);
    expect(said.out).toMatch(/For 6 pulls it takes 1\d\.\d kg of ice; the car has 10\.0 kg\./);
  });

  it('prints litres, as data and as CSV too', async () => {
    expect(await runCommandLine(['tank', ESTATE, '--pulls', '2', '--json'])).toBe(0);
    expect(JSON.parse(said.out)).toMatchObject({ kind: 'tank', pulls: 2 });
    said.out = '';
    expect(await runCommandLine(['tank', ESTATE, '--pulls', '2', '--csv'])).toBe(0);
    expect(said.out.split('\r\n')[0]).toBe('tank [m3],pulls [-],first peak [K],last peak [K],pulls on ice [-]');
    expect(said.out.split('\r\n')).toHaveLength(12);
  });

  it('wants a whole number of pulls', async () => {
    expect(await runCommandLine(['tank', ESTATE, '--pulls', '0.5'])).toBe(3);
  });
});

describe('soakbench rest', () => {
  it('says how long to rest, and the recovery', async () => {
    expect(await runCommandLine(['rest', ESTATE, '--variant', 'bigger core'])).toBe(0);
    expect(said.out).toMatch(
      /For 8 pulls it takes 4\d\.\d s of rest between them; with the 90\.0 s of the cycle it is 8 of 8\./,
    );
    expect(said.out).toMatch(/\d+\.0 s after the first pull the coolant is back within 3\.0 K/);
  });
});

describe('soakbench drop', () => {
  it('sets the car beside one without drop, with twice it and without a core', async () => {
    expect(await runCommandLine(['drop', ESTATE])).toBe(0);
    expect(said.out).toMatch(/core pressure drop, kPa +7\.68 +0\.00 +15\.\d\d +0\.00/);
    expect(said.out).toContain('The pulley makes the compressor work against it');
    said.out = '';
    expect(await runCommandLine(['drop', ESTATE, '--json'])).toBe(0);
    expect(JSON.parse(said.out).asItIs.drop).toBeGreaterThan(7000);
    expect(said.err).toBe('');
  });
});

describe('JSON', () => {
  it('leaves out what a run does not come to', async () => {
    // Boils in its first pull, whatever the tank.
    expect(await runCommandLine(['tank', shortFile({ 'start.coolant': 140 }), '--json'])).toBe(0);
    const { points } = JSON.parse(said.out);
    expect(points[0]).toMatchObject({ count: 0, pullsOnIce: 0 });
    expect(Object.keys(points[0])).toEqual(['size', 'count', 'pullsOnIce', 'stoppedBecause']);
    expect(said.out).not.toContain('null');
  });
});
