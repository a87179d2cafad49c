import { spawn } from 'node:child_process';
import { once } from 'node:events';
import { mkdtemp, rm } from 'node:fs/promises';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { createInterface } from 'node:readline';
import { FolderInUse } from '@enfilade/server/folder-lock';
import { startServer } from '@enfilade/server/server';
import { expect, onTestFinished, test } from 'vitest';
import { bundleForNode } from '../launch/bundle-for-node.mjs';

test('story: a second server on one folder is told so and touches nothing; kill -9 of the first leaves the folder free', async () => {
  // Inside the project, so that packages are found from the bundle.
  const folder = await mkdtemp(join(import.meta.dirname, '..', '.kill-'));
  const data = await mkdtemp(join(tmpdir(), 'enfilade-lock-'));
  onTestFinished(async () => {
    await rm(folder, { recursive: true, force: true });
    await rm(data, { recursive: true, force: true });
  });
  const bundle = await bundleForNode(join(import.meta.dirname, 'kill-child.ts'), folder);
  const first = spawn(process.execPath, [bundle, data], { stdio: ['ignore', 'pipe', 'inherit'] });
  await once(createInterface({ input: first.stdout }), 'line');

  const second = (): ReturnType<typeof startServer> => startServer({ port: 0, host: '127.0.0.1', dataDirectory: data });
  await expect(second()).rejects.toThrow(FolderInUse);
  await expect(second()).rejects.toThrow(
    `another Enfilade server is using ${data}; stop it, or give another folder with --data`,
  );

  const dead = once(first, 'exit');
  first.kill('SIGKILL');
  await dead;
  const server = await second();
  // The same holds within one process.
  await expect(second()).rejects.toThrow(FolderInUse);
  await server.close();
  await (await second()).close();
});
