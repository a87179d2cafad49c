import { X509Certificate } from 'node:crypto';
import { mkdtemp, rm, stat, writeFile } from 'node:fs/promises';
import { request } from 'node:https';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { startServer } from '@enfilade/server/server';
import { certificateFrom, namesOfThisMachine, ownCertificate } from '@enfilade/server/tls';
import { expect, onTestFinished, test } from 'vitest';
import { WebSocket } from 'ws';

async function folder(): Promise<string> {
  const made = await mkdtemp(join(tmpdir(), 'enfilade-tls-'));
  onTestFinished(() => rm(made, { recursive: true, force: true }));
  return made;
}

test('law: an own certificate names this machine, is kept, and is made anew when it runs out; its key is the owner’s alone', async () => {
  const data = await folder();
  const first = await ownCertificate(data);
  const certificate = new X509Certificate(first.cert);
  for (const name of namesOfThisMachine().names) expect(certificate.checkHost(name)).toBeDefined();
  for (const address of namesOfThisMachine().addresses) expect(certificate.checkIP(address)).toBeDefined();
  expect(certificate.checkHost('elsewhere.example')).toBeUndefined();
  expect((await stat(join(data, 'tls', 'key.pem'))).mode & 0o077).toBe(0);
  expect((await ownCertificate(data)).cert).toBe(first.cert);
  const later = new Date(Date.now() + 380 * 86_400_000);
  expect((await ownCertificate(data, later)).cert).not.toBe(first.cert);
});

test('story: over TLS the seat’s cookie is Secure, sockets open, and the certificate can be fetched to be trusted', async () => {
  const data = await folder();
  const tls = await ownCertificate(data);
  const server = await startServer({ port: 0, host: '127.0.0.1', dataDirectory: data, tls });
  onTestFinished(() => server.close());
  expect(server.url).toMatch(/^https:/);
  const get = (path: string): Promise<{ status: number; cookie: string; location: string; body: string }> =>
    new Promise((done, failed) => {
      // The certificate is trusted as a device would that was told to.
      request({ host: '127.0.0.1', port: server.port, path, ca: tls.cert }, (response) => {
        let body = '';
        response.on('data', (part) => {
          body += part;
        });
        response.on('end', () =>
          done({
            status: response.statusCode ?? 0,
            cookie: response.headers['set-cookie']?.[0] ?? '',
            location: response.headers.location ?? '',
            body,
          }),
        );
      })
        .on('error', failed)
        .end();
    });
  const { token } = await server.seats.invite({ id: 'c', name: 'The curator', role: 'curator' });
  const joined = await get(`/join/${token}`);
  expect(joined.status).toBe(303);
  expect(joined.cookie).toMatch(/; Secure/);
  expect((await get('/certificate.pem')).body).toBe(tls.cert);
  const socket = new WebSocket(`wss://127.0.0.1:${server.port}${joined.location}doc/hang`, {
    ca: tls.cert,
    headers: { cookie: joined.cookie.split(';')[0] ?? '' },
  });
  await new Promise<void>((open, failed) => {
    socket.once('open', () => open());
    socket.once('error', failed);
  });
  socket.terminate();
});

test('law: a certificate given as files is taken as it is, and one that is none is refused in words', async () => {
  const data = await folder();
  await ownCertificate(data);
  const [cert, key] = [join(data, 'tls', 'certificate.pem'), join(data, 'tls', 'key.pem')];
  expect((await certificateFrom(cert, key)).own).toBe(false);
  await writeFile(join(data, 'none.pem'), 'not a certificate');
  await expect(certificateFrom(join(data, 'none.pem'), key)).rejects.toThrow();
  await expect(certificateFrom(join(data, 'missing.pem'), key)).rejects.toThrow(/missing\.pem/);
});
