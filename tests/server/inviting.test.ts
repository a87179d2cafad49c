import { once } from 'node:events';
import { SUBPROTOCOL } from '@enfilade/shared/protocol';
import type { Invited, SeatEntry } from '@enfilade/shared/seats-page';
import { expect, test } from 'vitest';
import { WebSocket } from 'ws';
import { type Scene, scene, type TakenSeat, whenDoc } from './scene.ts';

function post(here: Scene, seat: TakenSeat, name: string, body: unknown): Promise<Response> {
  return here.get(seat, `acts/${name}`, {
    method: 'POST',
    headers: { 'content-type': 'application/json', origin: here.address },
    body: JSON.stringify(body),
  });
}

/** Opens a link as a browser would. */
async function sitDown(here: Scene, path: string): Promise<TakenSeat> {
  const answer = await fetch(`${here.address}${path}`, { redirect: 'manual' });
  expect(answer.status).toBe(303);
  const cookie = (answer.headers.get('set-cookie') ?? '').split(';')[0] ?? '';
  const seatId = /^\/seat\/(\w+)\/$/.exec(answer.headers.get('location') ?? '')?.[1] ?? '';
  return { seatId, cookie, token: path.slice('/join/'.length), personId: '' };
}

test('story: a curator invites a registrar, who sits down, is listed, is made a preparator, and is sent away', async () => {
  const here = await scene();
  const curator = await here.seat('curator', 'castellane');
  const invited = (await (
    await post(here, curator, 'invite', { name: '  Ama \n Trevithian ', role: 'registrar', until: null })
  ).json()) as Invited;
  const ama = await sitDown(here, invited.path);
  const listOf = async (): Promise<SeatEntry[]> => (await (await here.get(curator, 'seats')).json()) as SeatEntry[];
  const entry = (await listOf()).find(({ seatId }) => seatId === ama.seatId);
  expect(entry).toMatchObject({ person: { name: 'Ama Trevithian', role: 'registrar' }, by: 'The curator', devices: 1 });
  expect(JSON.stringify(await listOf())).not.toContain(ama.token);

  const values = await here.client(ama, 'private');
  const hang = await here.client(ama, 'hang');
  expect((await post(here, curator, 'change-role', { seatId: ama.seatId, role: 'preparator' })).status).toBe(200);
  for (const client of [values, hang]) {
    await client.when(({ closed }) => closed !== null);
    expect(client.closed?.code).toBe(4410);
  }
  expect(await here.refusedUpgrade(here.socketUrl(ama, 'private'), { cookie: ama.cookie })).toBe(403);
  const again = await here.client(ama, 'hang');
  again.edit((doc) => doc.getMap('places').set('gear#1', ['layout', 1, 1, 0, 0]));
  await again.when(({ acknowledged }) => acknowledged === 1);
  const me = (await (await here.get(ama, 'me')).json()) as { person: { role: string } };
  expect(me.person.role).toBe('preparator');

  expect((await post(here, curator, 'take-back', { seatId: ama.seatId })).status).toBe(200);
  await again.when(({ closed }) => closed !== null);
  expect(again.closed).toMatchObject({ code: 4401, reason: 'this seat was taken back' });
  for (const check of [() => Promise.resolve(), () => here.reopen()]) {
    await check();
    expect((await here.get(ama, 'me')).status).toBe(401);
    expect((await fetch(`${here.address}${invited.path}`, { redirect: 'manual' })).status).toBe(404);
    expect((await listOf()).find(({ seatId }) => seatId === ama.seatId)?.takenBack).toMatch(/^\d{4}-/);
  }
});

test('story: a tablet that was away while its seat was made a viewer’s is closed before it sends what it did meanwhile', async () => {
  const here = await scene();
  const lead = await here.seat('lead');
  const piet = await here.seat('preparator', 'oyelaran');
  const asRole = (role: string): WebSocket =>
    new WebSocket(`${here.socketUrl(piet, 'hang')}?role=${encodeURIComponent(role)}`, [SUBPROTOCOL], {
      headers: { cookie: piet.cookie },
    });
  const before = asRole('preparator');
  await once(before, 'open');
  before.terminate();
  await post(here, lead, 'change-role', { seatId: piet.seatId, role: 'viewer' });
  const [code] = await once(asRole('preparator'), 'close');
  expect(code).toBe(4410);
  const after = asRole('viewer');
  await once(after, 'message');
  after.terminate();
});

