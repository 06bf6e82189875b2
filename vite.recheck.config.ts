import { defineConfig } from 'vite';

/** `npm run recheck:build`: the recheck as one file that runs with Node alone. */
export default defineConfig({
  publicDir: false,
  ssr: { noExternal: true, target: 'node' },
  build: {
    ssr: 'src/cli/recheck.ts',
    outDir: 'dist-recheck',
    target: 'node20',
    rollupOptions: { output: { entryFileNames: 'recheck.mjs', format: 'es', codeSplitting: false } },
  },
});
