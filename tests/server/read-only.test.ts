import { expect, test } from 'vitest';
import * as Y from 'yjs';
import { type Client, type Scene, scene, synced, whenDoc } from './scene.ts';

const LARGE = 'x'.repeat(60_000);

/** From now on the file may not grow, as on a full disk. */
function fill(here: Scene): void {
  here.server.store.limitPages(1);
}

function makeRoom(here: Scene): void {
  here.server.store.limitPages(null);
}

const last = (client: Client): string | undefined => client.notices.at(-1)?.kind;

test('story: the disk is full: both are told, nothing more is acknowledged, and with room made all of it is kept', async () => {
  const here = await scene({ retryMs: 20 });
  const seat = await here.seat('curator');
  const a = await here.client(seat, 'hang');
  const b = await here.client(await here.seat('guest artist'), 'talk');
  a.edit((doc) => doc.getMap('places').set('before#1', 1));
  await a.when(({ acknowledged }) => acknowledged === 1);

  fill(here);
  a.edit((doc) => doc.getMap('places').set('stuck#1', LARGE));
  await Promise.all([
    a.when((client) => last(client) === 'read-only'),
    b.when((client) => last(client) === 'read-only'),
  ]);
  expect((await fetch(`${here.address}/health`)).status).toBe(503);
  a.edit((doc) => doc.getMap('places').set('dropped#1', 1));
  b.edit((doc) => doc.getMap('yes').set('dropped#2', 1));
  b.sendStepOne();
  await b.when(({ updatesReceived }) => updatesReceived === 1);
  expect(a.acknowledged).toBe(1);
  expect(b.acknowledged).toBe(0);
  await expect(here.server.sessions.get('record').act((doc) => doc.getMap('versions').set('1', 1))).rejects.toThrow(
    /cannot write its log/,
  );
  const late = await here.client(seat, 'hang');
  await late.when((client) => last(client) === 'read-only');

  const asked = [a.stepOnes, b.stepOnes];
  makeRoom(here);
  await Promise.all([a.when((client) => last(client) === 'writable'), b.when((client) => last(client) === 'writable')]);
  // Each is asked for what is missing, and answers as every provider does.
  await a.when(({ stepOnes }) => stepOnes === (asked[0] as number) + 1);
  await b.when(({ stepOnes }) => stepOnes === (asked[1] as number) + 1);
  expect(a.acknowledged).toBeLessThan(3);
  // Before that answer something new goes out: it must not be taken for the acknowledgement of what was dropped.
  a.edit((doc) => doc.getMap('places').set('after#1', 1));
  const { store } = here.server;
  await expect.poll(async () => (await store.load('hang')).updates.length).toBe(3);
  expect(a.acknowledged).toBeLessThan(3);
  a.sendUpdate(Y.encodeStateAsUpdate(a.doc), 1);
  b.sendUpdate(Y.encodeStateAsUpdate(b.doc), 1);
  await a.when(({ acknowledged }) => acknowledged === 5);
  await b.when(({ acknowledged }) => acknowledged === 2);
  await here.reopen();
  expect([...here.server.sessions.get('hang').doc.getMap('places').keys()].sort()).toEqual([
    'after#1',
    'before#1',
    'dropped#1',
    'stuck#1',
  ]);
  expect(here.server.sessions.get('talk').doc.getMap('yes').toJSON()).toEqual({ 'dropped#2': 1 });
});

test('story: an act caught in a failing batch is refused with a sentence; the edit beside it is kept and tried again', async () => {
  const here = await scene({ retryMs: 20 });
  const a = await here.client(await here.seat('curator'), 'hang');
  const record = here.server.sessions.get('record');
  fill(here);
  const act = record.act((doc) => doc.getMap('signatures').set('v/p', LARGE));
  a.edit((doc) => doc.getMap('places').set('beside#1', LARGE));
  await expect(act).rejects.toThrow(
    'The server cannot write its log: its disk is full. Nothing was done; try again later.',
  );
  await a.when((client) => last(client) === 'read-only');
  makeRoom(here);
  await a.when((client) => last(client) === 'writable');
  // As every provider answers when it is asked what is missing.
  a.sendUpdate(Y.encodeStateAsUpdate(a.doc), 1);
  await a.when(({ acknowledged }) => acknowledged === 2);
  await record.act((doc) => doc.getMap('signatures').set('v/q', 'signed'));
  await here.reopen();
  expect(here.server.sessions.get('record').doc.getMap('signatures').toJSON()).toEqual({ 'v/q': 'signed' });
  expect(here.server.sessions.get('hang').doc.getMap('places').has('beside#1')).toBe(true);
});

test('story: stock providers lose nothing over a full disk either', async () => {
  const here = await scene({ retryMs: 20 });
  const a = here.stock(await here.seat('curator'), 'hang');
  const b = here.stock(await here.seat('guest artist'), 'hang');
  await Promise.all([synced(a), synced(b)]);
  fill(here);
  a.doc.getMap('places').set('stuck#1', LARGE);
  await expect.poll(() => here.server.sessions.commit.readOnly).not.toBeNull();
  for (let n = 0; n < 20; n++) a.doc.getMap('places').set('dropped#1', n);
  makeRoom(here);
  await whenDoc(b.doc, () => b.doc.getMap('places').get('dropped#1') === 19);
  expect(b.doc.getMap('places').get('stuck#1')).toBe(LARGE);
  expect((await fetch(`${here.address}/health`)).status).toBe(200);
});
