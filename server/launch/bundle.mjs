// One file of our own TypeScript for the server; packages from npm stay outside it, but for those of many small files.
import { dirname, join } from 'node:path';
import { fileURLToPath } from 'node:url';
import { build } from 'esbuild';

/** Finding and reading their hundreds of files one by one took a third of a start. None is known to a package outside. */
const INSIDE = /^(kysely|yjs|lib0)(\/|$)/;

const server = join(dirname(fileURLToPath(import.meta.url)), '..');

await build({
  entryPoints: [join(server, 'src', 'main.ts')],
  outdir: join(server, 'dist'),
  bundle: true,
  splitting: true,
  platform: 'node',
  target: 'node20',
  format: 'esm',
  outExtension: { '.js': '.mjs' },
  sourcemap: true,
  logLevel: 'warning',
  plugins: [
    {
      name: 'npm packages stay outside, workspaces and packages of many files come in',
      setup({ onResolve }) {
        onResolve({ filter: /^[^./]/ }, ({ path, kind }) =>
          kind === 'entry-point' || path.startsWith('@enfilade/') || INSIDE.test(path)
            ? null
            : { path, external: true },
        );
      },
    },
  ],
});
