import { mkdir, mkdtemp, rm, writeFile } from 'node:fs/promises';
import { request } from 'node:http';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { brotliDecompressSync } from 'node:zlib';
import { startServer } from '@enfilade/server/server';
import { expect, onTestFinished, test } from 'vitest';
import { scene } from './scene.ts';

/** A request as written, its path not tidied as a browser would. */
function asWritten(
  port: number,
  path: string,
  headers: Record<string, string> = {},
): Promise<[number, Buffer, string]> {
  return new Promise((done, failed) => {
    request({ port, host: '127.0.0.1', path, headers }, (response) => {
      const chunks: Buffer[] = [];
      response.on('data', (chunk: Buffer) => chunks.push(chunk));
      response.on('end', () =>
        done([response.statusCode ?? 0, Buffer.concat(chunks), String(response.headers['cache-control'])]),
      );
    })
      .on('error', failed)
      .end();
  });
}

test('story: the page and its parts are served packed; nothing outside the client’s folder is', async () => {
  const folder = await mkdtemp(join(tmpdir(), 'enfilade-'));
  const client = join(folder, 'client');
  await mkdir(join(client, 'assets'), { recursive: true });
  await writeFile(join(client, 'index.html'), '<!doctype html><title>Enfilade</title>');
  await writeFile(join(client, 'assets', 'main-abc.js'), `// ${'a'.repeat(4000)}`);
  await writeFile(join(folder, 'secret.txt'), 'SECRET');
  const server = await startServer({
    port: 0,
    host: '127.0.0.1',
    dataDirectory: join(folder, 'data'),
    clientDirectory: client,
  });
  onTestFinished(async () => {
    await server.close();
    await rm(folder, { recursive: true, force: true });
  });
  const { port } = server;
  const [pageStatus, page, pageCache] = await asWritten(port, '/seat/any/');
  expect([pageStatus, pageCache]).toEqual([200, 'no-cache']);
  expect(String(page)).toContain('<title>Enfilade</title>');
  const [, packed, cache] = await asWritten(port, '/assets/main-abc.js', { 'accept-encoding': 'gzip, br' });
  expect(cache).toMatch(/immutable/);
  expect(packed.length).toBeLessThan(200);
  expect(brotliDecompressSync(packed).length).toBe(4003);
  for (const path of [
    '/../secret.txt',
    '/assets/../../secret.txt',
    '/%2e%2e/secret.txt',
    '/..%2fsecret.txt',
    '/.env',
    '/assets',
    '/%00',
  ]) {
    const [status, body] = await asWritten(port, path);
    expect([path, status]).toEqual([path, 404]);
    expect(String(body)).not.toContain('SECRET');
  }
  expect((await asWritten(port, '/'))[0]).toBe(200);
});

test('story: at a stop everything taken is written, every socket is told, and a second stop is the same one', async () => {
  const here = await scene();
  const client = await here.client(await here.seat('curator'), 'hang');
  for (let n = 0; n < 20; n++) client.edit((doc) => doc.getMap('places').set(`block#${n}`, ['layout', n, 0, 0, 0]));
  await client.when(({ acknowledged }) => acknowledged > 0);
  const stopping = here.server.close();
  expect(here.server.close()).toBe(stopping);
  await client.when(({ closed }) => closed !== null);
  expect(client.closed?.code).toBe(1001);
  await stopping;
  await here.open();
  expect(here.server.sessions.get('hang').doc.getMap('places').size).toBeGreaterThanOrEqual(client.acknowledged);
});

test('law: what is measured holds counts and names of documents, and nothing of what is in them', async () => {
  const here = await scene();
  const client = await here.client(await here.seat('curator'), 'hang');
  client.edit((doc) => doc.getMap('places').set('mangle#1', ['layout', 1, 2, 0, 0]));
  await client.when(({ acknowledged }) => acknowledged === 1);
  const text = await (await fetch(`${here.address}/metrics`)).text();
  expect(text).toMatch(/^enfilade_sockets 1$/m);
  // The one move, and who is seated.
  expect(text).toMatch(/^enfilade_updates_logged_total 2$/m);
  expect(text).toMatch(/^enfilade_log_updates\{document="hang"\} 1$/m);
  expect(text).not.toContain('mangle');
  for (const line of text.trim().split('\n')) expect(line).toMatch(/^[a-z_]+(\{document="[a-z]+"\})? \d+$/);
});
