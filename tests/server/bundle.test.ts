/** A whole show taken out of one server and into another: nothing of it is lost, and nothing that is damaged comes in. */
import { documentFacts } from '@enfilade/server/bundle';
import type { BundleAnswer, ImageFacts, Refusal } from '@enfilade/shared/protocol';
import { DOCUMENT_NAMES } from '@enfilade/shared/seats';
import { digestOf, toCanonicalText } from '@enfilade/shared/sign-off';
import { unzipSync, zipSync } from 'fflate';
import sharp from 'sharp';
import { expect, test } from 'vitest';
import { type Scene, scene, type TakenSeat } from './scene.ts';

type Bytes = Uint8Array<ArrayBuffer>;

async function overwick(): Promise<{ readonly here: Scene; readonly lead: TakenSeat; readonly picture: Bytes }> {
  const here = await scene();
  const lead = await here.seat('lead', 'wren');
  const green = { create: { width: 60, height: 40, channels: 3 as const, background: '#208040' } };
  const picture = new Uint8Array(await sharp(green).png().toBuffer());
  const taken = await here.get(lead, 'images?name=gear.png', { method: 'POST', body: picture });
  const { sha256 } = (await taken.json()) as ImageFacts;
  const { sessions } = here.server;
  await sessions.get('checklist').act((doc) => {
    const gear = { number: 'L.9', title: 'Sluice gear', count: 1, lender: 'Lower Weir Conservancy', source: 'loan' };
    doc.getMap('objects').set('gear', { ...gear, picture: sha256, dateText: 'c. 1880', notes: '“tooth 3” — cracked' });
    doc.getMap('objects').set('gear/title', 'Sluice gear, cast iron');
  });
  await sessions.get('hang').act((doc) => {
    doc.getMap('settings').set('title', 'Slow Water');
    doc.getMap('vignettes').set('high', { name: 'High water', intent: '', focal: 'gear#1', order: 'a0' });
    doc.getMap('memberOf').set('gear#1', 'high');
    doc.getMap('places').set('gear#1', ['layout', 1000, 1500, 0, 0]);
  });
  await sessions.get('private').act((doc) => doc.getMap('values').set('gear', { value: '£9,000' }));
  const keep = { method: 'POST', body: JSON.stringify({ name: 'As it stands' }) };
  const headers = { 'content-type': 'application/json', origin: here.address };
  expect((await here.get(lead, 'acts/keep-state', { ...keep, headers })).status).toBe(200);
  return { here, lead, picture };
}

/** SHA-256 of each document's facts; who has a seat, and what they have looked at, is each server's own. */
function digestsOf({ server }: Scene): Record<string, string> {
  return Object.fromEntries(
    DOCUMENT_NAMES.map((name) => {
      const { people: _, readMarks: __, ...facts } = documentFacts(server.sessions.documents, name);
      return [name, digestOf(toCanonicalText(facts))];
    }),
  );
}

async function takenOut(here: Scene, seat: TakenSeat): Promise<Bytes> {
  const answer = await here.get(seat, 'bundle');
  expect([answer.status, answer.headers.get('content-type')]).toEqual([200, 'application/zip']);
  return new Uint8Array(await answer.arrayBuffer());
}

async function takenIn(there: Scene, seat: TakenSeat, body: Bytes): Promise<[number, BundleAnswer & Refusal]> {
  const answer = await there.get(seat, 'bundle', { method: 'POST', body, headers: { origin: there.address } });
  return [answer.status, (await answer.json()) as BundleAnswer & Refusal];
}

test('story: a show taken out and into an empty server is the same show, to the digest, the picture and the kept state', async () => {
  const { here, lead, picture } = await overwick();
  const bundle = await takenOut(here, lead);
  const there = await scene();
  const theirs = await there.seat('lead', 'another');
  // Their page has been open: what they have looked at is no beginning of a show.
  await there.server.sessions
    .get('talk')
    .act((doc) => doc.getMap('readMarks').set('wren/history', '2026-11-29T10:00:00Z'));
  const [status, answer] = await takenIn(there, theirs, bundle);
  expect([status, answer]).toEqual([200, { title: 'Slow Water', records: 1, pictures: 1, refused: [] }]);
  expect(digestsOf(there)).toEqual(digestsOf(here));
  const [original] = there.server.images.facts();
  expect(original?.sha256).toBe(here.server.images.facts()[0]?.sha256);
  const [state] = [...there.server.sessions.documents.all('states').values()];
  expect((await there.get(theirs, `states/${state?.digest}`)).status).toBe(200);
  // Who had a seat there is remembered, and has none here.
  expect(there.server.sessions.documents.get('people', 'wren')).toMatchObject({ gone: true });
  // And the same once more, after a restart and out again.
  await there.reopen();
  const again = unzipSync(await takenOut(there, theirs));
  expect(Object.entries(again).find(([name]) => name.startsWith('pictures/'))?.[1]).toEqual(picture);
  expect(digestsOf(there)).toEqual(digestsOf(here));
}, 60_000);

