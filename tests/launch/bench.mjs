// `npm run bench [-- NAME]`: every row is a ratio against a peer in the same run. tests/bench/*.bench.ts export
// `name` and `run()`, which answers {row, ours, peer, ratio, unit, gate?}[] or yields one after another.
import { spawnSync } from 'node:child_process';
import { readdirSync } from 'node:fs';
import { join } from 'node:path';
import { build, install, ROOT, requireNode } from '../../server/launch/ready.mjs';
import { chromium } from './chromium.mjs';

requireNode();
install();
build();
const browser = chromium();

const folder = join(ROOT, 'tests', 'bench');
const wanted = process.argv.slice(2).filter((word) => !word.startsWith('-'));
const names = readdirSync(folder)
  .filter((file) => file.endsWith('.bench.ts'))
  .map((file) => file.slice(0, -'.bench.ts'.length));
const unknown = wanted.filter((name) => !names.includes(name));
if (unknown.length > 0) {
  console.error(`There is no bench called ${unknown.join(', ')}. There are: ${names.join(', ')}.`);
  process.exit(2);
}
let failed = 0;
for (const name of wanted.length > 0 ? wanted : names) {
  const done = spawnSync(process.execPath, [join(ROOT, 'tests', 'launch', 'bench-one.mjs'), name], {
    cwd: ROOT,
    stdio: 'inherit',
    env: { ...process.env, ...(browser ? { CHROMIUM: browser } : {}) },
  });
  if (done.status !== 0) failed += 1;
}
process.exit(failed === 0 ? 0 : 1);
