import { defineConfig } from 'vite';

// Builds the page into files that any web server, or the preview below, can hand out.
export default defineConfig({
  root: import.meta.dirname,
  base: './',
  cacheDir: '../../node_modules/.vite-viewer',
  worker: { format: 'es' },
  build: { outDir: '../../dist/viewer', emptyOutDir: true, target: 'es2023' },
  server: { host: '127.0.0.1', fs: { allow: ['../..'] } },
  preview: { host: '127.0.0.1', port: 4173, strictPort: true },
  oxc: { jsx: { runtime: 'automatic', importSource: 'preact' } },
});