test('law: a show that is not empty, a seat that is no lead’s, a file that is no bundle: refused, and nothing changes', async () => {
  const { here, lead } = await overwick();
  const bundle = await takenOut(here, lead);
  const before = digestsOf(here);
  expect((await takenIn(here, lead, bundle))[0]).toBe(409);
  const there = await scene();
  const [theirs, curator] = [await there.seat('lead', 'other'), await there.seat('curator')];
  expect((await takenIn(there, curator, bundle))[0]).toBe(403);
  const parts = unzipSync(bundle);
  const changed = (change: Record<string, Uint8Array | undefined>): Bytes => {
    const kept = Object.entries({ ...parts, ...change }).filter(
      (part): part is [string, Bytes] => part[1] !== undefined,
    );
    return zipSync(Object.fromEntries(kept), { level: 0 }) as Bytes;
  };
  const words = new TextEncoder();
  const broken: [Bytes, RegExp][] = [
    [words.encode('no zip') as Bytes, /no show taken out/],
    [bundle.slice(0, bundle.length / 2), /no show taken out/],
    [changed({ 'show.json': undefined }), /“show.json” is missing/],
    [changed({ 'documents/hang.json': words.encode('{}') }), /“documents\/hang.json” is missing in it or damaged/],
    [changed({ 'documents/private.json': undefined }), /private.json/],
  ];
  for (const [bytes, what] of broken) {
    const [status, answer] = await takenIn(there, theirs, bytes);
    expect([status, answer.what]).toEqual([422, expect.stringMatching(what)]);
    expect(there.server.sessions.documents.all('objects').size).toBe(0);
  }
  expect(digestsOf(here)).toEqual(before);
}, 60_000);

test('law: what is private is in the bundle of whoever may read it, and nobody else is given one', async () => {
  const { here } = await overwick();
  const registrar = unzipSync(await takenOut(here, await here.seat('registrar')));
  expect(new TextDecoder().decode(registrar['documents/private.json'])).toContain('£9,000');
  for (const role of ['preparator', 'conservator', 'guest artist', 'viewer'] as const) {
    const answer = await here.get(await here.seat(role), 'bundle');
    expect([answer.status, await answer.text()]).toEqual([403, expect.not.stringContaining('£9,000')]);
  }
});

test('reference: the IIIF manifest has what Presentation 3.0 requires, and its pictures are served', async () => {
  const { here, lead } = await overwick();
  const answer = await here.get(lead, 'manifest.json');
  const manifest = await answer.json();
  // Presentation API 3.0, 5.2, 5.3, 5.5, 5.6: required properties of a manifest, canvas, page and annotation.
  expect(manifest['@context']).toBe('http://iiif.io/api/presentation/3/context.json');
  expect(manifest).toMatchObject({ type: 'Manifest', label: { none: ['Slow Water'] } });
  const [canvas] = manifest.items;
  expect(canvas).toMatchObject({ type: 'Canvas', width: 60, height: 40, label: { none: ['Sluice gear, cast iron'] } });
  const [annotation] = canvas.items[0].items;
  expect(annotation).toMatchObject({ type: 'Annotation', motivation: 'painting', target: canvas.id });
  for (const { id } of [manifest, canvas, canvas.items[0], annotation]) expect(URL.canParse(id)).toBe(true);
  const picture = await fetch(annotation.body.id, { headers: { cookie: lead.cookie } });
  expect([picture.status, picture.headers.get('content-type')]).toEqual([200, annotation.body.format]);
  expect(JSON.stringify(manifest)).not.toContain('9,000');
});
