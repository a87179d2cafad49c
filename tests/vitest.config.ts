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
    // Files after one another in one process: reading the modules anew for each took as long as the half of all tests.
    // A file that puts another thing in a global's place puts it back.
    isolate: false,
  },
});
