import { CLOSE, MESSAGE_HELLO } from '@enfilade/shared/protocol';
import * as encoding from 'lib0/encoding';
import { expect, test } from 'vitest';
import { Awareness } from 'y-protocols/awareness';
import type { WebsocketProvider } from 'y-websocket';
import * as Y from 'yjs';
import { scene, synced } from './scene.ts';

type State = { person?: { id: string; name: string; role: string }; at?: string; drag?: unknown } | undefined;

async function whenPresence(
  provider: WebsocketProvider,
  holds: (states: Map<number, State>) => boolean,
): Promise<void> {
  const states = provider.awareness.getStates() as Map<number, State>;
  while (!holds(states)) await new Promise<void>((look) => provider.awareness.once('update', () => look()));
}

test('story: whoever one claims to be, others see who one is', async () => {
  const here = await scene();
  const a = here.stock(await here.seat('curator', 'castellane'), 'hang');
  const b = here.stock(await here.seat('guest artist', 'fennimarsh'), 'hang');
  await Promise.all([synced(a), synced(b)]);
  b.awareness.setLocalState({ person: { id: 'castellane', name: 'Somebody', role: 'lead' }, at: 'wall/dye:head' });
  await whenPresence(a, (states) => states.get(b.doc.clientID)?.at === 'wall/dye:head');
  expect(a.awareness.getStates().get(b.doc.clientID)).toEqual({
    person: { id: 'fennimarsh', name: 'The guest artist', role: 'guest artist' },
    at: 'wall/dye:head',
  });
});

test('law: a socket speaks for one id: what it says of another is dropped, and nobody loses their ring', async () => {
  const here = await scene();
  const a = here.stock(await here.seat('curator'), 'hang');
  await synced(a);
  a.awareness.setLocalState({ at: 'wall/wheel:left' });
  const watcher = here.stock(await here.seat('lead'), 'hang');
  await whenPresence(watcher, (states) => states.get(a.doc.clientID)?.at === 'wall/wheel:left');
  const forger = await here.client(await here.seat('guest artist'), 'hang');
  // First before it has spoken for itself, then after; taking the id over, and taking it away.
  forger.sendPresence(a.doc.clientID, 1000, { at: 'forged' });
  forger.sendPresence(424242, 1, { at: 'own' });
  forger.sendPresence(a.doc.clientID, 2000, { at: 'forged' });
  forger.sendPresence(a.doc.clientID, 3000, null);
  forger.sendPresence(434343, 1, { at: 'second self' });
  forger.sendPresence(424242, 2, { at: 'still own' });
  await whenPresence(watcher, (states) => states.get(424242)?.at === 'still own');
  expect((watcher.awareness.getStates().get(a.doc.clientID) as State)?.at).toBe('wall/wheel:left');
  expect((watcher.awareness.getStates().get(424242) as State)?.person?.role).toBe('guest artist');
  expect(watcher.awareness.getStates().has(434343)).toBe(false);
  expect(forger.closed).toBeNull();
});

test('story: a viewer has a ring too; whoever leaves is gone, and returns under the same id at once', async () => {
  const here = await scene();
  const watcher = here.stock(await here.seat('curator'), 'hang');
  await synced(watcher);
  const viewer = here.stock(await here.seat('viewer'), 'hang');
  viewer.awareness.setLocalState({ at: 'rooms' });
  const id = viewer.doc.clientID;
  await whenPresence(watcher, (states) => states.get(id)?.person?.role === 'viewer');
  viewer.disconnect();
  await whenPresence(watcher, (states) => !states.has(id));
  viewer.connect();
  await whenPresence(watcher, (states) => states.get(id) !== undefined);
  viewer.awareness.setLocalState({ at: 'wall/dye:left' });
  await whenPresence(watcher, (states) => states.get(id)?.at === 'wall/dye:left');
});

test('story: a drag streams; presence on any document but the hang goes nowhere', async () => {
  const here = await scene();
  const curator = await here.seat('curator');
  const a = here.stock(curator, 'hang');
  const b = here.stock(await here.seat('guest artist'), 'hang');
  await Promise.all([synced(a), synced(b)]);
  for (let x = 0; x <= 100; x++) a.awareness.setLocalState({ drag: [['mangle#1', ['wheel:head', x, 0, 0, 0]]] });
  await whenPresence(b, (states) => JSON.stringify(states.get(a.doc.clientID)?.drag ?? null).includes('100'));
  const doc = new Y.Doc();
  const talk = here.stock(curator, 'talk', doc, new Awareness(doc));
  const listener = await here.client(await here.seat('lead'), 'talk');
  await synced(talk);
  talk.awareness.setLocalState({ at: 'nowhere' });
  talk.doc.getMap('yes').set('a', 1);
  await listener.when((client) => client.doc.getMap('yes').has('a'));
  expect(here.frames.filter(({ document, bytes }) => document === 'talk' && bytes[0] === 1)).toEqual([]);
});

test('law: who comes back under their id and breaks off in the middle of a word leaves nobody behind', async () => {
  const here = await scene();
  const seat = await here.seat('curator');
  const { presence } = here.server.sessions.get('hang');
  const first = await here.client(seat, 'hang');
  first.sendPresence(424242, 1, { at: 'wall/dye:head' });
  await expect.poll(() => [...presence.clients()]).toEqual([424242]);
  const second = await here.client(seat, 'hang');
  // Presence is an object: this takes the id over, and is then refused.
  second.sendPresence(424242, 100, ['no object']);
  await second.when(({ closed }) => closed !== null);
  first.socket.terminate();
  await expect.poll(() => [...presence.clients()]).toEqual([]);
});

test('law: who speaks for one id and then says hello under another is closed, and leaves nobody behind', async () => {
  const here = await scene();
  const { presence } = here.server.sessions.get('hang');
  const client = await here.client(await here.seat('curator'), 'hang');
  client.sendPresence(424242, 1, { at: 'wall/dye:head' });
  await expect.poll(() => [...presence.clients()]).toEqual([424242]);
  const encoder = encoding.createEncoder();
  encoding.writeVarUint(encoder, MESSAGE_HELLO);
  encoding.writeVarUint(encoder, 424243);
  client.socket.send(encoding.toUint8Array(encoder));
  await client.when(({ closed }) => closed !== null);
  expect(client.closed?.code).toBe(CLOSE.malformed);
  await expect.poll(() => [...presence.clients()]).toEqual([]);
});
