import { expect, test } from 'vitest';
import * as Y from 'yjs';
import { scene } from './scene.ts';

const NOTHING = Uint8Array.of(0, 0);

/** What a document set to this holds, as one update. */
function updateSetting(key: string, value: string, root = 'places'): Uint8Array {
  const doc = new Y.Doc();
  doc.getMap(root).set(key, value);
  return Y.encodeStateAsUpdate(doc);
}

test('law: acknowledgements count update-bearing frames, each once, none before it is on the disk', async () => {
  const here = await scene();
  const client = await here.client(await here.seat('curator'), 'hang');
  client.sendUpdate(NOTHING, 1);
  await client.when(({ acknowledged }) => acknowledged === 1);
  expect((await here.server.store.load('hang')).updates).toHaveLength(0);
  for (let n = 0; n < 40; n++) client.edit((doc) => doc.getMap('places').set(`block#${n}`, n));
  for (let n = 0; n < 40; n++) client.edit((doc) => doc.getMap('places').delete(`block#${n}`));
  client.sendStepOne();
  client.sendPresence(700_007, 1, {});
  await client.when(({ acknowledged }) => acknowledged === 81);
  expect((await here.server.store.load('hang')).updates).toHaveLength(80);
  expect(client.acknowledgements).toEqual([...client.acknowledgements].sort((a, b) => a - b));
  expect(client.acknowledgements.at(-1)).toBe(81);
});

test('law: at every acknowledgement the log already holds what is acknowledged', async () => {
  const here = await scene();
  const { store } = here.server;
  const order: string[] = [];
  const append = store.appendAll.bind(store);
  store.appendAll = async (entries, held) => {
    const seqs = await append(entries, held);
    order.push(...entries.filter(({ document }) => document === 'hang').map(() => 'logged'));
    return seqs;
  };
  const client = await here.client(await here.seat('curator'), 'hang');
  const logged = (): number => order.filter((what) => what === 'logged').length;
  let early = 0;
  client.socket.on('message', () => {
    if (client.acknowledged > logged()) early += 1;
  });
  for (let n = 0; n < 30; n++) {
    client.edit((doc) => doc.getMap('places').set(`block#${n % 5}`, n));
    await client.when(({ acknowledged }) => acknowledged === n + 1);
  }
  expect(early).toBe(0);
  expect(logged()).toBe(30);
});

test('law: an update is told to others, merged, and never back to its sender', async () => {
  const here = await scene();
  const seat = await here.seat('curator');
  const a = await here.client(seat, 'hang');
  const b = await here.client(seat, 'hang');
  const c = await here.client(seat, 'hang');
  for (let n = 0; n < 50; n++) {
    a.edit((doc) => doc.getMap('places').set(`a#${n}`, n));
    b.edit((doc) => doc.getMap('places').set(`b#${n}`, n));
  }
  await c.when(({ doc }) => doc.getMap('places').size === 100);
  await a.when(({ acknowledged, doc }) => acknowledged === 50 && doc.getMap('places').size === 100);
  await b.when(({ acknowledged, doc }) => acknowledged === 50 && doc.getMap('places').size === 100);
  const own = [...here.frames].filter(({ bytes }) => bytes[0] === 0 && bytes[1] === 2);
  // 100 edits reached three clients in far fewer frames than 200.
  expect(own.length).toBeLessThan(60);
  const lone = await here.client(seat, 'talk');
  for (let n = 0; n < 5; n++) lone.edit((doc) => doc.getMap('yes').set(`${n}`, n));
  await lone.when(({ acknowledged }) => acknowledged === 5);
  expect(lone.updatesReceived).toBe(0);
});

test('law: an update that does not parse closes its socket and never reaches the log', async () => {
  const here = await scene();
  const seat = await here.seat('curator');
  const good = updateSetting('mangle#1', 'x');
  const broken = [
    Uint8Array.of(),
    Uint8Array.of(255, 255, 255, 255, 255),
    good.subarray(0, good.length - 1),
    Uint8Array.of(...good.subarray(0, 4), 31, ...good.subarray(5)),
  ];
  for (const bytes of broken) {
    const client = await here.client(seat, 'hang');
    client.sendUpdate(bytes);
    await client.when(({ closed }) => closed !== null);
    expect(client.closed?.code).toBe(4400);
    expect(client.acknowledged).toBe(0);
  }
  expect((await here.server.store.load('hang')).updates).toEqual([]);
  const client = await here.client(seat, 'hang');
  client.sendUpdate(good);
  await client.when(({ acknowledged }) => acknowledged === 1);
  expect((await here.server.store.load('hang')).updates).toHaveLength(1);
});

