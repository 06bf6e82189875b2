import { defineConfig } from 'vitest/config';

export default defineConfig({
  test: {
    include: ['tests/**/*.test.ts'],
    environment: 'node',
    testTimeout: 60_000,
    // As many as the smallest machine that all must pass on has cores: by itself one of them would be left idle.
    maxWorkers: 2,
    // The files share their worker's modules: no test replaces one, and loading them anew costs more than most tests.
    isolate: false,
  },
});
