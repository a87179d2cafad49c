import { expect, test } from 'vitest';
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