test('story: an invitation with an end: good until then, closed on open connections, and never after', async () => {
  const here = await scene();
  const lead = await here.seat('lead', 'halloway');
  for (const until of ['2001-01-01T00:00:00.000Z', 'soon', 5, '9999-01-01T00:00:00.000Z']) {
    expect((await post(here, lead, 'invite', { name: 'A lender', role: 'viewer', until })).status).toBe(400);
  }
  const end = Date.now() + 3_600_000;
  const until = new Date(end).toISOString();
  const invited = (await (
    await post(here, lead, 'invite', { name: 'A lender', role: 'viewer', until })
  ).json()) as Invited;
  const lender = await sitDown(here, invited.path);
  const socket = await here.client(lender, 'hang');
  here.server.seats.endWhatIsOver(end - 1);
  expect(socket.closed).toBeNull();
  here.server.seats.endWhatIsOver(end);
  await socket.when(({ closed }) => closed !== null);
  expect(socket.closed).toMatchObject({ code: 4401, reason: 'the end of this invitation has come' });
  expect(here.server.seats.get(lender.seatId)?.until).toBe(until);
});

test('story: a link that went astray is replaced by another; devices that are in stay in', async () => {
  const here = await scene();
  const curator = await here.seat('curator');
  const artist = await here.seat('guest artist', 'fennimarsh');
  const socket = await here.client(artist, 'hang');
  const renewed = (await (await post(here, curator, 'new-link', { seatId: artist.seatId })).json()) as Invited;
  expect((await fetch(`${here.address}/join/${artist.token}`, { redirect: 'manual' })).status).toBe(404);
  expect((await sitDown(here, renewed.path)).seatId).toBe(artist.seatId);
  expect((await here.get(artist, 'me')).status).toBe(200);
  expect(socket.closed).toBeNull();
});

test('story: “the artist proposes only” is set: open connections refuse the artist’s next move at once, and take it again when it is lifted', async () => {
  const here = await scene();
  const curator = await here.client(await here.seat('curator'), 'hang');
  const artist = await here.client(await here.seat('guest artist'), 'hang');
  artist.edit((doc) => doc.getMap('places').set('tile#1', ['layout', 1, 1, 0, 0]));
  await artist.when(({ acknowledged }) => acknowledged === 1);
  curator.edit((doc) => doc.getMap('settings').set('artistProposesOnly', true));
  await artist.when(({ doc }) => doc.getMap('settings').get('artistProposesOnly') === true);
  artist.edit((doc) => doc.getMap('places').set('tile#1', ['layout', 9, 9, 0, 0]));
  await artist.when(({ notices }) => notices.some(({ kind }) => kind === 'refused'));
  const { doc } = here.server.sessions.get('hang');
  expect(doc.getMap('places').get('tile#1')).toEqual(['layout', 1, 1, 0, 0]);
  // The artist cannot lift it, by writing or by deleting; talk stays open.
  artist.edit((own) => own.getMap('settings').set('artistProposesOnly', false));
  artist.edit((own) => own.getMap('settings').delete('artistProposesOnly'));
  await artist.when(({ notices }) => notices.length === 3);
  expect(doc.getMap('settings').get('artistProposesOnly')).toBe(true);
  const talk = await here.client(await here.seat('guest artist'), 'talk');
  talk.edit((own) => own.getMap('proposals').set('p', { title: 'Weld' }));
  await talk.when(({ acknowledged }) => acknowledged === 1);
  curator.edit((own) => own.getMap('settings').set('artistProposesOnly', false));
  await whenDoc(doc, () => doc.getMap('settings').get('artistProposesOnly') === false);
  const again = await here.client(await here.seat('guest artist'), 'hang');
  again.edit((own) => own.getMap('places').set('tile#2', ['layout', 1, 1, 0, 0]));
  await again.when(({ acknowledged }) => acknowledged === 1);
});

test('story: everybody reads who has a seat here, and who had one', async () => {
  const here = await scene();
  const curator = await here.seat('curator', 'castellane');
  const viewer = await here.seat('viewer', 'somebody');
  const record = here.stock(viewer, 'record');
  await whenDoc(record.doc, () => record.doc.getMap('people').size === 2);
  const piet = (await (
    await post(here, curator, 'invite', { name: 'Piet Oyelaran', role: 'preparator' })
  ).json()) as Invited;
  const personId = here.server.seats.get(piet.seatId)?.person.id ?? '';
  await whenDoc(record.doc, () => record.doc.getMap('people').has(personId));
  expect(record.doc.getMap('people').get(personId)).toEqual({ name: 'Piet Oyelaran', role: 'preparator', gone: false });
  await post(here, curator, 'take-back', { seatId: piet.seatId });
  await whenDoc(record.doc, () => (record.doc.getMap('people').get(personId) as { gone: boolean }).gone);
});
