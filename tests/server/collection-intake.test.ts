/** Records of a museum's own coming into the collection over HTTP: in parts, again, taken back, and told to whom. */

import { CollectionIntake } from '@enfilade/server/collection-intake';
import type { Limits } from '@enfilade/server/limits';
import type { CollectionPage, CollectionRecord } from '@enfilade/shared/collection';
import type {
  CollectionBack,
  CollectionImport,
  CollectionRowIn,
  CollectionTaken,
} from '@enfilade/shared/collection-in';
import { COLLECTION_IMPORTS_KEPT } from '@enfilade/shared/collection-in';
import sharp from 'sharp';
import { expect, test } from 'vitest';
import { type Scene, scene, type TakenSeat } from './scene.ts';

async function post<T>(here: Scene, seat: TakenSeat, path: string, body: unknown, status = 200): Promise<T> {
  const answer = await here.get(seat, `collection/${path}`, { method: 'POST', body: JSON.stringify(body) });
  expect(answer.status, path).toBe(status);
  return (await answer.json()) as T;
}

async function ask<T>(here: Scene, seat: TakenSeat, path: string): Promise<T> {
  return (await (await here.get(seat, `collection${path}`)).json()) as T;
}

async function bring(
  here: Scene,
  seat: TakenSeat,
  rows: readonly CollectionRowIn[],
): Promise<CollectionTaken & { id: string }> {
  const { id } = await post<CollectionImport>(here, seat, 'imports', { file: 'store.csv', rows: rows.length });
  return { id, ...(await post<CollectionTaken>(here, seat, `imports/${id}`, { rows })) };
}

async function back(here: Scene, seat: TakenSeat, id: string): Promise<{ back: number; stay: number }> {
  const all = { back: 0, stay: 0 };
  for (;;) {
    const told = await post<CollectionBack>(here, seat, `imports/${id}/back`, {});
    all.back += told.back;
    all.stay += told.stay;
    if (told.left === 0) return all;
  }
}

const numbersOf = (page: CollectionPage): string[] => page.records.map(({ number }) => number);

test('story: a file comes in, the same numbers again bring it up to date, and each is taken back as it was', async () => {
  const here = await scene();
  const registrar = await here.seat('registrar');
  const first = await bring(here, registrar, [
    {
      number: 'OM 1903.2',
      title: 'Eel trap',
      date: 'c. 1880',
      shown: '1987-12-31',
      storage: 'Bay 4',
      held: { value: '£40' },
    },
    { number: 'OM 1903.3', title: 'Bobbin, ash', shown: null, more: { weightKg: 0.2, framedText: '10 x 10 cm' } },
    { number: 'OM 1903.4', title: 'Mallet' },
  ]);
  expect(first).toMatchObject({ added: 3, updated: 0, same: 0, refused: [] });
  // As another file writes it: nothing doubles, what it does not say stays, its words are found and the old ones not.
  const second = await bring(here, registrar, [
    { number: 'om 1903-2', title: 'Grig weel' },
    { number: 'OM 1903.3', title: 'Bobbin, ash' },
  ]);
  expect(second).toMatchObject({ added: 0, updated: 1, same: 1 });
  const [trap] = (await ask<CollectionPage>(here, registrar, '?words=weel')).records;
  expect(trap).toMatchObject({ number: 'om 1903-2', date: 'c. 1880', storage: 'Bay 4', held: { value: '£40' } });
  expect((await ask<CollectionPage>(here, registrar, '?words=eel')).found).toBe(0);
  expect(numbersOf(await ask(here, registrar, '?from=1875&to=1890'))).toEqual(['om 1903-2']);
  // What no file says of is neither never shown nor long not shown.
  expect(numbersOf(await ask(here, registrar, '?shown=never'))).toEqual(['OM 1903.3']);
  expect(numbersOf(await ask(here, registrar, '?shown=2000'))).toEqual(['om 1903-2', 'OM 1903.3']);
  // The first is older: what the second has changed stays until that is taken back.
  expect(await back(here, registrar, second.id)).toEqual({ back: 1, stay: 0 });
  expect((await ask<CollectionPage>(here, registrar, '?words=eel')).records[0]?.number).toBe('OM 1903.2');
  await post(here, registrar, `imports/${second.id}`, { rows: [{ number: 'X.1' }] }, 409);
  expect(await back(here, registrar, first.id)).toEqual({ back: 3, stay: 0 });
  expect((await ask<CollectionPage>(here, registrar, '')).found).toBe(0);
  const list = await ask<CollectionImport[]>(here, registrar, '/imports');
  expect(list.map(({ added, updated, mayGoBack }) => [added, updated, mayGoBack])).toEqual([
    [0, 1, false],
    [3, 0, false],
  ]);
});

test('law: values and contacts reach who reads the private document, and nobody else by any path or any word', async () => {
  const here = await scene();
  const registrar = await here.seat('registrar');
  await bring(here, registrar, [
    { number: 'OM 1', title: 'Trap', held: { value: 'CANARY-VALUE', contact: 'CANARY-CONTACT' } },
  ]);
  const told: string[] = [];
  for (const role of ['lead', 'curator', 'registrar', 'preparator', 'conservator', 'guest artist', 'viewer'] as const) {
    const seat = await here.seat(role, `asking ${role}`);
    const paths = [
      '',
      '?words=trap',
      '/records?number=OM%201',
      '/like?number=OM%201',
      '/about',
      '/pull-list',
      '/numbers',
      '/imports',
    ];
    const texts = await Promise.all(paths.map(async (path) => (await here.get(seat, `collection${path}`)).text()));
    if (texts.some((text) => text.includes('CANARY'))) told.push(role);
    expect((await ask<CollectionPage>(here, seat, '?words=canary')).found).toBe(0);
  }
  expect(told).toEqual(['lead', 'curator', 'registrar']);
  for (const line of here.logged) expect(line).not.toContain('CANARY');
});

