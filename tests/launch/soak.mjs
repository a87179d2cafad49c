// `npm run soak`: the server is killed 200 times in the middle of edits and deletes; nothing acknowledged may be missing.
import { spawnSync } from 'node:child_process';
import { join } from 'node:path';
import { install, ROOT, requireNode } from '../../server/launch/ready.mjs';

requireNode();
install();
const done = spawnSync(
  process.execPath,
  [
    join(ROOT, 'node_modules/vitest/vitest.mjs'),
    'run',
    '--root',
    'tests',
    '--disable-console-intercept',
    'server/kill.test.ts',
  ],
  { cwd: ROOT, stdio: 'inherit', env: { SOAK_ROUNDS: '200', ...process.env } },
);
process.exit(done.status ?? 1);
