// `npm run check`: types, lint, import rules, unused code; then each gate is shown breaches and must refuse every one.
import { execFile } from 'node:child_process';
import { rmSync, writeFileSync } from 'node:fs';
import { join } from 'node:path';
import { install, ROOT, requireNode } from '../../server/launch/ready.mjs';

requireNode();
install();

const bin = (name) => join(ROOT, 'node_modules', '.bin', name);
const quietly = (command, args) =>
  new Promise((done) => {
    execFile(command, args, { cwd: ROOT, encoding: 'utf8', maxBuffer: 1 << 26 }, (error, stdout, stderr) =>
      done({ held: error === null, said: stdout + stderr }),
    );
  });

let broken = 0;
const gates = [
  ['format, lint and import rules', 'biome', ['ci', '.']],
  ['types of the engines and documents', 'tsc', ['-p', 'tsconfig.json']],
  ['types of the server', 'tsc', ['-p', 'server']],
  ['types of the client', 'tsc', ['-p', 'client']],
  ['types of the tests', 'tsc', ['-p', 'tests']],
  ['unused files, exports and packages', 'knip', []],
].map(([what, tool, args]) => [what, quietly(bin(tool), args)]);
for (const [what, done] of gates) {
  const { held, said } = await done;
  console.log(`${held ? 'holds ' : 'BROKEN'}  ${what}`);
  if (held) continue;
  broken += 1;
  console.log(said);
}

// A gate that has never been seen to fail proves nothing: plant breaches, see each refused for what it is, take them away.
const IMPORTS = 'lint/style/noRestrictedImports';
const PACKAGES = 'lint/correctness/noUndeclaredDependencies';
const CYCLE = 'lint/suspicious/noImportCycles';
const bothSides = (from) => `import { bothSidesOf } from '${from}';\n\nexport const told = bothSidesOf;\n`;
const difference = (from) => `import { deltaE2000 } from '${from}';\n\nexport const difference = deltaE2000;\n`;
const breaches = [
  // Cannot find name 'document'; cannot find module 'node:fs'.
  ['an engine that touches the document', 'packages/space', 'TS2584', 'export const title = document.title;\n'],
  [
    'an engine that reads files',
    'packages/space',
    'TS2591',
    "import { readFileSync } from 'node:fs';\n\nexport const read = readFileSync;\n",
  ],
  [
    'an engine that imports Yjs',
    'packages/space',
    PACKAGES,
    "import { Doc } from 'yjs';\n\nexport const doc = new Doc();\n",
  ],
  ['an engine that imports a sibling by name', 'packages/space', PACKAGES, difference('@enfilade/colour/differences')],
  ['an engine that climbs into a sibling', 'packages/space', IMPORTS, difference('../../colour/src/differences.ts')],
  [
    'a document that knows the screen',
    'shared',
    PACKAGES,
    "import { createElement } from 'react';\n\nexport const element = createElement;\n",
  ],
  [
    'a document that asks the page what was done offline, by name',
    'shared',
    PACKAGES,
    bothSides('@enfilade/client/offline/clashes'),
  ],
  ['a document that climbs into the page', 'shared', IMPORTS, bothSides('../../client/src/offline/clashes.ts')],
  ['a server that climbs into the page', 'server', IMPORTS, bothSides('../../client/src/offline/clashes.ts')],
  [
    'a server that imports the client',
    'server',
    PACKAGES,
    "import { go } from '@enfilade/client/view-address';\n\nexport const way = go;\n",
  ],
  [
    'a client that imports the server',
    'client',
    PACKAGES,
    "import { startServer } from '@enfilade/server/server';\n\nexport const start = startServer;\n",
  ],
  [
    'two files that import each other',
    'packages/space',
    CYCLE,
    "import type { B } from './breach-back.ts';\n\nexport type A = B | null;\n",
  ],
].map(([what, workspace, rule, text], i) => ({ what, rule, text, path: `${workspace}/src/breach-${i}.ts` }));
const back = {
  path: 'packages/space/src/breach-back.ts',
  text: `import type { A } from './breach-${breaches.length - 1}.ts';\n\nexport type B = A | undefined;\n`,
};
try {
  for (const { path, text } of [...breaches, back]) writeFileSync(join(ROOT, path), text);
  const [types, lint] = await Promise.all([
    quietly(bin('tsc'), ['-p', 'tsconfig.json', '--pretty', 'false']),
    quietly(bin('biome'), ['lint', '--colors=off', '--max-diagnostics=none', 'packages', 'shared', 'server', 'client']),
  ]);
  const lines = `${types.said}\n${lint.said}`.split('\n');
  for (const { what, rule, path } of breaches) {
    const refused = !types.held && !lint.held && lines.some((line) => line.startsWith(path) && line.includes(rule));
    console.log(`${refused ? 'holds ' : 'BROKEN'}  refuses ${what}`);
    if (!refused) broken += 1;
  }
} finally {
  for (const { path } of [...breaches, back]) rmSync(join(ROOT, path), { force: true });
}
process.exit(broken === 0 ? 0 : 1);
