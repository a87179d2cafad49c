// What both commands need before anything else: packages installed as locked, client and server built from what is
// in the folder now. Plain JavaScript, because nothing is installed yet when it runs.
import { spawnSync } from 'node:child_process';
import { createHash } from 'node:crypto';
import { existsSync, mkdirSync, readdirSync, readFileSync, statSync, writeFileSync } from 'node:fs';
import { dirname, join, relative } from 'node:path';
import { fileURLToPath } from 'node:url';

export const ROOT = join(dirname(fileURLToPath(import.meta.url)), '..', '..');

/** Runs a command in the project's folder, its output shown; ends this process with a sentence if it fails. */
export function run(what, command, args, options = {}) {
  const done = spawnSync(command, args, {
    cwd: ROOT,
    stdio: 'inherit',
    shell: process.platform === 'win32',
    ...options,
  });
  if (done.status === 0) return;
  console.error(
    `\n${what} did not work${done.error ? `: ${done.error.message}` : ''}. Its own words are above; nothing was changed.`,
  );
  process.exit(done.status ?? 1);
}

export function requireNode() {
  const [major, minor] = process.versions.node.split('.').map(Number);
  if (major > 20 || (major === 20 && minor >= 19)) return;
  console.error(`Enfilade needs Node 20.19 or later; this is ${process.versions.node}.`);
  process.exit(1);
}

/** Installs what package-lock.json names, unless that has been done. */
export function install() {
  const stamp = join(ROOT, 'node_modules', '.enfilade-installed');
  const wanted = createHash('sha256')
    .update(readFileSync(join(ROOT, 'package-lock.json')))
    .digest('hex');
  if (existsSync(stamp) && readFileSync(stamp, 'utf8') === wanted) return;
  console.log('Installing what is missing (once)…');
  run('Installing', 'npm', ['ci', '--include=dev', '--no-audit', '--no-fund', '--loglevel=error']);
  writeFileSync(stamp, wanted);
}

/** One digest of every file a folder holds: names, sizes and times, so that an unchanged tree is known in moments. */
function digestOf(folders) {
  const hash = createHash('sha256');
  const walk = (path) => {
    const about = statSync(path);
    if (about.isDirectory()) {
      for (const name of readdirSync(path).sort()) {
        if (name !== 'dist' && name !== 'node_modules') walk(join(path, name));
      }
    } else {
      hash.update(`${relative(ROOT, path)} ${about.size} ${about.mtimeMs}\n`);
    }
  };
  for (const folder of folders) walk(join(ROOT, folder));
  return hash.digest('hex');
}

/** Builds a part unless it was built from exactly these sources. */
function buildPart(what, folders, stamp, build) {
  const wanted = digestOf(folders);
  if (existsSync(stamp) && readFileSync(stamp, 'utf8') === wanted) return;
  console.log(`Building ${what}…`);
  build();
  mkdirSync(dirname(stamp), { recursive: true });
  writeFileSync(stamp, wanted);
}

export function build() {
  // Before the others, whose bundles hold its bytes; it writes them only when they differ from those committed.
  const kernel = join(ROOT, 'packages', 'colour', 'kernel');
  buildPart('the colour kernel', ['packages/colour/kernel'], join(kernel, 'dist', '.stamp'), () => {
    run('Building the colour kernel', process.execPath, [join(kernel, 'build.mjs')]);
  });
  const engines = ['packages', 'shared', 'package-lock.json'];
  buildPart('what the browser runs', [...engines, 'client'], join(ROOT, 'client', 'dist', '.stamp'), () => {
    run('Building the client', process.execPath, [
      'node_modules/vite/bin/vite.js',
      'build',
      'client',
      '--logLevel',
      'warn',
    ]);
  });
  buildPart('the server', [...engines, 'server'], join(ROOT, 'server', 'dist', '.stamp'), () => {
    run('Building the server', process.execPath, [join(ROOT, 'server', 'launch', 'bundle.mjs')]);
  });
}
