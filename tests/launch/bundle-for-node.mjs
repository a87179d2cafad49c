// Our TypeScript as one file that Node 20 runs; packages from npm stay outside it.
import { basename, join } from 'node:path';
import { build } from 'esbuild';

export async function bundleForNode(entry, folder) {
  const outfile = join(folder, `${basename(entry).replace(/\.ts$/, '')}.mjs`);
  await build({
    entryPoints: [entry],
    outfile,
    bundle: true,
    platform: 'node',
    target: 'node20',
    format: 'esm',
    sourcemap: 'inline',
    logLevel: 'warning',
    jsx: 'automatic',
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
  return outfile;
}
