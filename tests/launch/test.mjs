// `npm test`: installs what is missing, builds, and runs every test: engines, documents, server, then the browser
// stories in a real Chromium. The last line counts both.
import { spawnSync } from 'node:child_process';
import { mkdirSync, readFileSync, rmSync } from 'node:fs';
import { join } from 'node:path';
import { build, install, ROOT, requireNode } from '../../server/launch/ready.mjs';
import { chromium } from './chromium.mjs';

requireNode();
install();
build();

const results = join(ROOT, 'tests', 'test-results');
rmSync(results, { recursive: true, force: true });
mkdirSync(results, { recursive: true });

let passed = 0;
let failed = 0;

const units = spawnSync(
  process.execPath,
  [
    join(ROOT, 'node_modules/vitest/vitest.mjs'),
    'run',
    '--root',
    'tests',
    '--reporter=default',
    '--reporter=json',
    `--outputFile.json=${join(results, 'units.json')}`,
  ],
  { cwd: ROOT, stdio: 'inherit' },
);
try {
  const report = JSON.parse(readFileSync(join(results, 'units.json'), 'utf8'));
  passed += report.numPassedTests;
  failed += report.numFailedTests;
  // A file that does not even load fails without a failed test in it.
  if (!report.success && report.numFailedTests === 0) failed += report.numFailedTestSuites || 1;
} catch {
  failed += 1;
}
if (units.status !== 0 && failed === 0) failed += 1;

const browser = chromium();
if (browser === null) {
  failed += 1;
} else {
  spawnSync(
    process.execPath,
    [
      join(ROOT, 'node_modules/@playwright/test/cli.js'),
      'test',
      '--config',
      join(ROOT, 'tests/browser/playwright.config.ts'),
    ],
    {
      cwd: ROOT,
      stdio: 'inherit',
      env: { ...process.env, CHROMIUM: browser, STORIES_REPORT: join(results, 'stories.json') },
    },
  );
  try {
    const { stats } = JSON.parse(readFileSync(join(results, 'stories.json'), 'utf8'));
    passed += stats.expected + stats.flaky;
    failed += stats.unexpected;
    if (stats.expected + stats.flaky + stats.unexpected === 0) failed += 1;
  } catch {
    failed += 1;
  }
}

console.log(`\n${passed} passed, ${failed} failed`);
process.exit(failed === 0 ? 0 : 1);
