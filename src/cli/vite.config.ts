import { defineConfig } from 'vite';

// Bundles the command line into one file that Node runs as it is.
export default defineConfig({
  root: import.meta.dirname,
  ssr: { noExternal: true },
  build: {
    ssr: true,
    target: 'node20',
    outDir: '../../dist/cli',
    emptyOutDir: true,
    rolldownOptions: { input: { soakbench: 'src/cli/main.ts' }, output: { entryFileNames: '[name].mjs' } },
  },
});
