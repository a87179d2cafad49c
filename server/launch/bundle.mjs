// One file of our own TypeScript for the server; packages from npm stay outside it.
import { dirname, join } from 'node:path';
import { fileURLToPath } from 'node:url';
import { build } from 'esbuild';

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
      name: 'npm packages stay outside, workspaces come in',
      setup({ onResolve }) {
        onResolve({ filter: /^[^./]/ }, ({ path, kind }) =>
          kind === 'entry-point' || path.startsWith('@enfilade/') ? null : { path, external: true },
        );
      },
    },
  ],
});
