import { mkdtemp, readdir, readFile, rm, writeFile } from 'node:fs/promises';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { backUp, restore } from '@enfilade/server/backup';
import { FolderInUse } from '@enfilade/server/folder-lock';
import { SCHEMA_VERSION } from '@enfilade/shared/schema';
import sharp from 'sharp';
import { expect, onTestFinished, test } from 'vitest';
import { WebSocket } from 'ws';
import * as Y from 'yjs';
import { Client, type Scene, scene, type TakenSeat } from './scene.ts';

async function folder(): Promise<string> {
  const made = await mkdtemp(join(tmpdir(), 'enfilade-backup-'));
  onTestFinished(() => rm(made, { recursive: true, force: true }));
  return made;
}

/** A page of ours as it comes back after a silence: with what it held, and the epoch it was opened in. */
async function comesBack(here: Scene, seat: TakenSeat, epoch: number, held: Y.Doc): Promise<Client> {
  const socket = new WebSocket(
    `${here.socketUrl(seat, 'hang')}?schema=${SCHEMA_VERSION}&epoch=${epoch}`,
    ['enfilade.1'],
    { headers: { cookie: seat.cookie } },
  );
  const client = new Client(socket);
  await client.when(({ closed, stepOnes }) => closed !== null || stepOnes > 0);
  if (client.closed === null) client.sendUpdate(Y.encodeStateAsUpdate(held), 1);
  return client;
}

test('story: a show is copied while two work, goes on, and is brought back: neither page brings back what came after', async () => {
  const here = await scene();
  const dov = await here.seat('curator');
  const isolde = await here.seat('guest artist');
  const leaver = await here.seat('viewer');
  const a = await here.client(dov, 'hang');
  const b = await here.client(isolde, 'hang');
  b.sendStepOne();
  const picture = await sharp({ create: { width: 40, height: 30, channels: 3, background: '#557766' } })
    .png()
    .toBuffer();
  const { sha256 } = await here.server.images.add(new Uint8Array(picture), 'a.png');
  a.edit((doc) => doc.getMap('places').set('oil#1', 'before the copy'));
  await a.when(({ acknowledged }) => acknowledged === 1);

  const file = join(await folder(), 'show.enfilade');
  // While the server runs.
  expect((await backUp(here.dataDirectory, file)).files).toBeGreaterThan(0);
  await expect(backUp(here.dataDirectory, file)).rejects.toThrow(/is there already/);
  expect((await readFile(file)).includes(dov.token)).toBe(false);

  a.edit((doc) => doc.getMap('places').set('oil#1', 'after the copy'));
  await a.when(({ acknowledged }) => acknowledged === 2);
  await b.when(({ doc }) => doc.getMap('places').get('oil#1') === 'after the copy');
  await here.server.seats.revoke(leaver.seatId);
  await expect(restore(file, here.dataDirectory)).rejects.toThrow(FolderInUse);
  const epochBefore = (await (await here.get(dov, 'me')).json()).epoch as number;

  await here.server.close();
  const restored = await restore(file, here.dataDirectory);
  await here.open();
  const me = await (await here.get(dov, 'me')).json();
  expect(me.epoch).toBe(restored.epoch);
  expect(me.epoch).toBeGreaterThan(epochBefore);

  // Both pages come back holding the future; they are told, and nothing of it is taken.
  for (const [seat, held] of [
    [dov, a.doc],
    [isolde, b.doc],
  ] as const) {
    const client = await comesBack(here, seat, epochBefore, held);
    expect(client.closed?.code).toBe(4412);
  }
  // Loaded anew they go on from the copy.
  const fresh = await comesBack(here, dov, me.epoch, new Y.Doc());
  fresh.sendStepOne();
  await fresh.when(({ doc }) => doc.getMap('places').get('oil#1') === 'before the copy');
  fresh.edit((doc) => doc.getMap('places').set('oil#1', 'and on'));
  await fresh.when(({ acknowledged }) => acknowledged === 2);
  expect(here.server.sessions.get('hang').doc.getMap('places').get('oil#1')).toBe('and on');

  // Its picture is there; a seat taken back since the copy stays taken back; what was there is put aside.
  expect((await here.get(dov, `images/${sha256}/256.webp`)).status).toBe(200);
  expect((await here.get(leaver, 'me')).status).toBe(401);
  expect(await readdir(restored.before ?? '')).toContain('store.sqlite');
});

test('story: a copy is brought into an empty folder, twice over, and each time the epoch is new', async () => {
  const here = await scene();
  const seat = await here.seat('curator');
  const a = await here.client(seat, 'hang');
  a.edit((doc) => doc.getMap('places').set('oil#1', 1));
  await a.when(({ acknowledged }) => acknowledged === 1);
  const file = join(await folder(), 'show.enfilade');
  await backUp(here.dataDirectory, file);
  const at = new Date('2026-11-25T12:00:00Z');
  const first = await restore(file, await folder(), at);
  const second = await restore(file, await folder(), new Date(at.getTime() + 1000));
  expect([first.before, second.before]).toEqual([null, null]);
  expect(second.epoch).toBeGreaterThan(first.epoch);
});

test('law: what is no backup, or is damaged, changes nothing', async () => {
  const here = await scene();
  const file = join(await folder(), 'show.enfilade');
  await backUp(here.dataDirectory, file);
  await here.server.close();
  const bytes = await readFile(file);
  const damaged = Uint8Array.from(bytes);
  damaged.fill(0xff, bytes.length >> 1);
  const before = await readFile(join(here.dataDirectory, 'store.sqlite'));
  const cases: readonly [string, Uint8Array][] = [
    ['text', Buffer.from('not a backup')],
    ['empty', Buffer.alloc(0)],
    ['damaged', damaged],
    ['cut', bytes.subarray(0, bytes.length >> 1)],
  ];
  for (const [name, content] of cases) {
    const path = join(await folder(), name);
    await writeFile(path, content);
    await expect(restore(path, here.dataDirectory)).rejects.toThrow(/is no backup of a show, or is damaged/);
  }
  await expect(restore(join(here.dataDirectory, 'nowhere'), here.dataDirectory)).rejects.toThrow(/there is no file/);
  expect(await readFile(join(here.dataDirectory, 'store.sqlite'))).toEqual(before);
  await here.open();
});
