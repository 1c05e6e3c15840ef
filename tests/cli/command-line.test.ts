import { execFileSync, spawnSync } from 'node:child_process';
import { mkdtempSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { afterAll, describe, expect, it } from 'vitest';
import { runCommandLine } from '../../src/cli/command-line.ts';
import { EXIT } from '../../src/cli/exit-codes.ts';
import { listen } from '../support/said.ts';
import { type Edits, shortDocument } from '../support/short-session.ts';

const FOLDER = mkdtempSync(join(tmpdir(), 'soakbench-'));
afterAll(() => rmSync(FOLDER, { recursive: true }));

function file(name: string, content: string): string {
  const path = join(FOLDER, name);
  writeFileSync(path, content);
  return path;
}
const scenario = (name: string, edits: Edits = {}): string => file(name, JSON.stringify(shortDocument(edits)));

const PULL = { kind: 'pull', duration: 6, engineSpeed: [2500, 6600], exchangerAirSpeed: 2.5, bayAboveAmbient: 25 };
const VARIANTS = [
  { name: 'cool start', changes: { 'start.coolant': 20 } },
  { name: 'larger core', changes: { 'core.airConductance': 585 } },
];
const CAR = scenario('car.json', { variants: VARIANTS });
const BOILING = scenario('boiling.json', {
  'start.coolant': 140,
  variants: [{ name: 'warm', changes: { 'start.coolant': 60 } }],
});
/** Nobody pulls, nobody rests, nothing pumps. */
const PARKED = scenario('parked.json', {
  cycle: [{ kind: 'hot soak', duration: 20, pump: 'off', bayAboveAmbient: 40 }],
});
const BROKEN = scenario('broken.json', { 'core.airConductance': -3, 'engine.displacment': 3, variants: VARIANTS });
const WARNED = scenario('warned.json', { 'limit.chargeTemperature': 20, variants: VARIANTS });

const said = listen();

const run = (...args: string[]): Promise<number> => runCommandLine(args);

type Plain = string | number | boolean | Plain[] | { [key: string]: Plain };
/** Every number, text and key of a report. */
function walk(value: Plain, visit: (leaf: Plain, key: string) => void, key = ''): void {
  if (Array.isArray(value)) for (const each of value) walk(each, visit, key);
  else if (typeof value === 'object' && value !== null) {
    for (const [inner, each] of Object.entries(value)) walk(each, visit, inner);
  } else visit(value, key);
}

describe('exit codes', () => {
  it.each([
    [0, 'a run to its end', ['run', CAR]],
    [0, 'a scenario without errors', ['check', CAR]],
    [0, 'a scenario with warnings only', ['check', WARNED]],
    [0, 'the keys', ['keys']],
    [0, 'routes of the bypass air', ['routes', CAR]],
    [1, 'routes where the run stops first', ['routes', BOILING]],
    [2, 'routes of a broken scenario', ['routes', BROKEN]],
    [3, 'routes of an unknown variant', ['routes', CAR, '--variant', 'nothing like it']],
    [0, 'readings of the gauge', ['agree', CAR, '--gauge', '45,-']],
    [2, 'readings against a broken scenario', ['agree', BROKEN, '--gauge', '45']],
    [3, 'no readings', ['agree', CAR]],
    [3, 'a reading that is no number', ['agree', CAR, '--gauge', '45,warm']],
    [5, 'a reading of a pull that the cycle does not have', ['agree', CAR, '--gauge', '45,46,47']],
    [3, 'a gauge without a step', ['agree', CAR, '--gauge', '45', '--gauge-step', '0']],
    [0, 'a triage', ['triage', CAR, '--rise', '1', '--approach', '20']],
    [1, 'a triage where the run stops first', ['triage', BOILING, '--rise', '1', '--approach', '20']],
    [2, 'a triage of a broken scenario', ['triage', BROKEN, '--rise', '1', '--approach', '20']],
    [3, 'a triage by one measurement', ['triage', CAR, '--rise', '1']],
    [3, 'a doubt of nothing', ['triage', CAR, '--rise', '1', '--approach', '20', '--rise-doubt', '0']],
    [0, 'cars side by side', ['compare', CAR, '--variants', 'cool start']],
    [1, 'cars of which one stops', ['compare', BOILING, '--variants', 'warm']],
    [2, 'cars of a broken scenario', ['compare', BROKEN, '--variants', 'cool start']],
    [3, 'no cars', ['compare', CAR]],
    [3, 'an unknown car', ['compare', CAR, '--variants', 'cool start,nothing like it']],
    [3, 'five cars', ['compare', CAR, '--variants', 'cool start,cool start,larger core,larger core']],
    [
      3,
      'cars with a time axis that fills the memory',
      ['compare', CAR, '--variants', 'cool start', '--interval', '1e-6'],
    ],
    [5, 'routes without part load', ['routes', PARKED]],
    [5, 'a tank for no pull', ['tank', PARKED]],
    [5, 'a rest after no pull', ['rest', PARKED]],
    [5, 'a rest that no pull repeats', ['rest', scenario('once.json', { cycle: [{ ...PULL }] })]],
    [5, 'a day of no pull', ['day', PARKED]],
    [5, 'the drop at no pull', ['drop', PARKED]],
    [1, 'the drop where the run stops first', ['drop', BOILING]],
    [5, 'a triage without a pull', ['triage', PARKED, '--rise', '1', '--approach', '20']],
    [5, 'a gauge at no pull', ['agree', PARKED, '--gauge', '45']],
    [1, 'a gauge where the run stops first', ['agree', BOILING, '--gauge', '45']],
    [5, 'doubt about no pull', ['sensitivity', PARKED, '--runs', '64']],
    [1, 'doubt where the run stops first', ['sensitivity', BOILING, '--runs', '64']],
    [5, 'a loop that nothing pumps round', ['loop', PARKED]],
    [5, 'a letter about no pull', ['letter', PARKED]],
    [5, 'a core of test points', ['core', CAR]],
    [5, 'upgrades that are not there', ['upgrades', CAR]],
    [0, 'help', ['--help']],
    [1, 'a run that stops', ['run', BOILING]],
    [1, 'a series that stops', ['run', BOILING, '--csv']],
    [2, 'a run of a broken scenario', ['run', BROKEN]],
    [2, 'a check of a broken scenario', ['check', BROKEN]],
    [2, 'a file that is no JSON', ['check', file('cut.json', '{"format": ')]],
    [3, 'an unknown variant', ['run', CAR, '--variant', 'nothing like it']],
    [3, 'an unknown command', ['simulate', CAR]],
    [3, 'no command', []],
    [3, 'no file', ['run']],
    [3, 'an unknown option', ['run', CAR, '--frobnicate']],
    [3, 'two forms of output', ['run', CAR, '--json', '--csv']],
    [3, 'one variant and all', ['run', CAR, '--variant', 'cool start', '--all-variants']],
    [3, 'an interval of nothing', ['run', CAR, '--interval', '0']],
    [3, 'an interval that is no number', ['run', CAR, '--interval', 'often']],
    [3, 'an interval that fills the memory', ['run', CAR, '--interval', '1e-6']],
    [3, 'a tolerance below the range of the file', ['run', CAR, '--tolerance', '1e-9']],
    [3, 'a tolerance above it', ['run', CAR, '--tolerance', '50']],
    [3, 'an unknown group of keys', ['keys', 'wing mirror']],
    [4, 'a file that is not there', ['run', join(FOLDER, 'missing.json')]],
    [4, 'a folder', ['check', FOLDER]],
  ])('%d for %s', async (code, _, args) => {
    expect(await run(...args)).toBe(code);
  });
});

describe('the codes', () => {
  it('are told in help, each that there is', async () => {
    await run('--help');
    const told = [...said.out.matchAll(/^ {2}(\d+) {2}\S/gm)].map(([, code]) => Number(code));
    expect(told).toEqual(Object.values(EXIT));
  });
});

describe('messages', () => {
  it.each([
    ['a file that is not there', ['run', join(FOLDER, 'missing.json')], /^Cannot read .*missing\.json: ENOENT/],
    [
      'an unknown variant',
      ['run', CAR, '--variant', 'nothing like it'],
      /There is no variant "nothing like it"\. The file has "cool start" or "larger core"\./,
    ],
    ['a mistyped variant', ['run', CAR, '--variant', 'larger cor'], /Did you mean "larger core"\?/],
    ['a value out of range', ['run', BROKEN], /core\.airConductance: .*-3.*expected 10 to 20000 W\/K/],
    ['an unknown key', ['run', BROKEN], /"displacment" is not a key of engine\. Did you mean "displacement"\?/],
    ['an unknown group', ['keys', 'wing mirror'], /No group of keys is called wing mirror; there are: .*Pump/],
    ['an unknown command', ['simulate'], /unknown command 'simulate'/],
    [
      'a short interval',
      ['run', CAR, '--interval', '1e-6'],
      /--interval 0\.000001 s over 71 s records 7\.1e\+7 rows; expected at least 0\.000071 s/,
    ],
    ['no coolant temperature', ['loop', CAR, '--at', ''], /'--at <degC>'.* got nothing; expected -50 to 150 degC\./],
    ['no day', ['day', CAR, '--ambient', ' '], /got nothing; expected -50 to 150 degC\./],
    ['no altitude', ['day', CAR, '--altitude', ''], /got nothing; expected -500 to 6000 m\./],
    ['no humidity', ['day', CAR, '--humidity', ''], /got nothing; expected 0 to 100 %\./],
    ['no interval', ['run', CAR, '--interval', ''], /got nothing; expected 0\.000001 to 1000000 s\./],
    ['no tolerance', ['run', CAR, '--tolerance', ''], /got nothing; expected 0\.000001 to 5 K\./],
    ['no number of pulls', ['tank', CAR, '--pulls', ''], /got nothing; expected a whole number from 1 to 500\./],
    ['a coolant temperature in another quantity', ['loop', CAR, '--at', '60 kPa'], /got 60 kPa; expected -50 to 150/],
    ['a loose tolerance', ['run', CAR, '--tolerance', '50'], /got 50; expected 0\.000001 to 5 K/],
  ])('on %s', async (_, args, message) => {
    await run(...args);
    expect(said.err).toMatch(message);
    expect(said.out).toBe('');
  });

  it('says each issue once, those of the variants with the file', async () => {
    await run('run', WARNED, '--all-variants');
    expect(said.err.match(/Outside air at 27 degC is above the limit/g)).toHaveLength(1);
    await run('check', WARNED);
    expect(said.out).toContain('0 errors, 1 warning, 2 variants');
  });

  it('lists all errors of a file at once', async () => {
    await run('check', BROKEN);
    expect(said.out).toContain('2 errors, 0 warnings');
    expect(said.err).toContain('core.airConductance');
    expect(said.err).toContain('engine.displacment');
  });

  it('gives the issues as JSON on demand', async () => {
    await run('check', BROKEN, '--json');
    const { errors, warnings, issues } = JSON.parse(said.out);
    expect([errors, warnings]).toEqual([2, 0]);
    expect(issues.map(({ path }: { path: string }) => path).sort()).toEqual([
      'core.airConductance',
      'engine.displacment',
    ]);
    for (const issue of issues)
      expect(issue).toMatchObject({ severity: 'error', message: expect.stringMatching(/[.?]$/) });
  });

  it('keys prints all groups or those with a word', async () => {
    await run('keys');
    expect(said.out).toMatch(/^ {2}airConductance +W\/K +required +10 to 20000 /m);
    const all = said.out.split('\n\n').length;
    said.out = '';
    await run('keys', 'sensor');
    expect(said.out.split('\n\n').map((group) => group.split(':')[0])).toEqual(['Charge sensor']);
    expect(all).toBeGreaterThan(15);
  });
});

describe('a number', () => {
  it('may be typed in a unit of its own', async () => {
    expect(await run('loop', CAR, '--at', '140 F')).toBe(0);
    const fahrenheit = said.out;
    said.out = '';
    expect(await run('loop', CAR, '--at', '60')).toBe(0);
    expect(fahrenheit).toContain('coolant at 60 degC');
    expect(fahrenheit).toBe(said.out);
  });
});

describe('the routes of the bypass air', () => {
  it('are a table of both, sentences of why, and where they turn', async () => {
    expect(await run('routes', CAR, '--variant', 'cool start')).toBe(0);
    expect(said.out).toMatch(/Recirculated air, at the end of idle \(15 s\):\n +before core +after core\n/);
    for (const row of ['compressor inlet, degC', 'discharge, degC', 'casing, degC', 'charge, degC']) {
      expect(said.out).toMatch(new RegExp(`^  ${row} +\\d+\\.\\d +\\d+\\.\\d$`, 'm'));
    }
    expect(said.out).toContain('Taken behind the core, the recirculated air makes the charge');
    expect(said.out).toMatch(/^ {2}plenum heat +x0 [+-]\d\.\d\d/m);
    expect(said.out).toMatch(/bypass drop +x0\.1 \(r \d\.\d\d\)/);
  });

  it('are JSON where asked for, the same numbers', async () => {
    await run('routes', CAR, '--json');
    const { comparison, turns } = JSON.parse(said.out);
    expect(comparison.before.route).toBe('before core');
    expect(turns).toHaveLength(6);
    said.out = '';
    await run('routes', CAR);
    const change = comparison.after.charge - comparison.before.charge;
    expect(said.out).toContain(`x1 ${change < 0 ? '' : '+'}${change.toFixed(2)}`);
  });
});

describe('a variant against the file as it stands', () => {
  it('says what its charge does to gauge, mass and drive power', async () => {
    await run('run', CAR, '--variant', 'larger core');
    expect(said.out).toMatch(
      /Against the file as it stands, first pull\. Charge \d+\.\d K cooler .* the boost gauge falls by/,
    );
    said.out = '';
    await run('run', CAR);
    expect(said.out).not.toContain('Against the file');
  });
});

describe('the answer as JSON', () => {
  async function report(...args: string[]) {
    expect(await run('run', CAR, '--json', ...args)).toBe(0);
    return JSON.parse(said.out);
  }

  it('holds finite numbers, texts and booleans, never null, under keys in snake case with their unit', async () => {
    const answer = await report();
    expect(said.out).not.toContain('null');
    walk(answer, (leaf, key) => {
      if (typeof leaf === 'number') expect(Number.isFinite(leaf), key).toBe(true);
      else expect(['string', 'boolean'], key).toContain(typeof leaf);
    });
    const keys = said.out.match(/"[^"]+":/g) ?? [];
    expect(keys.length).toBeGreaterThan(80);
    const units = 'degC|K|kJ|kW|kPa|kg_s|L_min|s';
    for (const key of keys) expect(key).toMatch(new RegExp(`^"[a-z][a-z0-9]*(_[a-z0-9]+)*(_(${units}))*":$`));
  });

  it('lists energies that add up to what is stored', async () => {
    const { energy_kJ, energy_worst_step_gap } = await report();
    const { stored, ...terms } = energy_kJ as Record<string, number>;
    const values = Object.values(terms);
    const moved = values.reduce((sum, value) => sum + Math.abs(value), 0);
    expect(values).toHaveLength(14);
    expect(Math.abs(values.reduce((sum, value) => sum + value, 0) - stored) / moved).toBeLessThan(1e-6);
    expect(energy_worst_step_gap).toBeLessThan(1e-9);
  });

  it('is the same to the byte on every run, and knows no clock', async () => {
    await report();
    const first = said.out;
    said.out = '';
    await report();
    expect(said.out).toBe(first);
    expect(said.err).toMatch(/solved in \d+ ms/);
    expect(said.out).not.toMatch(/\bms\b|_ms"|elapsed/);
  });

  it('leaves out what did not happen', async () => {
    await run('run', scenario('cool.json', { 'limit.chargeTemperature': 120 }), '--json');
    const { pulls_to_limit: met } = JSON.parse(said.out);
    expect(met.count).toBe(2);
    expect(met).not.toHaveProperty('breaking_pull');
    expect(met).not.toHaveProperty('first_pull_over_limit_when_repeated');
    said.out = '';
    await run('run', BOILING, '--json');
    const stopped = JSON.parse(said.out);
    expect(said.out).not.toContain('null');
    expect(stopped).toMatchObject({
      outcome: 'stopped',
      stopped_at_s: 0,
      stopped_because: expect.stringMatching(/^coolant boils everywhere in the loop: 140\.0 degC reached/),
      pulls: [],
      pulls_to_limit: { count: 0, pulls_run: 0, settled: 'no repeated pulls' },
    });
  });

  it('comes for a run without a single row', async () => {
    const path = scenario('impossible.json', { 'cycle.0.manifoldPressure': 99.5, 'compressor.driveRatio': 0.5 });
    expect(await run('run', path, '--json')).toBe(1);
    expect(said.out).not.toContain('null');
    expect(JSON.parse(said.out)).toMatchObject({ outcome: 'stopped', stopped_at_s: 0, energy_kJ: { stored: 0 } });
    said.out = '';
    expect(await run('run', path)).toBe(1);
    expect(said.out).toContain('STOP   The run stopped at 0.0 s: a manifold pressure of 99.5 kPa cannot be reached');
  });

  it('takes one variant, or the file and all its variants in their order', async () => {
    const all = await report('--all-variants');
    expect(all.map(({ variant }: { variant?: string }) => variant)).toEqual([undefined, 'cool start', 'larger core']);
    said.out = '';
    const one = await report('--variant', 'larger core');
    expect(one).toEqual(all[2]);
    expect(one.pulls[0].peak_degC).toBeLessThan(all[0].pulls[0].peak_degC - 0.5);
    expect(all[1].pulls[0].coolant_into_core_degC).toBeLessThan(all[0].pulls[0].coolant_into_core_degC - 5);
  });
});

describe('the answer as text', () => {
  it('shows the numbers of the JSON, rounded', async () => {
    await run('run', CAR, '--json');
    const report = JSON.parse(said.out);
    said.out = '';
    await run('run', CAR);
    const rows = said.out.split('\n').filter((line) => /^ *\d+ +-?\d+\.\d/.test(line));
    expect(rows).toHaveLength(2);
    rows.forEach((row, k) => {
      const pull = report.pulls[k];
      expect(row.trim().split(/ +/)).toEqual([
        String(k + 1),
        pull.peak_degC.toFixed(1),
        pull.indicated_peak_degC.toFixed(1),
        pull.margin_K.toFixed(1),
        pull.coolant_into_core_degC.toFixed(1),
        pull.coolant_out_of_core_degC.toFixed(1),
        pull.air_flow_kg_s.toFixed(4),
        pull.pressure_ratio.toFixed(3),
        pull.manifold_pressure_kPa.toFixed(1),
        pull.discharge_degC.toFixed(1),
        pull.heat_into_core_kJ.toFixed(1),
        pull.drive_power_kW.toFixed(1),
        pull.core_air_drop_kPa.toFixed(2),
      ]);
    });
    for (const [words, key] of [
      ['compressor shaft', 'shaft'],
      ['mechanical loss carried away by the compressor oil', 'mechanical_loss'],
      ['engine metal to the plenum', 'plenum_engine'],
      ['stored: the sum of these', 'stored'],
    ]) {
      expect(said.out).toMatch(
        new RegExp(`^ +${report.energy_kJ[key].toFixed(1).replace('.', '\\.')} {2}${words}$`, 'm'),
      );
    }
    expect(said.out).toContain(`limit ${report.pulls_to_limit.limit_degC.toFixed(1)} degC`);
    expect(said.out).toContain(`Pulls to limit: ${report.pulls_to_limit.count} `);
  });

  it('says when and why a run stopped', async () => {
    await run('run', BOILING);
    expect(said.out).toContain(
      'STOP   The run stopped at 0.0 s (idle): coolant boils everywhere in the loop: 140.0 degC reached',
    );
  });

  it('tells what the JSON tells beside the answer, ranked, every sentence of it', async () => {
    const path = scenario('narrow.json', { 'core.airPortArea': 5, 'core.condensation': 'off' });
    await run('run', path, '--json');
    const { findings } = JSON.parse(said.out);
    expect(findings.map(({ kind }: { kind: string }) => kind)).toEqual([
      'fast air port',
      'condensation left out',
      'pump off',
    ]);
    expect(findings[0]).toMatchObject({ rank: 'check', place: 'air', time_s: expect.any(Number) });
    said.out = '';
    await run('run', path);
    const lines = said.out.split('\n');
    const first = lines.findIndex((line) => line.startsWith('  CHECK'));
    expect(lines[first - 1]).toBe('What else this run tells, gravest first:');
    expect(lines.slice(first, first + findings.length).map((line) => line.trim().replace(/ +/, ' '))).toEqual(
      findings.map(({ rank, text }: { rank: string; text: string }) => `${rank.toUpperCase()} ${text}`),
    );
  });

  it.each([
    ['a run', ['run', CAR]],
    ['a run as JSON', ['run', CAR, '--json']],
    ['the routes', ['routes', CAR]],
    ['a core', ['core', 'scenarios/rolling-road-estate.json', '--variant', 'core by its measures, 120 mm deep']],
  ])('says that it is an estimate: %s', async (_, args) => {
    expect(await run(...args)).toBe(0);
    expect(said.out).toContain("An estimate: keep the engine's own knock and temperature protections active.");
  });

  it('says where the mix freezes, beside the coldest air of any phase', async () => {
    // 40 % of ethylene glycol by volume: first ice at -24 to -27 degC in the tables.
    await run('run', scenario('cold.json', { 'cycle.1.phases.1.outsideTemperature': -3 }));
    expect(said.out).toMatch(/This mix begins to freeze at -2[4-7]\.\d degC; the coldest here is -3\.0 degC/);
  });

  it('has a table in which every column stands under its heading', async () => {
    await run('run', CAR);
    const lines = said.out.split('\n');
    const head = lines.findIndex((line) => line.trim().startsWith('pull '));
    expect(new Set(lines.slice(head, head + 4).map(({ length }) => length)).size).toBe(1);
  });
});

describe('readings of the gauge', () => {
  it('may be in degF, and leave pulls out', async () => {
    await run('agree', CAR, '--gauge', '-,113F', '--gauge-step', '1.8F', '--json');
    const { pulls, gauge_step_K } = JSON.parse(said.out);
    expect(pulls).toMatchObject([{ pull: 2, gauge_degC: expect.closeTo(45, 9) }]);
    expect(pulls[0].model_degC - pulls[0].gauge_degC).toBeCloseTo(pulls[0].miss_K, 9);
    expect(gauge_step_K).toBeCloseTo(1, 9);
  });

  it('stand in a table over the sentence', async () => {
    await run('agree', CAR, '--gauge', '45,47');
    expect(said.out).toMatch(/pull {2}gauge, degC {2}model, degC {2}miss, K .*\n1 {12}45\.0/);
    expect(said.out).toMatch(/At the end of 2 pulls the model reads \d+\.\d K (above|below) the gauge on average/);
  });
});

describe('a triage', () => {
  const measured = ['--rise', '1.8F', '--approach', '36F'];

  it('is a ranked table under what was measured, with the cautions', async () => {
    await run('triage', CAR, ...measured);
    expect(said.out).toMatch(/\nmeasured {2,}1\.0 {2,}20\.0\n/);
    expect(said.out).toMatch(/Measure next: .*\. It would be /);
    expect(said.out).toContain(
      'A low or falling coolant level may mean that the core leaks coolant into the engine: stop',
    );
    expect(said.out).toContain('Never open a hot pressure cap.');
  });

  it('is JSON where asked for, nearest first', async () => {
    await run('triage', CAR, ...measured, '--json');
    const { measured: figures, causes } = JSON.parse(said.out);
    expect(figures).toEqual({
      rise_K: expect.closeTo(1, 9),
      approach_K: expect.closeTo(20, 9),
      rise_doubt_K: 1,
      approach_doubt_K: 3,
    });
    const distances = causes.map(({ distance_in_doubts }: { distance_in_doubts: number }) => distance_in_doubts);
    expect(distances).toHaveLength(8);
    expect(distances).toEqual([...distances].sort((a, b) => a - b));
  });
});

describe('cars side by side', () => {
  const COMMAS = scenario('commas.json', {
    variants: [{ name: 'core, larger', changes: { 'core.airConductance': 585 } }, ...VARIANTS],
  });

  it('stand under what was changed, names with commas among them', async () => {
    await run('compare', COMMAS, '--variants', 'core, larger, cool start');
    expect(said.out).toContain(
      '1  as it stands\n2  core, larger\n     core.airConductance: 390 -> 585 W/K\n3  cool start\n',
    );
    expect(said.out).toMatch(/\npulls to the limit +\d +\d \((0|\+\d)\)/);
    expect(said.out).toMatch(/\npeak of pull 2, degC +\d+\.\d +\d+\.\d \(-\d+\.\d\)/);
  });

  it('are the figures of the runs as JSON, each less the first', async () => {
    await run('run', CAR, '--variant', 'larger core', '--json');
    const { pulls } = JSON.parse(said.out);
    said.out = '';
    await run('compare', CAR, '--variants', 'larger core', '--json', '--interval', '5');
    const [first, second] = JSON.parse(said.out).cars;
    expect(second.peaks_degC[0]).toBeCloseTo(pulls[0].peak_degC, 1);
    expect(second.less_first.peaks_K[0]).toBeCloseTo(second.peaks_degC[0] - first.peaks_degC[0], 9);
    expect(second.coolant_flow_L_min).toBeCloseTo(pulls[0].coolant_flow_L_min, 1);
    expect(second.drive_power_kW).toBeCloseTo(pulls[0].drive_power_kW, 1);
  });

  it('are curves on one time axis as CSV, with the differences', async () => {
    await run('compare', COMMAS, '--variants', 'core, larger', '--csv', '--interval', '0.5');
    const [heading, ...rows] = said.out.trimEnd().split('\r\n');
    expect(heading).toBe(
      'time [s],"charge temperature, as it stands [degC]","charge temperature, core, larger [degC]","charge temperature, core, larger less as it stands [K]"',
    );
    expect(rows).toHaveLength(143);
    for (const row of rows) {
      const [, first, second, difference] = row.split(',').map(Number);
      expect(difference).toBeCloseTo(second - first, 6);
    }
  });
});

describe('a loop at another temperature', () => {
  it('is at the temperature in degC that was asked for', async () => {
    await run('loop', CAR, '--at', '60');
    expect(said.out).toContain('coolant at 60 degC');
  });
});

describe('the series as CSV', () => {
  it('has a heading with units and rows of finite numbers, at least every interval', async () => {
    expect(await run('run', CAR, '--csv', '--interval', '0.1')).toBe(0);
    const [heading, ...rows] = said.out.trimEnd().split('\r\n');
    const columns = heading.split(',');
    expect(columns[0]).toBe('time [s]');
    expect(columns).toContain('chargeTemperature [degC]');
    expect(columns).toContain('coolantFlow [L/min]');
    expect(rows.length).toBeGreaterThan(71 / 0.1);
    const times = rows.map((row) => {
      const numbers = row.split(',').map(Number);
      expect(numbers).toHaveLength(columns.length);
      expect(numbers.every(Number.isFinite)).toBe(true);
      return numbers[0];
    });
    for (let k = 1; k < times.length; k++) expect(times[k] - times[k - 1]).toBeLessThan(0.1 + 1e-6);
    expect(times[times.length - 1]).toBe(71);
  });

  it('keeps the rows up to a stop and says it aside', async () => {
    await run('run', BOILING, '--csv');
    expect(said.out.trimEnd().split('\r\n')).toHaveLength(2);
    expect(said.err).toMatch(/stopped at 0\.0 s: coolant boils/);
  });
});

describe('as a process', () => {
  const MAIN = new URL('../../src/cli/main.ts', import.meta.url).pathname;
  const program = ['--import', 'tsx', MAIN];
  const input = JSON.stringify(shortDocument());

  it('reads standard input where the file is -', () => {
    const { status, stdout } = spawnSync(process.execPath, [...program, 'run', '-', '--json'], {
      input,
      encoding: 'utf8',
    });
    expect(status).toBe(0);
    expect(JSON.parse(stdout)).toMatchObject({ outcome: 'finished', pulls_to_limit: { pulls_run: 2 } });
  });

  it('hands its exit code on', () => {
    expect(spawnSync(process.execPath, [...program, 'run', BOILING, '--json']).status).toBe(1);
  });

  it('ends quietly where its reader has seen enough', () => {
    const command = `"${process.execPath}" ${program.join(' ')} run "${CAR}" --csv --interval 0.02 2>/dev/null | head -1`;
    expect(execFileSync('bash', ['-c', `set -o pipefail; ${command}; echo "code $?"`], { encoding: 'utf8' })).toMatch(
      /^time \[s\].*\r\ncode 0\n$/,
    );
  });
});
