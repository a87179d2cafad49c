/** What the server calls when a person gives an address: the public network alone, and of it only what was asked for. */
import { createServer, type RequestListener } from 'node:http';
import type { AddressInfo } from 'node:net';
import { OutsideRefused, openOutside } from '@enfilade/server/outside-requests';
import { isPublicAddress } from '@enfilade/server/public-addresses';
import type { ImageFacts, ManifestAnswer, Refusal } from '@enfilade/shared/protocol';
import sharp from 'sharp';
import { describe, expect, onTestFinished, test } from 'vitest';
import { type Scene, scene, type TakenSeat } from './scene.ts';

const BOUNDS = { accept: '*/*', bytesAtMost: 10_000, msAtMost: 2000 };
/** This machine plays the public network. */
const here = (address: string): boolean => address === '127.0.0.1';

async function origin(answer: RequestListener): Promise<string> {
  const server = createServer(answer);
  await new Promise<void>((done) => server.listen(0, '127.0.0.1', done));
  onTestFinished(() => {
    server.closeAllConnections();
    server.close();
  });
  return `http://127.0.0.1:${(server.address() as AddressInfo).port}`;
}

async function text(address: string, mayCall = here): Promise<string> {
  const chunks: Buffer[] = [];
  for await (const chunk of await openOutside(address, { ...BOUNDS, mayCall })) chunks.push(chunk as Buffer);
  return Buffer.concat(chunks).toString();
}

const OUTSIDE = ['8.8.8.8', '172.32.0.1', '2a00:1450:4001::8a'];
const INSIDE = [
  '0.0.0.0',
  '10.1.2.3',
  '100.64.0.1',
  '127.0.0.1',
  '169.254.169.254',
  '172.16.0.1',
  '172.31.255.255',
  '192.0.2.1',
  '192.168.1.1',
  '198.18.0.1',
  '203.0.113.9',
  '224.0.0.1',
  '255.255.255.255',
  '::',
  '::1',
  '::ffff:8.8.8.8',
  '64:ff9b::a00:1',
  'fc00::1',
  'fd12::1',
  'fe80::1',
  'ff02::1',
  '2001:db8::1',
  '2002:a00:1::',
  '2001:0:1::1',
  'localhost',
  '',
];
// IANA IPv4 and IPv6 special-purpose address registries; RFC 4291, RFC 6890.
test.each(OUTSIDE)('reference: %s is of the public network', (address) => expect(isPublicAddress(address)).toBe(true));
test.each(INSIDE)('reference: “%s” is not', (address) => expect(isPublicAddress(address)).toBe(false));

describe('an address that a person gives', () => {
  test.each([
    'http://localhost:8080/x',
    'http://127.0.0.1:8080/',
    'http://2130706433:8080/',
    'http://0x7f.1:8080/',
    'http://[::1]:8080/',
    'http://[::ffff:127.0.0.1]:8080/',
    'http://169.254.169.254/latest/meta-data/',
    'http://192.168.1.1/',
  ])('law: %s is not called', async (address) => {
    await expect(openOutside(address, BOUNDS)).rejects.toThrow(/private network or on this machine; it was not called/);
  });

  test.each(['file:///etc/passwd', 'ftp://example.org/', 'http://a:b@example.org/', 'http://example.org:22/', 'words'])(
    'law: %s is refused with a sentence',
    async (address) => {
      await expect(openOutside(address, BOUNDS)).rejects.toBeInstanceOf(OutsideRefused);
    },
  );

  test('law: a redirection is looked at anew, and does not go on for ever', async () => {
    const asked: string[] = [];
    const at = await origin((request, response) => {
      asked.push(request.url ?? '');
      const to = { '/in': 'http://10.0.0.1/', '/round': '/round', '/on': '/there' }[request.url ?? ''];
      if (to === undefined) response.end('here');
      else response.writeHead(302, { location: to }).end();
    });
    expect(await text(`${at}/on`)).toBe('here');
    await expect(text(`${at}/in`)).rejects.toThrow(/10\.0\.0\.1 lies inside a private network/);
    await expect(text(`${at}/round`)).rejects.toThrow(/without end/);
    expect(asked.filter((path) => path === '/round')).toHaveLength(6);
  });

  test('law: too much, too slow, packed, or nothing there: each ends with a sentence', async () => {
    const at = await origin((request, response) => {
      if (request.url === '/long') response.end('x'.repeat(20_000));
      else if (request.url === '/packed') response.writeHead(200, { 'content-encoding': 'gzip' }).end('x');
      else if (request.url === '/none') response.writeHead(404).end();
      else response.write('begun');
    });
    await expect(text(`${at}/long`)).rejects.toThrow(/sent more than/);
    await expect(text(`${at}/packed`)).rejects.toThrow(/packed form/);
    await expect(text(`${at}/none`)).rejects.toThrow(/answered with 404/);
    await expect(text(`${at}/slow`)).rejects.toThrow(/took too long|broke off/);
  });

  test('law: nothing of ours goes along', async () => {
    let headers: Record<string, unknown> = {};
    const at = await origin((request, response) => {
      headers = request.headers;
      response.end();
    });
    await text(at);
    expect(Object.keys(headers).sort()).toEqual(['accept', 'accept-encoding', 'connection', 'host', 'user-agent']);
  });
});

