import { type ChildProcess, execFileSync, spawn, spawnSync } from 'node:child_process';
import { once } from 'node:events';
import { appendFileSync, existsSync, mkdtempSync, readFileSync, rmSync, truncateSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { build } from 'vite';
import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import { shortDocument } from '../support/short-session.ts';

const ROOT = new URL('../..', import.meta.url).pathname;
const FOLDER = mkdtempSync(join(tmpdir(), 'soakbench-sweep-'));
const PROGRAM = join(FOLDER, 'cli', 'soakbench.mjs');
const CAR = join(FOLDER, 'car.json');
const GRID = ['--vary', 'core.airConductance=300:600:4', '--vary', 'pump.freeFlow=20,30,-1'];
const CASES = 12;

beforeAll(async () => {
  writeFileSync(CAR, JSON.stringify(shortDocument({ 'limit.chargeTemperature': 60, 'cycle.1.repeat': 1 })));
  writeFileSync(join(FOLDER, 'package.json'), '{ "type": "module" }');
  const configFile = join(ROOT, 'src/cli/vite.config.ts');
  await build({ configFile, logLevel: 'error', build: { outDir: join(FOLDER, 'cli') } });
});
afterAll(() => rmSync(FOLDER, { recursive: true }));

const argsOf = (...more: string[]): string[] => [PROGRAM, 'sweep', CAR, ...more];
const fileOf = (name: string): string => join(FOLDER, name);

function sweep(...more: string[]) {
  return spawnSync(process.execPath, argsOf(...more), { encoding: 'utf8' });
}

const linesOf = (text: string): string[] => text.split('\n').filter((line) => line !== '');
const linesIn = (path: string): string[] => (existsSync(path) ? linesOf(readFileSync(path, 'utf8')) : []);
const caseOf = (line: string): number => JSON.parse(line).case;
/** Lines by their case number, each end of line in place. */
const sorted = (lines: readonly string[]): string =>
  lines
    .toSorted((a, b) => caseOf(a) - caseOf(b))
    .map((line) => `${line}\n`)
    .join('');

/** Waits until a file has so many whole lines, or the program has ended. */
async function untilLines(path: string, count: number, child: ChildProcess): Promise<void> {
  while (child.exitCode === null && linesIn(path).length < count) await new Promise((go) => setTimeout(go, 5));
}

describe('soakbench sweep', () => {
  let whole = '';
  beforeAll(() => {
    whole = sorted(linesOf(sweep(...GRID, '--workers', '1').stdout));
  });

  it('prints a line for each case, refused ones with their message', () => {
    const lines = linesOf(whole).map((line) => JSON.parse(line));
    expect(lines.map((line) => line.case)).toEqual(Array.from({ length: CASES }, (_, k) => k));
    for (const line of lines) {
      const isRefused = line.changes['pump.freeFlow'] === -1;
      if (isRefused) expect(line.refused[0]).toContain('Free flow of the pump is -1 L/min');
      else expect(line).toMatchObject({ outcome: 'finished', pulls_run: 1, pulls: expect.any(Number) });
      expect('refused' in line).toBe(isRefused);
    }
  });

  it('has the same bytes, sorted, for two workers and for two parts', () => {
    const [both, first, second] = ['both', 'first', 'second'].map((name) => fileOf(`${name}.jsonl`));
    expect(sweep(...GRID, '--workers', '2', '--out', both).status).toBe(0);
    expect(sorted(linesIn(both))).toBe(whole);
    sweep(...GRID, '--shard', '1/2', '--out', first);
    sweep(...GRID, '--shard', '2/2', '--out', second);
    expect(
      [first, second].map((path) =>
        linesIn(path)
          .map(caseOf)
          .toSorted((a, b) => a - b),
      ),
    ).toEqual([
      [0, 2, 4, 6, 8, 10],
      [1, 3, 5, 7, 9, 11],
    ]);
    expect(sorted([...linesIn(first), ...linesIn(second)])).toBe(whole);
  });

  it('runs unbuilt in threads too', () => {
    const main = join(ROOT, 'src/cli/main.ts');
    const args = ['--import', 'tsx', main, 'sweep', CAR, ...GRID, '--workers', '2'];
    expect(sorted(linesOf(spawnSync(process.execPath, args, { encoding: 'utf8', cwd: ROOT }).stdout))).toBe(whole);
  });

  it('goes on after a kill without a case twice', async () => {
    const path = fileOf('killed.jsonl');
    const grid = ['--vary', 'core.airConductance=300:600:80'];
    const child = spawn(process.execPath, argsOf(...grid, '--workers', '2', '--out', path), { stdio: 'ignore' });
    await untilLines(path, 3, child);
    child.kill('SIGKILL');
    await once(child, 'exit');
    const kept = linesIn(path);
    expect(kept.length).toBeGreaterThanOrEqual(3);
    expect(kept.length).toBeLessThan(80);
    expect(sweep(...grid, '--out', path).status).toBe(0);
    expect(linesIn(path).slice(0, kept.length)).toEqual(kept);
    expect(sorted(linesIn(path))).toBe(sorted(linesOf(sweep(...grid).stdout)));
    expect(linesIn(path)).toHaveLength(80);
  });

  it('cuts off a torn last line and runs that case again', () => {
    const path = fileOf('torn.jsonl');
    writeFileSync(path, whole);
    truncateSync(path, whole.length - 20);
    expect(sweep(...GRID, '--out', path).status).toBe(0);
    expect(readFileSync(path, 'utf8')).toBe(whole);
  });

  it('has nothing to do where all is done, and leaves the file as it is', () => {
    const path = fileOf('done.jsonl');
    writeFileSync(path, whole);
    expect(sweep(...GRID, '--out', path).status).toBe(0);
    expect(readFileSync(path, 'utf8')).toBe(whole);
  });

  it('ends on Ctrl-C with its lines kept', async () => {
    const path = fileOf('interrupted.jsonl');
    const long = ['--vary', 'core.airConductance=300:600:2000'];
    const child = spawn(process.execPath, argsOf(...long, '--out', path), { stdio: ['ignore', 'ignore', 'pipe'] });
    let said = '';
    child.stderr.on('data', (text) => {
      said += text;
    });
    await untilLines(path, 2, child);
    child.kill('SIGINT');
    const [code] = await once(child, 'close');
    expect(code).toBe(130);
    const text = readFileSync(path, 'utf8');
    expect(text.endsWith('\n')).toBe(true);
    expect(linesIn(path).map(caseOf).length).toBeGreaterThanOrEqual(2);
    expect(said).toMatch(/\d+ of 2000 cases to go/);
  });

  it('draws a sample that a seed shifts', () => {
    const ranges = ['--vary', 'core.airConductance=300:600', '--vary', 'pump.freeFlow=20:30', '--sample', '3'];
    const [one, same, other] = ['1', '1', '2'].map((seed) => sorted(linesOf(sweep(...ranges, '--seed', seed).stdout)));
    expect(linesOf(one)).toHaveLength(3);
    expect(same).toBe(one);
    expect(other).not.toBe(one);
  });

  it.each([
    ['no count', ['--vary', 'pump.freeFlow=20:30'], 'pump.freeFlow: expected from:to:count, or --sample'],
    ['a list for a sample', ['--vary', 'pump.freeFlow=20,30', '--sample', '4'], 'draws from a range'],
    ['a count of one', ['--vary', 'pump.freeFlow=20:30:1'], 'expected a whole number from 2'],
    ['words in a range', ['--vary', 'pump.freeFlow=a:b:3'], 'expected numbers on both sides'],
    ['no values', ['--vary', 'pump.freeFlow'], 'expected path=from:to:count'],
    ['nothing to vary', [], "required option '--vary <path=values>' not specified"],
    ['a part beyond the last', [...GRID, '--shard', '3/2'], 'got 3/2; expected i/n'],
    ['no threads', [...GRID, '--workers', '0'], 'got 0; expected a whole number from 1'],
    ['too many cases', ['--vary', 'a=1:2:2000', '--vary', 'b=1:2:2000'], '4000000 cases; expected 1000000 at most'],
  ])('ends with 3 for %s', (_, args, message) => {
    const { status, stderr } = sweep(...args);
    expect(stderr).toContain(message);
    expect(status).toBe(3);
  });

  it('does not add to a file that is of another sweep, of another car, or of something else', () => {
    const path = fileOf('other.jsonl');
    writeFileSync(path, whole);
    const narrower = sweep(
      '--vary',
      'core.airConductance=300:500:4',
      '--vary',
      'pump.freeFlow=20,30,-1',
      '--out',
      path,
    );
    expect([narrower.status, narrower.stderr]).toEqual([
      3,
      expect.stringContaining('line 4 is of another car or another'),
    ]);
    const shorter = sweep('--vary', 'core.airConductance=300:600:2', '--vary', 'pump.freeFlow=20,30,-1', '--out', path);
    expect([shorter.status, shorter.stderr]).toEqual([
      3,
      expect.stringContaining('line 4 is of another car or another'),
    ]);
    writeFileSync(path, whole.replace(/"car":"\w/, '"car":"z'));
    expect(sweep(...GRID, '--out', path).stderr).toContain('line 1 is of another car');
    writeFileSync(path, whole);
    appendFileSync(path, 'time,charge\n');
    expect(sweep(...GRID, '--out', path).stderr).toContain(`line ${CASES + 1} is no line of a sweep`);
    expect(sweep(...GRID, '--out', FOLDER).status).toBe(4);
  });
});

/** The recipes of the README, made to call this build and this car. */
function recipe(start: string): string {
  const text = readFileSync(join(ROOT, 'README.md'), 'utf8');
  const line = text.split('\n').find((each) => each.trimStart().startsWith(start));
  if (line === undefined) throw new Error(`README.md has no recipe that starts with ${start}`);
  return line
    .trim()
    .replace('node dist/cli/soakbench.mjs', `${process.execPath} ${PROGRAM}`)
    .replace('my-car.json', CAR)
    .replace('core.airConductance=300:600:1000', 'core.airConductance=300:600:8');
}

const succeeds = (command: string): boolean => spawnSync('bash', ['-c', command], { timeout: 5000 }).status === 0;
const hasParallel = succeeds('command -v parallel');
const isSlurmUp = succeeds('command -v sbatch && sinfo -h');

describe('recipes for many machines', () => {
  const alone = (): string => sorted(linesOf(sweep('--vary', 'core.airConductance=300:600:8').stdout));
  function merge(folder: string): string {
    execFileSync('bash', ['-c', recipe('cat part-')], { cwd: folder });
    return readFileSync(join(folder, 'all.jsonl'), 'utf8');
  }

  it.skipIf(!hasParallel)('GNU parallel (Debian package parallel; skipped where it is not installed)', () => {
    const folder = mkdtempSync(join(FOLDER, 'parallel-'));
    execFileSync('bash', ['-c', recipe('parallel ')], { cwd: folder, stdio: 'pipe' });
    expect(merge(folder)).toBe(alone());
  });

  it.skipIf(!isSlurmUp)('Slurm (Debian packages slurm-wlm munge; skipped where no controller answers)', () => {
    const folder = mkdtempSync(join(FOLDER, 'slurm-'));
    execFileSync('bash', ['-c', recipe('sbatch ')], { cwd: folder, stdio: 'pipe' });
    expect(merge(folder)).toBe(alone());
  });
});
