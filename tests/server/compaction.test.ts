import { mkdtemp, rm } from 'node:fs/promises';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { compact } from '@enfilade/server/compaction';
import { docFrom } from '@enfilade/server/session';
import { Store } from '@enfilade/server/store';
import { expect, onTestFinished, test } from 'vitest';
import * as Y from 'yjs';
import { scene, synced, whenDoc } from './scene.ts';

test('law: compaction loses nothing, keeps what comes meanwhile, and opens from the snapshot', async () => {
  const here = await scene({ compactAfterUpdates: 25 });
  const client = await here.client(await here.seat('curator'), 'hang');
  for (let n = 0; n < 400; n++) {
    client.edit((doc) => {
      const places = doc.getMap('places');
      places.set(`block#${n % 10}`, n);
      if (n % 7 === 6) places.delete(`block#${n % 10}`);
    });
  }
  await client.when(({ acknowledged }) => acknowledged === 400);
  await expect.poll(() => here.server.sessions.compactions).toBeGreaterThan(0);
  await here.server.sessions.compactAll();
  client.edit((doc) => doc.getMap('places').set('after#1', 'tail'));
  await client.when(({ acknowledged }) => acknowledged === 401);
  const stored = await here.server.store.load('hang');
  expect(stored.snapshot).not.toBeNull();
  expect(stored.updates).toHaveLength(1);
  expect(Y.equalSnapshots(Y.snapshot(docFrom(stored)), Y.snapshot(client.doc))).toBe(true);
  await here.reopen();
  const { doc } = here.server.sessions.get('hang');
  expect(doc.getMap('places').toJSON()).toEqual(client.doc.getMap('places').toJSON());
  expect(Y.equalSnapshots(Y.snapshot(doc), Y.snapshot(client.doc))).toBe(true);
});

test('law: a snapshot that does not hold everything is never put in the place of the log', async () => {
  const here = await scene();
  const client = await here.client(await here.seat('curator'), 'hang');
  for (let n = 0; n < 5; n++) client.edit((doc) => doc.getMap('places').set(`block#${n}`, n));
  await client.when(({ acknowledged }) => acknowledged === 5);
  const session = here.server.sessions.get('hang');
  // A document whose encoding says less than it holds.
  const forgetful = Object.create(session, {
    doc: {
      get: () => {
        reads += 1;
        return reads === 1 ? new Y.Doc() : session.doc;
      },
    },
  });
  let reads = 0;
  await expect(compact(forgetful, here.server.store)).rejects.toThrow(/does not hold/);
  const stored = await here.server.store.load('hang');
  expect(stored.snapshot).toBeNull();
  expect(stored.updates).toHaveLength(5);
});

test('law: updates that wait for a predecessor survive compaction and a restart', async () => {
  const here = await scene();
  const client = await here.client(await here.seat('curator'), 'hang');
  const updates: Uint8Array[] = [];
  client.doc.on('update', (update: Uint8Array) => updates.push(update));
  for (let n = 0; n < 3; n++) client.doc.getMap('places').set(`block#${n}`, n);
  client.sendUpdate(updates[1] as Uint8Array);
  client.sendUpdate(updates[2] as Uint8Array);
  await client.when(({ acknowledged }) => acknowledged === 2);
  await here.server.sessions.compactAll();
  expect((await here.server.store.load('hang')).updates).toEqual([]);
  await here.reopen();
  const provider = here.stock(await here.seat('curator'), 'hang');
  await synced(provider);
  Y.applyUpdate(provider.doc, updates[0] as Uint8Array);
  const { doc } = here.server.sessions.get('hang');
  await whenDoc(doc, () => doc.getMap('places').size === 3);
  expect(doc.getMap('places').toJSON()).toEqual({ 'block#0': 0, 'block#1': 1, 'block#2': 2 });
});

test('law: sequence numbers go on after everything was compacted away', async () => {
  const folder = await mkdtemp(join(tmpdir(), 'enfilade-'));
  onTestFinished(() => rm(folder, { recursive: true, force: true }));
  const bytes = Uint8Array.of(0, 0);
  let store = await Store.open(folder);
  const first = await store.appendAll([
    { document: 'hang', bytes },
    { document: 'talk', bytes },
  ]);
  expect(first).toEqual([1, 2]);
  await store.replaceBySnapshot('talk', { seq: 2, bytes: Uint8Array.of(0, 0) });
  await store.replaceBySnapshot('hang', { seq: 1, bytes: Uint8Array.of(0, 0) });
  await store.close();
  store = await Store.open(folder);
  expect(await store.appendAll([{ document: 'hang', bytes }])).toEqual([3]);
  expect((await store.load('hang')).updates.map(({ seq }) => seq)).toEqual([3]);
  await store.close();
});
