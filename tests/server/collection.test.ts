/** The collection over HTTP: found by words and facts, alike by looks, and its storage places for few. */
import { mkdtemp, rm } from 'node:fs/promises';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { backUp, restore } from '@enfilade/server/backup';
import { matchOf } from '@enfilade/server/collection';
import { collectionRecords } from '@enfilade/server/demo/collection';
import type { CollectionLike, CollectionPage, CollectionRecord, PullList } from '@enfilade/shared/collection';
import { sayOfCollection, takeFromCollection } from '@enfilade/shared/collection';
import type { Role } from '@enfilade/shared/seats';
import sharp from 'sharp';
import { expect, onTestFinished, test } from 'vitest';
import { type Scene, scene, type TakenSeat } from './scene.ts';

const KEPT = 'CANARY-STORE, bay 4';

function record(number: string, title: string, more: Partial<CollectionRecord> = {}) {
  const plain = { maker: '', date: '', medium: '', type: 'tool', dimensions: '', credit: '', shown: null };
  return { number, title, ...plain, picture: null, ...more, storage: KEPT };
}

async function disc(here: Scene, fill: string, name: string, square = false): Promise<string> {
  const shape = square ? '<rect x="4" y="4" width="92" height="92"' : '<circle cx="50" cy="50" r="46"';
  const svg = `<svg xmlns="http://www.w3.org/2000/svg" width="100" height="100">${shape} fill="${fill}"/></svg>`;
  const png = await sharp(Buffer.from(svg)).png().toBuffer();
  return (await here.server.images.add(new Uint8Array(png), name)).sha256;
}

async function museum(): Promise<Scene> {
  const here = await scene();
  const [blue, alsoBlue, red] = [
    await disc(here, '#23527c', 'blue'),
    await disc(here, '#28567f', 'also blue'),
    await disc(here, '#b03020', 'red', true),
  ];
  await here.server.collection.fill([
    record('OM 1901.100.1', 'Bobbin, élm', { type: 'tool', date: 'c. 1840', shown: '1987-05-02', picture: blue }),
    record('OM 1901.100.2', 'Bobbin, ash', { type: 'tool', date: '1850s', picture: alsoBlue }),
    record('OM 1901.101.1', 'Day book', { type: 'paper', date: '1923', medium: 'Ink on paper' }),
    record('OM 1901.102.1', 'Clock dial', {
      type: 'clock dial',
      date: '1780',
      maker: 'A. Tarrowby',
      picture: alsoBlue,
    }),
    record('OM 1901.102.2', 'Clock dial, red', { type: 'clock dial', date: '1781', picture: red }),
  ]);
  return here;
}

async function ask<T>(here: Scene, seat: TakenSeat, path: string): Promise<T> {
  const answer = await here.get(seat, `collection${path}`);
  expect(answer.status, path).toBe(200);
  return (await answer.json()) as T;
}

const numbersOf = (page: CollectionPage): string[] => page.records.map(({ number }) => number);

test('story: the artist finds things by the beginnings of words, by number, by kind, by years, by what was never shown', async () => {
  const here = await museum();
  const artist = await here.seat('guest artist');
  const found = async (query: string) => numbersOf(await ask<CollectionPage>(here, artist, `?${query}`)).sort();
  expect(await found('words=bobb')).toEqual(['OM 1901.100.1', 'OM 1901.100.2']);
  expect(await found('words=elm')).toEqual(['OM 1901.100.1']);
  expect(await found('words=1901.102')).toEqual(['OM 1901.102.1', 'OM 1901.102.2']);
  expect(await found('words=red%20dial')).toEqual(['OM 1901.102.2']);
  expect(await found('type=paper')).toEqual(['OM 1901.101.1']);
  expect(await found('from=1847&to=1930')).toEqual(['OM 1901.100.2', 'OM 1901.101.1']);
  expect(await found('words=bobbin&shown=never')).toEqual(['OM 1901.100.2']);
  expect(await found('words=bobbin&shown=1987')).toEqual(['OM 1901.100.1', 'OM 1901.100.2']);
  expect(await found('words=bobbin&shown=1986')).toEqual(['OM 1901.100.2']);
  expect(await found('picture=without')).toEqual(['OM 1901.101.1']);
  expect(await found('limit=2&offset=3')).toEqual(['OM 1901.102.1', 'OM 1901.102.2']);
  expect(await ask(here, artist, '/about')).toMatchObject({ count: 5, pictured: 4, neverShown: 4 });
});