async function post(of: Scene, seat: TakenSeat, path: string, body: string): Promise<[number, unknown]> {
  const answer = await of.get(seat, path, { method: 'POST', body, headers: { origin: of.address } });
  return [answer.status, await answer.json()];
}

test('story: a manifest is fetched from its address and its picture at the size needed; no other is ever asked for', async () => {
  const asked: string[] = [];
  const jpeg = await sharp({ create: { width: 600, height: 400, channels: 3, background: '#345' } })
    .jpeg()
    .toBuffer();
  const at = await origin((request, response) => {
    asked.push(request.url ?? '');
    if (request.url !== '/manifest.json') {
      response.end(jpeg);
      return;
    }
    const service = { id: `${at}/iiif/map`, type: 'ImageService3', profile: 'level2' };
    const body = { id: `${at}/full.jpg`, type: 'Image', width: 9000, height: 6000, service: [service] };
    const items = [{ type: 'AnnotationPage', items: [{ type: 'Annotation', motivation: 'painting', body }] }];
    response.end(
      JSON.stringify({
        '@context': 'http://iiif.io/api/presentation/3/context.json',
        id: `${at}/manifest.json`,
        type: 'Manifest',
        label: { en: ['River map'] },
        items: [{ id: `${at}/canvas`, type: 'Canvas', width: 9000, height: 6000, items }],
      }),
    );
  });
  const of = await scene({}, { mayCall: here });
  const [registrar, other] = [await of.seat('registrar'), await of.seat('curator')];
  const [status, answer] = await post(
    of,
    registrar,
    'manifests/fetch',
    JSON.stringify({ address: `${at}/manifest.json` }),
  );
  expect(status).toBe(200);
  const { id, text: manifest } = answer as ManifestAnswer;
  expect(JSON.parse(manifest)).toMatchObject({ type: 'Manifest' });
  // Held for whoever brought it, and nothing that it does not name.
  expect((await post(of, other, `manifests/${id}/pictures/0/0`, ''))[0]).toBe(404);
  expect((await post(of, registrar, `manifests/${id}/pictures/0/1`, ''))[0]).toBe(404);
  const [taken, facts] = await post(of, registrar, `manifests/${id}/pictures/0/0`, '');
  expect([taken, (facts as ImageFacts).widthPx]).toEqual([200, 600]);
  expect(asked).toEqual(['/manifest.json', '/iiif/map/full/2048,/0/default.jpg']);
});

test('story: what is no manifest, and a picture that is none, are refused with sentences', async () => {
  const at = await origin((_, response) => response.end('<html>'));
  const of = await scene({}, { mayCall: here });
  const seat = await of.seat('curator');
  const [status, answer] = await post(of, seat, 'manifests/fetch', JSON.stringify({ address: at }));
  expect([status, (answer as Refusal).what]).toEqual([
    422,
    'What came is no JSON, so no IIIF manifest. Nothing was kept.',
  ]);
  const painted = { type: 'Annotation', body: { type: 'Image', id: `${at}/a.jpg` } };
  const manifest = { type: 'Manifest', label: 'x', items: [{ items: [{ items: [painted] }] }] };
  const [, held] = await post(of, seat, 'manifests', JSON.stringify(manifest));
  const [refused, why] = await post(of, seat, `manifests/${(held as ManifestAnswer).id}/pictures/0/0`, '');
  expect([refused, (why as Refusal).what]).toEqual([422, expect.stringMatching(/not a JPEG, PNG, WebP or TIFF/)]);
});
