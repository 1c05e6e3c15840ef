import { defineConfig } from 'vitest/config';

export default defineConfig({
  root: new URL('..', import.meta.url).pathname,
  cacheDir: 'node_modules/.vite-tests',
  test: {
    include: ['tests/**/*.test.ts'],
    pool: 'forks',
    setupFiles: ['tests/setup.ts'],
    testTimeout: 120_000,
    expect: { poll: { timeout: 20_000 } },
  },
});