test('story: what looks like a thing comes before what does not; an echo is unlike in kind and near in colour', async () => {
  const here = await museum();
  const artist = await here.seat('guest artist');
  const like = await ask<CollectionLike>(here, artist, '/like?number=om%201901-100-1');
  expect(like.of.title).toBe('Bobbin, élm');
  expect(like.found[0]).toMatchObject({ record: { number: 'OM 1901.100.2' } });
  expect(like.found[0]?.words).toContain('like in colour');
  expect(like.found.at(-1)?.record.number).toBe('OM 1901.102.2');
  const echo = await ask<CollectionLike>(here, artist, '/like?number=OM%201901.100.1&by=echo');
  expect(echo.found.map(({ record: { number } }) => number)).toContain('OM 1901.102.1');
  expect(echo.found.map(({ record: { number } }) => number)).not.toContain('OM 1901.100.2');
  // From a thing of the checklist too: the artist's own.
  const documents = here.server.sessions.documents;
  const picture = like.of.picture;
  await here.server.sessions
    .get('checklist')
    .act((doc) =>
      doc
        .getMap('objects')
        .set('panel', { number: 'A.1', title: 'Panel', count: 1, lender: '', source: 'artist', picture }),
    );
  expect(documents.get('objects', 'panel')?.title).toBe('Panel');
  expect((await ask<CollectionLike>(here, artist, '/like?object=panel')).found.length).toBeGreaterThan(0);
});

test('law: storage places reach lead, curator, registrar and preparator, and nobody else by any path or any word', async () => {
  const here = await museum();
  const told: Role[] = [];
  const roles = ['lead', 'curator', 'registrar', 'preparator', 'conservator', 'guest artist', 'viewer'] as const;
  await here.server.sessions.get('talk').act(() => {
    const said = { by: 'a', name: 'A', role: 'guest artist', at: '2026-05-12T09:00:00.000Z' } as const;
    here.server.sessions.documents.write(sayOfCollection('OM 1901.100.1', 'yes', said).changes, 'test');
  });
  for (const role of roles) {
    const seat = await here.seat(role);
    const paths = ['', '?words=bobbin', '/about', '/records?number=OM%201901.100.1', '/like?number=OM%201901.100.1'];
    const texts: string[] = [];
    for (const path of [...paths, '/pull-list', '/like?number=OM%201901.100.1&by=echo']) {
      texts.push(await (await here.get(seat, `collection${path}`)).text());
    }
    if (texts.some((text) => text.includes('CANARY'))) told.push(role);
    // Nor can it be guessed by searching for it.
    expect(await ask<CollectionPage>(here, seat, '?words=canary')).toMatchObject({ records: [], found: 0 });
    const pull = await here.get(seat, 'collection/pull-list');
    if (pull.status === 200) {
      expect((await pull.json()) as PullList).toMatchObject([
        { record: { storage: KEPT, title: 'Bobbin, élm' }, why: 'yes' },
      ]);
    } else expect(pull.status).toBe(403);
  }
  expect(told).toEqual(['lead', 'curator', 'registrar', 'preparator']);
});

