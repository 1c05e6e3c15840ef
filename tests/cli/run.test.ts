import { mkdtempSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { afterAll, describe, expect, it, vi } from 'vitest';
import { runCommandLine } from '../../src/cli/command-line.ts';
import { listen } from '../support/said.ts';
import { type Edits, shortDocument } from '../support/short-session.ts';

const solved = vi.hoisted(() => ({ cores: [] as string[] }));
vi.mock(import('../../src/sim/index.ts'), async (original) => {
  const sim = await original();
  const startRun: typeof sim.startRun = (config, options) => {
    const run = sim.startRun(config, options);
    const finish = () => {
      solved.cores.push(JSON.stringify(config.core));
      return run.finish();
    };
    return Object.assign(Object.create(run), { finish });
  };
  return { ...sim, startRun };
});

const FOLDER = mkdtempSync(join(tmpdir(), 'soakbench-run-'));
afterAll(() => rmSync(FOLDER, { recursive: true }));
const VARIANTS = [
  { name: 'larger core', changes: { 'core.airConductance': 585 } },
  { name: 'smaller core', changes: { 'core.airConductance': 300 } },
];
function car(name: string, edits: Edits = {}): string {
  const path = join(FOLDER, `${name}.json`);
  writeFileSync(path, JSON.stringify(shortDocument({ variants: VARIANTS, ...edits })));
  return path;
}

const said = listen();

describe('soakbench run', () => {
  it('compares variants with one run of the file as it stands', async () => {
    solved.cores = [];
    expect(await runCommandLine(['run', car('car'), '--all-variants'])).toBe(0);
    expect(said.out.match(/Against the file as it stands/g)).toHaveLength(2);
    expect(solved.cores).toHaveLength(3);
    expect(new Set(solved.cores).size).toBe(3);
  });

  it('solves every run of an answer with the tolerance that is asked for', async () => {
    expect(await runCommandLine(['run', car('loose', { 'numerics.tolerance': 5 }), '--variant', 'larger core'])).toBe(
      0,
    );
    const loose = said.out;
    said.out = '';
    expect(await runCommandLine(['run', car('car'), '--variant', 'larger core'])).toBe(0);
    expect(said.out).not.toBe(loose);
    said.out = '';
    expect(await runCommandLine(['run', car('car'), '--variant', 'larger core', '--tolerance', '5'])).toBe(0);
    expect(said.out).toBe(loose);
  });
});
