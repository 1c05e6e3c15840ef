import { defineConfig } from 'vitest/config';

const BROWSER = 'tests/browser/**';

export default defineConfig({
  root: new URL('..', import.meta.url).pathname,
  cacheDir: 'node_modules/.vite-tests',
  test: {
    pool: 'forks',
    setupFiles: ['tests/setup.ts'],
    testTimeout: 120_000,
    expect: { poll: { timeout: 20_000 } },
    // First what only computes, a file on each core; then the journeys one by one, since a browser takes both cores.
    projects: [
      {
        extends: true,
        test: {
          name: 'node',
          include: ['tests/**/*.test.ts'],
          exclude: [BROWSER],
          maxWorkers: 2,
          sequence: { groupOrder: 0 },
        },
      },
      {
        extends: true,
        test: { name: 'browser', include: [`${BROWSER}/*.test.ts`], maxWorkers: 1, sequence: { groupOrder: 1 } },
      },
    ],
  },
});
