// `npm run check`: types, lint, import rules, unused code; then each gate is shown a breach and must refuse it.
import { spawnSync } from 'node:child_process';
import { rmSync, writeFileSync } from 'node:fs';
import { join } from 'node:path';
import { install, ROOT, requireNode } from '../../server/launch/ready.mjs';

requireNode();
install();

const bin = (name) => join(ROOT, 'node_modules', '.bin', name);
const quietly = (command, args) => spawnSync(command, args, { cwd: ROOT, encoding: 'utf8' });

let broken = 0;
for (const [what, command, args] of [
  ['format, lint and import rules', bin('biome'), ['ci', '.']],
  ['types of the engines and documents', bin('tsc'), ['-p', 'tsconfig.json']],
  ['types of the server', bin('tsc'), ['-p', 'server']],
  ['types of the client', bin('tsc'), ['-p', 'client']],
  ['types of the tests', bin('tsc'), ['-p', 'tests']],
  ['unused files, exports and packages', bin('knip'), []],
]) {
  const done = quietly(command, args);
  console.log(`${done.status === 0 ? 'holds ' : 'BROKEN'}  ${what}`);
  if (done.status !== 0) {
    broken += 1;
    console.log(done.stdout + done.stderr);
  }
}

// A gate that has never been seen to fail proves nothing: plant a breach, see it refused, take it away.
const breaches = [
  [
    'an engine that touches the document',
    'packages/space/src/breach.ts',
    'export const title = document.title;\n',
    'tsc',
    ['-p', 'tsconfig.json'],
  ],
  [
    'an engine that reads files',
    'packages/space/src/breach.ts',
    "import { readFileSync } from 'node:fs';\n\nexport const read = readFileSync;\n",
    'tsc',
    ['-p', 'tsconfig.json'],
  ],
  [
    'an engine that imports Yjs',
    'packages/space/src/breach.ts',
    "import { Doc } from 'yjs';\n\nexport const doc = new Doc();\n",
    'biome',
    ['lint', 'packages/space'],
  ],
  [
    'an engine that imports a sibling by name',
    'packages/space/src/breach.ts',
    "import { deltaE2000 } from '@enfilade/colour/differences';\n\nexport const difference = deltaE2000;\n",
    'biome',
    ['lint', 'packages/space'],
  ],
  [
    'an engine that climbs into a sibling',
    'packages/space/src/breach.ts',
    "import { deltaE2000 } from '../../colour/src/differences.ts';\n\nexport const difference = deltaE2000;\n",
    'biome',
    ['lint', 'packages/space'],
  ],
  [
    'a document that knows the screen',
    'shared/src/breach.ts',
    "import { createElement } from 'react';\n\nexport const element = createElement;\n",
    'biome',
    ['lint', 'shared'],
  ],
  [
    'a document that asks the page what was done offline, by name',
    'shared/src/breach.ts',
    "import { bothSidesOf } from '@enfilade/client/offline/clashes';\n\nexport const told = bothSidesOf;\n",
    'biome',
    ['lint', 'shared'],
  ],
  [
    'a document that climbs into the page',
    'shared/src/breach.ts',
    "import { bothSidesOf } from '../../client/src/offline/clashes.ts';\n\nexport const told = bothSidesOf;\n",
    'biome',
    ['lint', 'shared'],
  ],
  [
    'a server that climbs into the page',
    'server/src/breach.ts',
    "import { bothSidesOf } from '../../client/src/offline/clashes.ts';\n\nexport const told = bothSidesOf;\n",
    'biome',
    ['lint', 'server'],
  ],
  [
    'a server that imports the client',
    'server/src/breach.ts',
    "import { go } from '@enfilade/client/view-address';\n\nexport const way = go;\n",
    'biome',
    ['lint', 'server'],
  ],
  [
    'a client that imports the server',
    'client/src/breach.ts',
    "import { startServer } from '@enfilade/server/server';\n\nexport const start = startServer;\n",
    'biome',
    ['lint', 'client'],
  ],
  [
    'two files that import each other',
    'packages/space/src/breach.ts',
    "import type { B } from './breach-b.ts';\n\nexport type A = B | null;\n",
    'biome',
    ['lint', 'packages/space'],
    ['packages/space/src/breach-b.ts', "import type { A } from './breach.ts';\n\nexport type B = A | undefined;\n"],
  ],
];
for (const [what, path, text, tool, args, second] of breaches) {
  const files = [[path, text], ...(second ? [second] : [])];
  try {
    for (const [file, content] of files) writeFileSync(join(ROOT, file), content);
    const done = quietly(bin(tool), args);
    const refused = done.status !== 0 && (done.stdout + done.stderr).includes('breach');
    console.log(`${refused ? 'holds ' : 'BROKEN'}  refuses ${what}`);
    if (!refused) broken += 1;
  } finally {
    for (const [file] of files) rmSync(join(ROOT, file), { force: true });
  }
}
process.exit(broken === 0 ? 0 : 1);
