import { MESSAGE_HELLO } from '@enfilade/shared/protocol';
import * as encoding from 'lib0/encoding';
import { expect, test } from 'vitest';
import * as Y from 'yjs';
import { type Client, scene, synced, whenDoc } from './scene.ts';

function hello(client: Client, clientId = client.doc.clientID): void {
  const encoder = encoding.createEncoder();
  encoding.writeVarUint(encoder, MESSAGE_HELLO);
  encoding.writeVarUint(encoder, clientId);
  client.socket.send(encoding.toUint8Array(encoder));
}

/** What somebody who goes under another's client id writes, at the clock the other comes to next. */
function underIdOf(victim: number, known: Y.Doc, key: string): Uint8Array {
  const forged = new Y.Doc();
  Y.applyUpdate(forged, Y.encodeStateAsUpdate(known));
  forged.clientID = victim;
  const before = Y.encodeStateVector(forged);
  forged.getMap('places').set(key, ['forged', 0, 0, 0, 0]);
  return Y.encodeStateAsUpdate(forged, before);
}

test('law: a write under another person’s client id is refused, and the person’s own next write arrives', async () => {
  const here = await scene();
  const curator = await here.client(await here.seat('curator'), 'hang');
  hello(curator);
  curator.edit((doc) => doc.getMap('places').set('mangle#1', ['layout', 1, 1, 0, 0]));
  const forger = await here.client(await here.seat('guest artist'), 'hang');
  hello(forger);
  forger.sendStepOne();
  await forger.when(({ doc }) => doc.getMap('places').has('mangle#1'));
  forger.sendUpdate(underIdOf(curator.doc.clientID, forger.doc, 'vat#1'));
  await forger.when(({ notices }) => notices.length > 0);
  expect(forger.notices[0]).toMatchObject({ kind: 'refused' });
  curator.edit((doc) => doc.getMap('places').set('mangle#1', ['layout', 2, 2, 0, 0]));
  await forger.when(({ doc }) => (doc.getMap('places').get('mangle#1') as number[])[1] === 2);
  expect(here.server.sessions.get('hang').doc.getMap('places').has('vat#1')).toBe(false);
  expect((await here.server.store.load('hang')).updates).toHaveLength(2);
});

test('law: an id is its person’s from the hello on, before anything is written under it, and after a restart', async () => {
  const here = await scene();
  const curatorSeat = await here.seat('curator');
  const artistSeat = await here.seat('guest artist');
  const curator = await here.client(curatorSeat, 'hang');
  hello(curator);
  // Answered in order: when this is acknowledged the hello has been heard.
  curator.sendUpdate(Uint8Array.of(0, 0));
  await curator.when(({ acknowledged }) => acknowledged === 1);
  for (const _ of ['before', 'after']) {
    const forger = await here.client(artistSeat, 'hang');
    forger.sendUpdate(underIdOf(curator.doc.clientID, new Y.Doc(), 'vat#1'));
    await forger.when(({ notices }) => notices.length > 0);
    await here.reopen();
  }
  const greeter = await here.client(artistSeat, 'hang');
  hello(greeter, curator.doc.clientID);
  await greeter.when(({ closed }) => closed !== null);
  expect(greeter.closed?.code).toBe(4403);
  // A second hello is no hello.
  const twice = await here.client(artistSeat, 'hang');
  hello(twice, 70_001);
  hello(twice, 70_002);
  await twice.when(({ closed }) => closed !== null);
  expect(twice.closed?.code).toBe(4400);
});

test('story: a day’s work without a connection comes in from another tab and another device, under its old ids', async () => {
  const here = await scene();
  const seat = await here.seat('preparator');
  const first = await here.client(seat, 'hang');
  hello(first);
  first.edit((doc) => doc.getMap('places').set('shelf#1', ['layout', 0, 0, 0, 0]));
  await first.when(({ acknowledged }) => acknowledged === 1);
  // Three pages in turn, each over what the tablet kept; none of them heard by the server.
  let kept = Y.encodeStateAsUpdate(first.doc);
  const ids: number[] = [];
  for (let page = 1; page <= 3; page++) {
    const doc = new Y.Doc();
    Y.applyUpdate(doc, kept);
    doc.getMap('places').set(`shelf#${page}`, ['layout', page, page, 0, 0]);
    ids.push(doc.clientID);
    kept = Y.encodeStateAsUpdate(doc);
  }
  first.socket.terminate();
  await here.reopen();
  const later = here.stock(seat, 'hang');
  Y.applyUpdate(later.doc, kept);
  const other = here.stock(await here.seat('curator'), 'hang');
  await whenDoc(other.doc, () => other.doc.getMap('places').size === 3);
  expect(other.doc.getMap('places').get('shelf#1')).toEqual(['layout', 1, 1, 0, 0]);
  // Those ids are the preparator's now, first's too: nobody else goes on under them.
  const forger = await here.client(await here.seat('guest artist'), 'hang');
  for (const [n, id] of [first.doc.clientID, ...ids].entries()) {
    forger.sendUpdate(underIdOf(id, other.doc, 'vat#1'));
    await forger.when(({ notices }) => notices.length === n + 1);
  }
});

