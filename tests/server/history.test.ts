import { Writable } from 'node:stream';
import { History } from '@enfilade/server/history';
import { Kept, keepEachDay } from '@enfilade/server/kept';
import { logTo } from '@enfilade/server/log';
import { type HistoryAnswer, netOf } from '@enfilade/shared/deeds';
import { hangStateFrom, hangStateOf } from '@enfilade/shared/kept-states';
import { digestOf } from '@enfilade/shared/sign-off';
import { expect, test } from 'vitest';
import type * as Y from 'yjs';
import { type Scene, scene, type TakenSeat } from './scene.ts';

const historyOf = async (here: Scene, seat: TakenSeat, query = ''): Promise<HistoryAnswer> =>
  (await (await here.get(seat, `history${query}`)).json()) as HistoryAnswer;

const QUIET = logTo(new Writable({ write: (_chunk, _encoding, done) => done() }), 'fatal');

test('story: who did what is told with what it was before; nudges of one thing are one deed; it outlives a restart', async () => {
  const here = await scene();
  const seat = await here.seat('curator');
  const hang = await here.client(seat, 'hang');
  for (const x of [1000, 1010, 1020])
    hang.edit((doc) => doc.getMap('places').set('h#1', ['wheel:head', x, 1500, 0, 0]));
  hang.edit((doc) => doc.getMap('paints').set('wheel:head', 'weld'));
  await hang.when(({ acknowledged }) => acknowledged === 4);
  const { deeds } = await historyOf(here, seat);
  expect(deeds.map(({ changes }) => changes)).toEqual([
    [{ root: 'paints', key: 'wheel:head', to: 'weld' }],
    [{ root: 'places', key: 'h#1', to: ['wheel:head', 1020, 1500, 0, 0] }],
  ]);
  expect(deeds[0]).toMatchObject({ name: 'The curator', role: 'curator', personId: 'curator', more: 0 });
  await here.reopen();
  const again = await here.client(seat, 'hang');
  again.sendStepOne();
  await again.when(({ updatesReceived }) => updatesReceived === 1);
  again.edit((doc) => doc.getMap('places').delete('h#1'));
  await again.when(({ acknowledged }) => acknowledged === 1);
  const later = (await historyOf(here, seat)).deeds;
  expect(later.length).toBe(3);
  expect(later[0]?.changes).toEqual([{ root: 'places', key: 'h#1', from: ['wheel:head', 1020, 1500, 0, 0] }]);
  // What was placed and put back comes to nothing; the wall stays repainted.
  expect(netOf(later).map(({ key }) => key)).toEqual(['wheel:head']);
  expect(netOf(later, 'curator')).toEqual([]);
  const page = await historyOf(here, seat, `?limit=1&before=${later[0]?.n}`);
  expect(page).toMatchObject({ older: true, deeds: [{ n: later[1]?.n }] });
  expect((await historyOf(here, seat, `?since=${later[0]?.at}`)).deeds).toEqual([]);
});

test('story: two nudge one thing in turn, and the last word told is the last that was said', async () => {
  const here = await scene();
  const ama = await here.client(await here.seat('lead', 'ama'), 'hang');
  const dov = await here.client(await here.seat('curator', 'dov'), 'hang');
  for (const [n, one] of [ama, dov, ama, ama].entries()) {
    one.edit((doc) => doc.getMap('places').set('h#1', ['wheel:head', n, 1500, 0, 0]));
    const last = (doc: Y.Doc): boolean => (doc.getMap('places').get('h#1') as number[] | undefined)?.[1] === n;
    await Promise.all([ama, dov].map((who) => who.when(({ doc }) => last(doc))));
  }
  const { deeds } = await historyOf(here, await here.seat('viewer'));
  const told = deeds.map(({ personId, changes }) => [
    personId,
    (changes[0]?.to as readonly unknown[] | undefined)?.[1],
  ]);
  expect(told).toEqual([
    ['ama', 3],
    ['dov', 1],
    ['ama', 0],
  ]);
});

test('law: of a day’s work that comes at once every fact of the hang is written down', async () => {
  const here = await scene();
  const hang = await here.client(await here.seat('curator'), 'hang');
  hang.edit((doc) => {
    for (let n = 0; n < 450; n++) doc.getMap('places').set(`b#${n}`, ['wheel:head', n, 1500, 0, 0]);
  });
  await hang.when(({ acknowledged }) => acknowledged === 1);
  const viewer = await here.seat('viewer');
  const { deeds } = await historyOf(here, viewer);
  expect(deeds.map(({ changes, more }) => [changes.length, more])).toEqual([[450, 0]]);
  // However much that is, an answer stays of a size; the rest is asked for with `before`.
  const long = 'wheel:head'.padEnd(9000, ' ');
  for (const day of [1, 2]) {
    hang.edit((doc) => {
      for (let n = 0; n < 250; n++) doc.getMap('places').set(`b#${n + 10 * day}`, [long, n, day, 0, 0]);
    });
  }
  await hang.when(({ acknowledged }) => acknowledged === 3);
  const first = await historyOf(here, viewer, '?limit=500');
  expect(first).toMatchObject({ older: true, deeds: [{ n: 3 }] });
  const rest = await historyOf(here, viewer, '?limit=500&before=3');
  expect(rest.deeds.map(({ n }) => n)).toEqual([2, 1]);
  expect(rest.older).toBe(false);
});

