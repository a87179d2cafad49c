// `npm run soak`: the server is killed 200 times in the middle of edits and deletes; 100,000 mutated frames of each kind
// are thrown at it; people come and go for 20 minutes; 3,000 seeds of every command run over a faulty network. Nothing
// acknowledged may be missing, nothing may end, leak, poison or come apart. Then 400 random walls, floors and levels are
// hung, and 60 shuffled pools looked through: no rule broken, nothing found. Shorter:
// `-- --kills 20 --frames 5000 --minutes 2 --seeds 200 --walls 100 --pools 20`; each says how far it has come.
import { spawnSync } from 'node:child_process';
import { join } from 'node:path';
import { parseArgs } from 'node:util';
import { install, ROOT, requireNode } from '../../server/launch/ready.mjs';

requireNode();
install();
const { values } = parseArgs({
  options: {
    kills: { type: 'string', default: '200' },
    frames: { type: 'string', default: '100000' },
    minutes: { type: 'string', default: '20' },
    seeds: { type: 'string', default: '3000' },
    walls: { type: 'string', default: '400' },
    pools: { type: 'string', default: '60' },
  },
});
const parts = [
  ['server/kill.test.ts', { SOAK_ROUNDS: values.kills }],
  ['server/mutated-frames.test.ts', { SOAK_FRAMES: values.frames }],
  ['server/steady-memory.test.ts', { SOAK_MINUTES: values.minutes }],
  ['network/laws.test.ts', { LAW_SEEDS: values.seeds }],
  ['arrangement/compositions.test.ts', { LAW_WALLS: values.walls }],
  ['arrangement/massed.test.ts', { LAW_WALLS: values.walls }],
  ['grouping/likenesses.test.ts', { LAW_POOLS: values.pools }],
];
let failed = 0;
for (const [file, env] of parts) {
  const done = spawnSync(
    process.execPath,
    [join(ROOT, 'node_modules/vitest/vitest.mjs'), 'run', '--root', 'tests', '--disable-console-intercept=true', file],
    { cwd: ROOT, stdio: 'inherit', env: { ...process.env, ...env } },
  );
  if (done.status !== 0) failed += 1;
}
process.exit(failed === 0 ? 0 : 1);