test('law: deletions of others’ facts go by power alone; ids that nobody owns are nobody’s to go on under', async () => {
  const here = await scene();
  await here.server.sessions.get('hang').act((doc) => doc.getMap('places').set('vat#1', ['layout', 1, 1, 0, 0]));
  const artist = here.stock(await here.seat('guest artist'), 'hang');
  await synced(artist);
  const { doc } = here.server.sessions.get('hang');
  const serverId = [...doc.store.clients.keys()][0] as number;
  const forger = await here.client(await here.seat('curator'), 'hang');
  forger.sendUpdate(underIdOf(serverId, doc, 'vat#2'));
  await forger.when(({ notices }) => notices.length > 0);
  artist.doc.getMap('places').delete('vat#1');
  await whenDoc(doc, () => !doc.getMap('places').has('vat#1'));
  expect(doc.getMap('places').has('vat#2')).toBe(false);
});

/** Client ids 70,001 and 70,002 as varuints. */
const ONE = [0xf1, 0xa2, 0x04];
const OTHER = [0xf2, 0xa2, 0x04];

/** One struct of a client at clock 0, with another client's clock 0 to its left: the text 'a', as `ContentAny`. */
function structAfter(client: readonly number[], left: readonly number[]): readonly number[] {
  return [1, ...client, 0, 0x88, ...left, 0, 1, 0x77, 1, 0x61];
}

test('law: what leans on what has not come counts as a gap, and what leans on itself closes its socket', async () => {
  const here = await scene({ pendingUpdates: 2 });
  const seat = await here.seat('curator');
  const { doc } = here.server.sessions.get('hang');
  const client = await here.client(seat, 'hang');
  for (let n = 0; n < 4; n++) {
    // Its own clock is right; the item it follows was never sent.
    const unseen = new Y.Doc();
    unseen.getMap('places').set('block#1', n);
    const own = new Y.Doc();
    Y.applyUpdate(own, Y.encodeStateAsUpdate(unseen));
    own.getMap('places').set('block#1', 'mine');
    client.sendUpdate(Y.encodeStateAsUpdate(own, Y.encodeStateVector(unseen)));
  }
  await client.when(({ closed }) => closed !== null);
  expect(client.closed?.code).toBe(4413);
  // The socket is closed at once; what was taken before it is on its way to the log.
  await here.server.sessions.commit.drain();
  expect((await here.server.store.load('hang')).updates).toHaveLength(2);

  // Two structs of two clients, each the other's left neighbour: no order puts them in their places.
  const ring = Uint8Array.of(2, ...structAfter(ONE, OTHER), ...structAfter(OTHER, ONE), 0);
  const again = await here.client(seat, 'hang');
  again.sendUpdate(ring);
  await again.when(({ closed }) => closed !== null);
  expect(again.closed?.code).toBe(4413);

  // One struct whose left neighbour is itself: it parses, and breaks whatever document it is applied to.
  const itself = Uint8Array.of(1, ...structAfter(ONE, ONE), 0);
  expect(() => Y.decodeUpdate(itself)).not.toThrow();
  expect(() => Y.applyUpdate(new Y.Doc(), itself)).toThrow();
  const bad = await here.client(seat, 'hang');
  bad.sendUpdate(itself);
  await bad.when(({ closed }) => closed !== null);
  expect(bad.closed?.code).toBe(4400);
  expect(doc.store.clients.has(70_001)).toBe(false);
  await here.reopen();
});

test('law: presence under another person’s id is dropped, after that person has gone and the server has restarted', async () => {
  const here = await scene();
  const curatorSeat = await here.seat('curator');
  const curator = await here.client(curatorSeat, 'hang');
  hello(curator);
  curator.edit((doc) => doc.getMap('places').set('mangle#1', ['layout', 1, 1, 0, 0]));
  await curator.when(({ acknowledged }) => acknowledged === 1);
  const id = curator.doc.clientID;
  await here.reopen();
  const watcher = here.stock(await here.seat('lead'), 'hang');
  await synced(watcher);
  const forger = await here.client(await here.seat('guest artist'), 'hang');
  forger.sendPresence(id, 99, { at: 'forged' });
  forger.sendPresence(31337, 1, { at: 'own' });
  while (!watcher.awareness.getStates().has(31337)) {
    await new Promise<void>((look) => watcher.awareness.once('update', () => look()));
  }
  expect(watcher.awareness.getStates().has(id)).toBe(false);
});