test('law: private facts and reading marks are nobody’s history, and of a record only what names it is told', async () => {
  const here = await scene();
  const seat = await here.seat('registrar');
  const values = await here.client(seat, 'private');
  values.edit((doc) => doc.getMap('values').set('o', { value: 'CANARY' }));
  await values.when(({ acknowledged }) => acknowledged === 1);
  const talk = await here.client(seat, 'talk');
  talk.edit((doc) => doc.getMap('readMarks').set('registrar/r', '2026-05-12'));
  await talk.when(({ acknowledged }) => acknowledged === 1);
  const checklist = await here.client(seat, 'checklist');
  checklist.edit((doc) => doc.getMap('objects').set('o', { number: '1.1', title: 'A jug', notes: 'LONG' }));
  await checklist.when(({ acknowledged }) => acknowledged === 1);
  const text = JSON.stringify(await historyOf(here, await here.seat('viewer')));
  expect(text).not.toMatch(/CANARY|readMarks|LONG/);
  expect(text).toContain('A jug');
});

test('story: a state is kept under a name, fetched by its digest, and laid over as it was', async () => {
  const here = await scene();
  const seat = await here.seat('guest artist');
  const keep = (who: TakenSeat, name: unknown): Promise<Response> =>
    here.get(who, 'acts/keep-state', {
      method: 'POST',
      headers: { 'content-type': 'application/json', origin: here.address },
      body: JSON.stringify({ name }),
    });
  expect((await keep(seat, 'Nothing yet')).status).toBe(409);
  const hang = await here.client(seat, 'hang');
  hang.edit((doc) => doc.getMap('places').set('h#1', ['wheel:head', 1000, 1500, 0, 0]));
  await hang.when(({ acknowledged }) => acknowledged === 1);
  expect((await keep(await here.seat('viewer'), 'mine')).status).toBe(403);
  expect((await keep(seat, ' ')).status).toBe(400);
  expect((await keep(seat, 'Before the repaint')).status).toBe(200);
  const [state] = [...here.server.sessions.documents.all('states').values()];
  expect(state).toMatchObject({ kind: 'named', name: 'Before the repaint', by: 'The guest artist' });
  hang.edit((doc) => doc.getMap('places').set('h#1', ['wheel:head', 4000, 1500, 0, 0]));
  await hang.when(({ acknowledged }) => acknowledged === 2);
  const answer = await here.get(seat, `states/${state?.digest}`);
  const text = await answer.text();
  expect(digestOf(text)).toBe(state?.digest);
  expect(hangStateFrom(JSON.parse(text))?.places).toEqual({ 'h#1': ['wheel:head', 1000, 1500, 0, 0] });
  expect((await here.get(seat, `states/${'0'.repeat(64)}`)).status).toBe(404);
  expect((await here.get(seat, 'states/constructor')).status).toBe(404);
});

test('law: each day’s first change finds the hang kept as the day before left it, once', async () => {
  const here = await scene();
  const { sessions, store } = here.server;
  const hang = sessions.get('hang');
  await hang.act((doc) => doc.getMap('places').set('h#1', ['wheel:head', 1000, 1500, 0, 0]));
  let day = 12;
  const now = (): Date => new Date(2026, 4, day, 9);
  const days = keepEachDay(new Kept(store), sessions.byName, sessions.documents, QUIET, now);
  const history = await History.watch(store, sessions.byName, QUIET, now);
  const put = (x: number): Promise<void> =>
    hang.act((doc) => doc.getMap('places').set('h#1', ['wheel:head', x, 1500, 0, 0]));
  await put(1100);
  await put(1200);
  day = 13;
  const asLeft = hangStateOf(sessions.documents);
  await put(1300);
  await put(1400);
  await days.settled();
  await history.settled();
  const kept = [...sessions.documents.all('states').values()].filter(({ at }) => at.startsWith('2026-05'));
  expect(kept.map(({ kind, name }) => [kind, name]).sort()).toEqual([
    ['day', '2026-05-12'],
    ['day', '2026-05-13'],
  ]);
  const text = await new Kept(store).text(kept.find(({ name }) => name === '2026-05-13')?.digest ?? '');
  expect(JSON.parse(text ?? 'null')).toEqual(JSON.parse(JSON.stringify(asLeft)));
});
