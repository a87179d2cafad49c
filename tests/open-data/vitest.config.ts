import { defineConfig } from 'vitest/config';

// Run by `npm run test:open-data -- FOLDER`; `npm test` passes these files by, for the data is not part of the project.
export default defineConfig({
  root: import.meta.dirname,
  test: { include: ['*.open.ts'], testTimeout: 60_000, pool: 'forks', maxWorkers: 1 },
});
