import { availableParallelism } from 'node:os';
import { defineConfig } from '@playwright/test';

// Stories in a real Chromium, two at once: each waits now and then, for its server, for what settles, for what it expects.
export default defineConfig({
  testDir: '.',
  testMatch: '*.story.ts',
  globalSetup: './demo-data.ts',
  outputDir: '../test-results/browser',
  workers: availableParallelism() >= 2 ? 2 : 1,
  fullyParallel: true,
  retries: 0,
  timeout: 120_000,
  expect: { timeout: 15_000 },
  reporter: [['list'], ['json', { outputFile: process.env.STORIES_REPORT ?? '../test-results/stories.json' }]],
  use: {
    viewport: { width: 1440, height: 900 },
    // It fetches and compiles the whole shell a second time, behind every page: a story that goes offline allows it.
    serviceWorkers: 'block',
    launchOptions: {
      executablePath: process.env.CHROMIUM ?? '/usr/bin/chromium',
      args: [
        '--no-sandbox',
        '--disable-gpu',
        '--disable-quic',
        '--no-first-run',
        '--disable-background-networking',
        '--disable-component-update',
        '--disable-sync',
      ],
    },
  },
});