test('story: a viewer sees everything arrive, and a change of theirs is refused with a word and stored nowhere', async () => {
  const here = await scene();
  const curator = await here.client(await here.seat('curator'), 'hang');
  curator.edit((doc) => doc.getMap('places').set('mangle#1', 'here'));
  await curator.when(({ acknowledged }) => acknowledged === 1);
  const viewer = await here.client(await here.seat('viewer'), 'hang');
  viewer.sendStepOne();
  await viewer.when(({ doc }) => doc.getMap('places').get('mangle#1') === 'here');
  // What a returning provider says on its own: everything it knows, which is nothing new.
  viewer.sendUpdate(Y.encodeStateAsUpdate(viewer.doc), 1);
  viewer.sendUpdate(NOTHING, 1);
  await viewer.when(({ acknowledged }) => acknowledged === 2);
  expect(viewer.notices).toEqual([]);
  viewer.edit((doc) => doc.getMap('places').set('mangle#1', 'elsewhere'));
  await viewer.when(({ notices }) => notices.length === 1);
  expect(viewer.notices[0]?.kind).toBe('refused');
  curator.edit((doc) => doc.getMap('places').set('vat#1', 'there'));
  await viewer.when(({ doc }) => doc.getMap('places').has('vat#1'));
  expect(viewer.acknowledged).toBe(2);
  expect(viewer.closed).toBeNull();
  expect(here.server.sessions.get('hang').doc.getMap('places').toJSON()).toEqual({
    'mangle#1': 'here',
    'vat#1': 'there',
  });
  expect((await here.server.store.load('hang')).updates).toHaveLength(2);
});

test('story: a registrar may not write the hang, nor anybody the record', async () => {
  const here = await scene();
  for (const [role, document] of [
    ['registrar', 'hang'],
    ['lead', 'record'],
    ['guest artist', 'checklist'],
    ['preparator', 'checklist'],
    ['conservator', 'rooms'],
  ] as const) {
    const client = await here.client(await here.seat(role), document);
    client.sendUpdate(updateSetting('forged', 'x', 'signatures'));
    await client.when(({ notices }) => notices.length > 0);
    expect(client.notices[0]?.kind).toBe('refused');
    expect(here.server.sessions.get(document).doc.getMap('signatures').size).toBe(0);
    for (const { bytes } of (await here.server.store.load(document)).updates) {
      expect(Buffer.from(bytes).toString('latin1')).not.toContain('forged');
    }
  }
});

test('law: updates whose predecessors never come are taken up to a bound, then the socket is closed', async () => {
  const here = await scene({ pendingUpdates: 3 });
  const client = await here.client(await here.seat('curator'), 'hang');
  const updates: Uint8Array[] = [];
  client.doc.on('update', (update: Uint8Array) => updates.push(update));
  for (let n = 0; n < 12; n++) client.doc.getMap('places').set(`block#${n}`, n);
  for (const update of updates.slice(1)) client.sendUpdate(update);
  await client.when(({ closed }) => closed !== null);
  expect(client.closed?.code).toBe(4413);
  expect((await here.server.store.load('hang')).updates.length).toBeLessThanOrEqual(3);
  // The missing one, from the same person elsewhere, brings back what waited.
  const again = await here.client(await here.seat('curator'), 'hang');
  again.sendUpdate(updates[0] as Uint8Array);
  await again.when(({ acknowledged }) => acknowledged === 1);
  expect(here.server.sessions.get('hang').doc.getMap('places').size).toBe(4);
});

test('story: the server writes on its own account the same way, and a reader sees it', async () => {
  const here = await scene();
  const reader = await here.client(await here.seat('viewer'), 'record');
  reader.sendStepOne();
  await Promise.all([
    here.server.sessions.get('record').act((doc) => doc.getMap('versions').set('1', { number: 1 })),
    here.server.sessions.get('record').act((doc) => doc.getMap('versions').set('2', { number: 2 })),
  ]);
  await reader.when(({ doc }) => doc.getMap('versions').size === 2);
  await here.reopen();
  expect(here.server.sessions.get('record').doc.getMap('versions').toJSON()).toEqual({
    1: { number: 1 },
    2: { number: 2 },
  });
});

test('story: a fact of a shape that no command writes is kept, told to all, and stops neither server nor start', async () => {
  const here = await scene();
  const artist = await here.client(await here.seat('guest artist'), 'hang');
  const curator = await here.client(await here.seat('curator'), 'hang');
  artist.edit((doc) => doc.getMap('places').set('odd#1', [1, 2]));
  artist.edit((doc) => doc.getMap('places').set('odd#2', 'nowhere'));
  artist.edit((doc) => doc.getMap('vignettes').set('odd', new Y.Map()));
  curator.edit((doc) => doc.getMap('places').set('mangle#1', ['layout', 1, 2, 0, 0]));
  await artist.when(({ acknowledged, doc }) => acknowledged === 3 && doc.getMap('places').has('mangle#1'));
  await here.reopen();
  expect(here.server.sessions.get('hang').doc.getMap('places').size).toBe(3);
  expect((await fetch(`${here.address}/health`)).status).toBe(200);
});