test('law: what cannot be asked is refused with a sentence, and signs of the query language mean nothing', async () => {
  const here = await museum();
  const seat = await here.seat('viewer');
  for (const bad of [
    '?limit=1000',
    '?offset=-1',
    '?from=abc',
    '?picture=maybe',
    '?shown=1.5',
    `?words=${'x'.repeat(201)}`,
  ]) {
    const answer = await here.get(seat, `collection${bad}`);
    expect(answer.status, bad).toBe(400);
    expect(await answer.json(), bad).toMatchObject({ what: expect.stringMatching(/\.$/), where: expect.any(String) });
  }
  for (const path of ['/like', '/like?number=x&by=magic'])
    expect((await here.get(seat, `collection${path}`)).status).toBe(400);
  for (const path of ['/like?number=none', '/private', '/pull-list/x', '/__proto__', '/constructor']) {
    expect((await here.get(seat, `collection${path}`)).status, path).toBe(404);
  }
  for (const words of ['"', 'a OR b', 'NEAR(', 'title:x', '*', '^', "';--", '\u0000', '-bobbin"', '%', 'x*"']) {
    const answer = await here.get(seat, `collection?words=${encodeURIComponent(words)}`);
    expect(answer.status, words).toBe(200);
  }
  expect(matchOf('bobbin OR "x')).toBe('"bobbin"* "OR"* "x"*');
  expect((await here.get(seat, 'collection', { method: 'POST', body: '{}' })).status).toBe(404);
});

test('law: a thing said yes to is one record of the checklist whoever takes it, with its picture, and its storage place in private alone', async () => {
  const here = await museum();
  const registrar = await here.seat('registrar');
  const [record1] = await ask<CollectionRecord[]>(here, registrar, '/records?number=OM%201901.100.1');
  if (record1 === undefined) throw new Error('the record is not told');
  const { documents } = here.server.sessions;
  const [one, other] = [takeFromCollection(documents, [record1]), takeFromCollection(documents, [record1])];
  expect(one.ids).toEqual(other.ids);
  documents.write(one.changes, 'test');
  documents.write(other.changes, 'test');
  const [id = ''] = one.ids;
  expect([...documents.all('objects').keys()]).toEqual([id]);
  expect(documents.get('objects', id)).toMatchObject({
    number: 'OM 1901.100.1',
    picture: record1.picture,
    source: 'collection',
  });
  expect(JSON.stringify(documents.get('objects', id))).not.toContain('CANARY');
  expect(documents.get('values', id)).toEqual({ storage: KEPT });
  // Taken away and taken again, it is back; what is there already is not taken twice.
  documents.write([{ root: 'objects', key: `${id}/removed`, value: true }], 'test');
  documents.write(takeFromCollection(documents, [record1]).changes, 'test');
  expect(documents.get('objects', id)?.title).toBe('Bobbin, élm');
  expect(takeFromCollection(documents, [record1]).changes).toEqual([]);
});

test('law: the generated collection is one and the same each time, no number twice, and mostly not photographed', () => {
  const made = collectionRecords((key) => key);
  expect(collectionRecords((key) => key)).toEqual(made);
  expect(new Set(made.map(({ number }) => number)).size).toBe(made.length);
  const pictures = new Map<string, number>();
  for (const { picture } of made) if (picture !== null) pictures.set(picture, (pictures.get(picture) ?? 0) + 1);
  expect(Math.max(...pictures.values())).toBeLessThanOrEqual(2);
  const pictured = made.filter(({ picture }) => picture !== null).length;
  expect(pictured).toBeGreaterThan(200);
  expect(pictured).toBeLessThan(made.length / 10);
});

test('law: a backup carries the collection, and brought back it is found by its words', async () => {
  const here = await museum();
  const seat = await here.seat('viewer');
  const folder = await mkdtemp(join(tmpdir(), 'enfilade-collection-'));
  onTestFinished(() => rm(folder, { recursive: true, force: true }));
  const file = join(folder, 'show.enfilade');
  await backUp(here.dataDirectory, file);
  await here.server.collection.fill([record('OM 1999.1', 'Bobbin, of after the copy')]);
  await here.server.close();
  await restore(file, here.dataDirectory);
  await here.open();
  const found = numbersOf(await ask<CollectionPage>(here, seat, '?words=bobbin')).sort();
  expect(found).toEqual(['OM 1901.100.1', 'OM 1901.100.2']);
});
