import { readdirSync, readFileSync, statSync } from 'node:fs';
import { dirname, join, normalize, relative } from 'node:path';
import { describe, expect, it } from 'vitest';

const ROOT = new URL('..', import.meta.url).pathname;

/** What stands at the top of the tree, and nothing else. */
const TOP_LEVEL = new Set([
  'README.md',
  'DEVELOPERS.md',
  'CHANGELOG.md',
  'LICENSE',
  'package.json',
  'package-lock.json',
  'tsconfig.json',
  'src',
  'workers',
  'tests',
  'scenarios',
]);
const NOT_COMMITTED = new Set(['node_modules', 'dist']);

/** The contract with the model, and its parts. */
const CONFIG = ['src/sim/scenario/config.ts', 'src/sim/scenario/config/'];

/** What every part of the page may import. */
const VIEWER = [
  'src/viewer/',
  'src/sim/index.ts',
  'workers/client.ts',
  'workers/questions.ts',
  'workers/sim-api.ts',
  'preact',
  '@preact/signals',
];

/** Folder or file (longest match wins) and what its imports may begin with; `import type` counts. */
const MAY_IMPORT: Record<string, readonly string[]> = {
  'src/sim/errors.ts': [],
  'src/sim/sentence.ts': [],
  'src/sim/units.ts': [],
  'src/sim/kernels/': ['src/sim/kernels/', 'src/sim/errors.ts'],
  'src/sim/correlations/': ['src/sim/correlations/', 'src/sim/errors.ts'],
  'src/sim/fluids/': ['src/sim/fluids/', 'src/sim/kernels/', 'src/sim/errors.ts'],
  'src/sim/scenario/config.ts': ['src/sim/scenario/config/'],
  'src/sim/scenario/config/': ['src/sim/correlations/core-geometry.ts'],
  'src/sim/scenario/': [
    'src/sim/scenario/',
    'src/sim/units.ts',
    'src/sim/errors.ts',
    'src/sim/fluids/',
    'src/sim/correlations/',
    'src/sim/kernels/',
  ],
  'src/sim/model/': [
    'src/sim/model/',
    'src/sim/kernels/',
    'src/sim/correlations/',
    'src/sim/fluids/',
    'src/sim/errors.ts',
    'src/sim/sentence.ts',
    ...CONFIG,
    'src/sim/solver/stage-system.ts',
  ],
  'src/sim/solver/': ['src/sim/solver/'],
  'src/sim/results/field.ts': ['src/sim/results/', 'src/sim/units.ts', 'ndarray'],
  'src/sim/results/': ['src/sim/results/', 'src/sim/sentence.ts', 'src/sim/units.ts', ...CONFIG],
  'src/sim/answers/': [
    'src/sim/answers/',
    'src/sim/results/',
    'src/sim/simulate.ts',
    'src/sim/errors.ts',
    'src/sim/sentence.ts',
    'src/sim/model/',
    'src/sim/correlations/',
    'src/sim/fluids/',
    'src/sim/units.ts',
    ...CONFIG,
    'src/sim/scenario/core-laws.ts',
    'src/sim/scenario/laws.ts',
    'src/sim/kernels/',
    'src/sim/scenario/issue.ts',
    'src/sim/scenario/other-day.ts',
    'src/sim/scenario/parameters/sources.ts',
    'src/sim/scenario/row-at.ts',
    'src/sim/scenario/scenario.ts',
    'src/sim/scenario/to-config.ts',
    'src/sim/scenario/variants.ts',
  ],
  'src/sim/simulate.ts': ['src/sim/'],
  'src/sim/record-row.ts': ['src/sim/model/', 'src/sim/results/', 'src/sim/solver/'],
  'src/sim/index.ts': ['src/sim/'],
  'workers/': ['workers/', 'src/sim/index.ts', 'comlink'],
  'src/viewer/vite.config.ts': ['vite'],
  'src/viewer/colour-scale.ts': ['src/viewer/', 'src/sim/index.ts', 'd3-scale-chromatic'],
  'src/viewer/view-settings.ts': [...VIEWER, 'lil-gui', 'node_modules/lil-gui/'],
  'src/viewer/scene/': [...VIEWER, 'three'],
  'src/viewer/plots/': [...VIEWER, 'uplot'],
  'src/viewer/files/': [...VIEWER, 'scenarios/'],
  'src/viewer/': VIEWER,
  'src/cli/vite.config.ts': ['vite'],
  'src/cli/threads.ts': ['src/cli/', 'src/sim/index.ts', 'node:', 'tinypool'],
  'src/cli/': ['src/cli/', 'src/sim/index.ts', 'node:', 'commander'],
};

function sourceFiles(folder: string): string[] {
  return readdirSync(folder).flatMap((name) => {
    const path = join(folder, name);
    if (statSync(path).isDirectory()) return sourceFiles(path);
    return /\.tsx?$/.test(path) ? [path] : [];
  });
}

function importsOf(path: string): string[] {
  const text = readFileSync(path, 'utf8');
  const found = text.matchAll(
    /(?:^|\n)\s*(?:import|export)\s[^;]*?from\s+'([^']+)'|import\(\s*'([^']+)'\s*\)|(?:^|\n)import\s+'([^']+)'/g,
  );
  return [...found].map(([, from, dynamic, bare]) => {
    const target = from ?? dynamic ?? bare ?? '';
    return target.startsWith('.') ? relative(ROOT, normalize(join(dirname(path), target))) : target;
  });
}

const files = [...sourceFiles(join(ROOT, 'src')), ...sourceFiles(join(ROOT, 'workers'))];

describe('the house', () => {
  it('has the agreed rooms at the top and no others', () => {
    const unexpected = readdirSync(ROOT).filter(
      (name) => !name.startsWith('.') && !TOP_LEVEL.has(name) && !NOT_COMMITTED.has(name),
    );
    expect(unexpected).toEqual([]);
  });

  it('sees the source files', () => expect(files.length).toBeGreaterThan(30));

  it.each(files.map((path) => relative(ROOT, path)))('%s imports only what its room may', (file) => {
    const rule = Object.keys(MAY_IMPORT)
      .filter((prefix) => file.startsWith(prefix))
      .sort((a, b) => b.length - a.length)[0];
    expect(rule, `${file} has no row in the import table`).toBeDefined();
    const allowed = MAY_IMPORT[rule];
    const refused = importsOf(join(ROOT, file)).filter(
      (target) => !allowed.some((prefix) => target.startsWith(prefix)),
    );
    expect(refused).toEqual([]);
  });

  it('lets nothing import tests', () => {
    const refused = files.filter((path) => importsOf(path).some((target) => target.startsWith('tests/')));
    expect(refused).toEqual([]);
  });
});