test('story: a photograph makes no record, is added to one, and stays when what brought the record in is taken back', async () => {
  const here = await scene();
  const curator = await here.seat('curator');
  const { id } = await bring(here, curator, [{ number: 'OM 1' }, { number: 'OM 2' }]);
  const png = await sharp({ create: { width: 9, height: 9, channels: 3, background: '#a33' } })
    .png()
    .toBuffer();
  const { sha256 } = await here.server.images.add(new Uint8Array(png), 'a.png');
  const record = await post<CollectionRecord>(here, curator, 'photograph', { number: 'om-1', picture: sha256 });
  expect(record).toMatchObject({ number: 'OM 1', picture: sha256 });
  const many = await bring(here, curator, [
    { number: 'om 2', picture: sha256, known: true },
    { number: 'OM 3', picture: sha256, known: true },
  ]);
  expect(many).toMatchObject({ added: 0, updated: 1, refused: [{ row: 1, what: expect.stringContaining('OM 3') }] });
  expect(numbersOf(await ask(here, curator, '?picture=without'))).toEqual([]);
  expect(await back(here, curator, id)).toEqual({ back: 0, stay: 2 });
  await post(here, curator, 'photograph', { number: 'OM 9', picture: sha256 }, 404);
  await post(here, curator, 'photograph', { number: 'OM 1', picture: 'f'.repeat(64) }, 400);
});

test('law: what is no row, too much, or too long stays out with a sentence, and the rest of its part goes in', async () => {
  const limits: Partial<Limits> = { collectionRecords: 3 };
  const here = await scene(limits);
  const lead = await here.seat('lead');
  const rows = [
    ...[null, 7, {}, { number: '  ' }, { number: 'x'.repeat(201) }, { number: 'A', title: 'y'.repeat(20_001) }],
    ...[
      { number: 'B', shown: 'last week' },
      { number: 'C', picture: 'nope' },
      { number: 'D', __proto__: { storage: 1 } },
    ],
    ...[{ number: 'E', more: { weightKg: 'heavy', count: 3 } }, { number: 'F', title: 5 }, { number: 'G' }],
  ];
  const taken = await bring(here, lead, rows as never);
  expect(taken.added).toBe(3);
  expect(taken.refused.map(({ row }) => row)).toEqual([0, 1, 2, 3, 4, 5, 6, 7, 11]);
  for (const { what } of taken.refused) expect(what).toMatch(/^[A-Z“].*\.$/);
  expect(taken.refused.at(-1)?.what).toContain('The collection is full');
  expect((await ask<CollectionPage>(here, lead, '?words=E')).records[0]?.more).toEqual({ count: 3 });
  for (const bad of [
    { rows: 1 },
    { file: 'a', rows: 0 },
    { file: 'a', rows: 1e9 },
    { file: 'a'.repeat(301), rows: 1 },
  ]) {
    await post(here, lead, 'imports', bad, 400);
  }
  for (const bad of [{}, { rows: [] }, { rows: Array(401).fill({ number: 'Z' }) }]) {
    await post(here, lead, `imports/${taken.id}`, bad, 400);
  }
  await post(here, lead, 'imports/none', { rows: [{ number: 'Z' }] }, 404);
  await post(here, lead, 'imports/none/back', {}, 404);
  const large = { rows: [{ number: 'Z', title: 'z'.repeat(5 << 20) }] };
  await post(here, lead, `imports/${taken.id}`, large, 413);
});

test('law: the way back is kept for the last bringings-in, and a row sent again after a lost answer changes nothing', async () => {
  const here = await scene();
  const lead = await here.seat('lead');
  const oldest = await bring(here, lead, [{ number: 'OM 1', title: 'Jug' }]);
  const again = await post<CollectionTaken>(here, lead, `imports/${oldest.id}`, {
    rows: [{ number: 'OM 1', title: 'Jug' }],
  });
  expect(again).toMatchObject({ added: 0, updated: 0, same: 1 });
  for (let n = 0; n < COLLECTION_IMPORTS_KEPT; n++) await bring(here, lead, [{ number: `OM ${n + 2}` }]);
  expect(await ask<CollectionImport[]>(here, lead, '/imports')).toHaveLength(COLLECTION_IMPORTS_KEPT);
  await post(here, lead, `imports/${oldest.id}/back`, {}, 404);
});

test('law: while thousands of rows are written, others’ edits come into the log in between and are not held to the end', async () => {
  const here = await scene();
  const client = await here.client(await here.seat('curator'), 'hang');
  client.sendStepOne();
  await client.when(({ updatesReceived }) => updatesReceived > 0);
  const intake = new CollectionIntake(here.server.store, here.server.collection, 10_000);
  const rows = Array.from({ length: 2400 }, (_, n) => ({
    number: `OM 1919.${n}`,
    title: `Printing block ${n}, rose and leaf`,
    storage: `Store 2, bay ${n % 40}`,
  }));
  const { id } = await intake.begin('store.csv', rows.length, 'Ama');
  let coming = true;
  const taken = intake.take(id, rows).finally(() => {
    coming = false;
  });
  let edits = 0;
  while (coming) {
    const before = client.acknowledged;
    client.edit((doc) => doc.getMap('settings').set('title', `Slow Water ${edits}`));
    await client.when(({ acknowledged }) => acknowledged > before);
    edits += 1;
  }
  expect((await taken).added).toBe(rows.length);
  // Held to the end, there would be one or two.
  expect(edits).toBeGreaterThan(3);
  const lead = await here.seat('lead');
  expect((await ask<CollectionPage>(here, lead, '?words=rose')).more).toBe(true);
});
