/** The demo's data folder, drawn once for all stories and again when the server was built anew; each story copies it. */
import { existsSync, readFileSync, rmSync, writeFileSync } from 'node:fs';
import { join } from 'node:path';
import { DEMO, Museum, ROOT } from './museum.ts';

export default async function drawDemo(): Promise<void> {
  const built = readFileSync(join(ROOT, 'server', 'dist', '.stamp'), 'utf8');
  const stamp = `${DEMO}.stamp`;
  if (existsSync(stamp) && readFileSync(stamp, 'utf8') === built) return;
  rmSync(DEMO, { recursive: true, force: true });
  const first = new Museum(DEMO);
  await first.open();
  await first.kill();
  writeFileSync(stamp, built);
}
