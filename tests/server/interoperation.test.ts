import * as encoding from 'lib0/encoding';
import { expect, test } from 'vitest';
import { writeSyncStep1 } from 'y-protocols/sync';
import * as Y from 'yjs';
import { scene, synced, whenDoc } from './scene.ts';

test('story: two stock providers, told nothing of us, meet in one document and agree', async () => {
  const here = await scene();
  const curator = await here.seat('curator');
  const artist = await here.seat('guest artist');
  const a = here.stock(curator, 'hang');
  const b = here.stock(artist, 'hang');
  await Promise.all([synced(a), synced(b)]);
  a.doc.getMap('places').set('mangle#1', ['wheel:head', 1200, 1500, 0, 0]);
  b.doc.getMap('places').set('vat#1', ['layout', 300, 400, 0, 0]);
  await Promise.all([
    whenDoc(a.doc, () => a.doc.getMap('places').has('vat#1')),
    whenDoc(b.doc, () => b.doc.getMap('places').has('mangle#1')),
  ]);
  a.doc.getMap('places').delete('mangle#1');
  await whenDoc(b.doc, () => !b.doc.getMap('places').has('mangle#1'));
  expect(Y.equalSnapshots(Y.snapshot(a.doc), Y.snapshot(b.doc))).toBe(true);
  expect(b.doc.getMap('places').toJSON()).toEqual({ 'vat#1': ['layout', 300, 400, 0, 0] });
});

test('story: what was done without a connection arrives when it returns, and is there after a restart', async () => {
  const here = await scene();
  const curator = await here.seat('curator');
  const a = here.stock(curator, 'hang');
  await synced(a);
  a.disconnect();
  a.doc.getMap('memberOf').set('block#7', 'sixty');
  a.connect();
  const b = here.stock(curator, 'hang');
  await whenDoc(b.doc, () => b.doc.getMap('memberOf').get('block#7') === 'sixty');
  a.destroy();
  b.destroy();
  await here.reopen();
  const c = here.stock(curator, 'hang');
  await whenDoc(c.doc, () => c.doc.getMap('memberOf').get('block#7') === 'sixty');
  expect(c.doc.getMap('memberOf').toJSON()).toEqual({ 'block#7': 'sixty' });
});

test('story: in the talk two stock providers meet as in the hang, and agree on proposals, moves, remarks and marks', async () => {
  const here = await scene();
  const a = here.stock(await here.seat('guest artist'), 'talk');
  const b = here.stock(await here.seat('conservator'), 'talk');
  await Promise.all([synced(a), synced(b)]);
  const word = { by: 'guest artist', name: 'Isolde', role: 'guest artist', at: '2026-05-12T01:40:00.000Z' };
  a.doc.getMap('proposals').set('night', { ...word, title: 'Broom in flower', reason: '' });
  a.doc.getMap('proposed').set('night|paints|dye:head', { to: 'weld', from: 'verdigris' });
  b.doc.getMap('remarks').set('light', { ...word, about: { kind: 'wall', surface: 'dye:head' }, text: 'Too bright?' });
  await Promise.all([
    whenDoc(b.doc, () => b.doc.getMap('proposed').size === 1),
    whenDoc(a.doc, () => a.doc.getMap('remarks').size === 1),
  ]);
  // Offline on one side, on the other meanwhile: both are there when it returns.
  a.disconnect();
  a.doc.getMap('proposals').set('night/title', 'Weld in flower');
  b.doc.getMap('readMarks').set('conservator/light', '2026-05-12T09:00:00.000Z');
  a.connect();
  await Promise.all([
    whenDoc(b.doc, () => b.doc.getMap('proposals').has('night/title')),
    whenDoc(a.doc, () => a.doc.getMap('readMarks').size === 1),
  ]);
  expect(Y.equalSnapshots(Y.snapshot(a.doc), Y.snapshot(b.doc))).toBe(true);
  const { documents } = here.server.sessions;
  expect(documents.get('proposals', 'night')).toMatchObject({ title: 'Weld in flower', name: 'Isolde' });
});

test('story: a stock provider reads the record as the server writes it; what it writes there itself comes to nobody', async () => {
  const here = await scene();
  const seat = await here.seat('curator');
  const reader = here.stock(seat, 'record');
  await synced(reader);
  const version = { number: 1, at: '2026-05-12T09:00:00.000Z', by: 'Dov', what: 'list', digest: '0' };
  await here.server.sessions.get('record').act((doc) => doc.getMap('versions').set('1', version));
  await whenDoc(reader.doc, () => reader.doc.getMap('versions').has('1'));
  expect(reader.doc.getMap('versions').get('1')).toEqual(version);
  const writer = here.stock(seat, 'record');
  await synced(writer);
  writer.doc.getMap('signatures').set('forged', { name: 'Ama' });
  // The first step once more: its answer comes after the write has been judged.
  const answered = new Promise((done) => writer.ws?.addEventListener('message', done, { once: true }));
  writer.ws?.send(firstStep(writer.doc));
  await answered;
  await here.server.sessions.get('record').act((doc) => doc.getMap('versions').set('2', version));
  await whenDoc(reader.doc, () => reader.doc.getMap('versions').has('2'));
  expect(reader.doc.getMap('signatures').size).toBe(0);
});

function firstStep(doc: Y.Doc): Uint8Array<ArrayBuffer> {
  const encoder = encoding.createEncoder();
  encoding.writeVarUint(encoder, 0);
  writeSyncStep1(encoder, doc);
  return encoding.toUint8Array(encoder) as Uint8Array<ArrayBuffer>;
}
