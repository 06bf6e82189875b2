/** Built once for all tests: from its sources a page takes longer to load than most tests to run. */
import { resolve } from 'node:path';
import react from '@vitejs/plugin-react';
import { defineConfig } from 'vite';

const root = resolve('tests/browser');

export default defineConfig({
  root,
  plugins: [react()],
  // A test counts what React renders, which React tells only in development.
  define: { 'process.env.NODE_ENV': '"development"' },
  build: {
    outDir: resolve('dist-parts'),
    emptyOutDir: true,
    minify: false,
    target: 'es2022',
    rolldownOptions: { input: ['viewer', 'curve'].map((name) => `${root}/harness-${name}/index.html`) },
  },
});
