/** `npm run test:open-data -- FOLDER`: scores the records engine on museums' open data, read where it lies. */
import { spawnSync } from 'node:child_process';
import { existsSync } from 'node:fs';
import { createRequire } from 'node:module';
import { dirname, join, resolve } from 'node:path';
import { fileURLToPath } from 'node:url';

const tests = dirname(dirname(fileURLToPath(import.meta.url)));
const asked = process.argv[2];
const folder = asked === undefined ? null : resolve(process.env.INIT_CWD ?? process.cwd(), asked);

if (folder === null || !existsSync(join(folder, 'records'))) {
  console.log(`No open data to read${folder === null ? '' : ` in ${folder}`}: name a folder that holds records/.`);
  process.exit(0);
}

const vitest = join(dirname(createRequire(join(tests, 'package.json')).resolve('vitest/package.json')), 'vitest.mjs');
const { status } = spawnSync(
  process.execPath,
  [vitest, 'run', '--config', join(tests, 'open-data', 'vitest.config.ts'), '--disable-console-intercept'],
  { stdio: 'inherit', cwd: tests, env: { ...process.env, OPEN_DATA: folder } },
);
process.exit(status ?? 1);
