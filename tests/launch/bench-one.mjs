// One bench in a process of its own, so that one's garbage is not another's time.
import { mkdtempSync, rmSync } from 'node:fs';
import { join } from 'node:path';
import { pathToFileURL } from 'node:url';
import { ROOT } from '../../server/launch/ready.mjs';
import { bundleForNode } from './bundle-for-node.mjs';

const [name] = process.argv.slice(2);
// Inside the project, so that packages are found from the bundle.
const folder = mkdtempSync(join(ROOT, 'tests', '.bench-'));
try {
  const file = await bundleForNode(join(ROOT, 'tests', 'bench', `${name}.bench.ts`), folder);
  const bench = await import(pathToFileURL(file).href);
  console.log(`\n${bench.name}`);
  // A bench that yields its rows has each printed as it is measured, so that a slow one shows.
  for await (const { row, ours, peer, ratio, unit, gate } of await bench.run()) {
    const figure = (value) => (Number.isFinite(value) ? Number(value.toPrecision(4)).toString() : '–');
    console.log(
      `  ${row.padEnd(58)} ours ${figure(ours).padStart(9)} ${unit.padEnd(8)} peer ${figure(peer).padStart(9)}  ratio ${figure(ratio).padStart(8)}${gate ? `   gate ${gate}` : ''}`,
    );
  }
} finally {
  rmSync(folder, { recursive: true, force: true });
}
process.exit(0);
