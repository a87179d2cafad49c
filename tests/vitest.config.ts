import { defineConfig } from 'vitest/config';

// Browser stories (tests/browser) run under Playwright; everything else runs here.
export default defineConfig({
  root: import.meta.dirname,
  test: {
    include: ['**/*.test.ts'],
    exclude: ['browser/**', 'bench/**'],
    testTimeout: 60_000,
    pool: 'forks',
    maxWorkers: 2,
  },
});
