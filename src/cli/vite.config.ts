import { defineConfig } from 'vite';

// Bundles the command line into files that Node runs as they are: the program, the worker, and what starts
// a thread of the pool, which looks for it beside the program.
export default defineConfig({
  root: import.meta.dirname,
  ssr: { noExternal: true },
  build: {
    ssr: true,
    target: 'node20',
    outDir: '../../dist/cli',
    emptyOutDir: true,
    rolldownOptions: {
      input: {
        soakbench: 'src/cli/main.ts',
        worker: 'src/cli/worker.ts',
        'entry/worker': 'node_modules/tinypool/dist/entry/worker.js',
      },
      output: {
        entryFileNames: ({ name }) => (name === 'entry/worker' ? '[name].js' : '[name].mjs'),
        chunkFileNames: '[name].mjs',
      },
    },
  },
});
