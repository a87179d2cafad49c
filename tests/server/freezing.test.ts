import { frozenDigestOf, frozenListFrom } from '@enfilade/shared/list-versions';
import type { FrozenAnswer } from '@enfilade/shared/protocol';
import { digestOf } from '@enfilade/shared/sign-off';
import { expect, test } from 'vitest';
import { type Scene, scene, type TakenSeat } from './scene.ts';

const freeze = (here: Scene, seat: TakenSeat): Promise<Response> =>
  here.get(seat, 'acts/freeze-list', {
    method: 'POST',
    headers: { 'content-type': 'application/json', origin: here.address },
    body: '{}',
  });

async function furnished(): Promise<Scene> {
  const here = await scene();
  const { sessions } = here.server;
  await sessions.get('rooms').act((doc) =>
    doc.getMap('rooms').set('wheel', {
      ...{ name: 'Wheel Room', order: 1, widthMm: 8400, depthMm: 6200, heightMm: 3600 },
      ...{ headFaces: 'north', cornersMm: [0, 0, 0, 0], laserMm: 1000 },
    }),
  );
  await sessions
    .get('checklist')
    .act((doc) =>
      doc.getMap('objects').set('gear', { number: 'L.9', title: 'Sluice gear', count: 1, lender: '', source: 'loan' }),
    );
  await sessions
    .get('private')
    .act((doc) => doc.getMap('values').set('gear', { value: 'CANARY', contact: 'CANARY', storage: 'CANARY' }));
  return here;
}

async function gathered(): Promise<Scene> {
  const here = await furnished();
  await here.server.sessions.get('hang').act((doc) => {
    doc.getMap('vignettes').set('sixty', { name: 'Sixty impressions', intent: '', focal: 'gear#1', order: 'a0' });
    doc.getMap('memberOf').set('gear#1', 'sixty');
  });
  await move(here, 1000);
  return here;
}

const move = (here: Scene, x: number): Promise<void> =>
  here.server.sessions.get('hang').act((doc) => doc.getMap('places').set('gear#1', ['wheel:head', x, 1500, 0, 0]));

test('story: the list is frozen as committed, read again by its digest, and the same list keeps its number', async () => {
  const here = await gathered();
  const seat = await here.seat('curator');
  const first = (await (await freeze(here, seat)).json()) as FrozenAnswer;
  expect(first).toMatchObject({ again: false, version: { number: 1, what: 'vignette list', by: 'The curator' } });
  const again = (await (await freeze(here, await here.seat('lead'))).json()) as FrozenAnswer;
  expect(again).toEqual({ again: true, version: first.version });

  await move(here, 4000);
  const second = (await (await freeze(here, seat)).json()) as FrozenAnswer;
  expect(second).toMatchObject({ again: false, version: { number: 2 } });
  expect([...here.server.sessions.documents.all('versions').keys()].sort()).toEqual(['1', '2']);

  // Each is what it was, whatever has happened since; anyone who has a seat may read it.
  const viewer = await here.seat('viewer');
  for (const [{ version }, x] of [
    [first, 1000],
    [second, 4000],
  ] as const) {
    const text = await (await here.get(viewer, `states/${version.digest}`)).text();
    expect(digestOf(text)).toBe(version.digest);
    const list = frozenListFrom(text);
    expect(list?.rows[0]?.form.places['gear#1']?.[1]).toBe(x);
    expect(list === null ? '' : frozenDigestOf(list)).toBe(version.digest);
    expect(text).not.toContain('CANARY');
  }
  // Back where it was is no longer what a print of version 1 was the newest of: it gets a number of its own.
  await move(here, 1000);
  const third = (await (await freeze(here, seat)).json()) as FrozenAnswer;
  expect(third).toMatchObject({ again: false, version: { number: 3, digest: first.version.digest } });
});

test('law: numbers rise over all papers, and two who freeze at once never get one number for two lists', async () => {
  const here = await gathered();
  const seat = await here.seat('preparator');
  expect((await here.get(seat, 'paper/elevation.pdf?surface=wheel:head')).status).toBe(200);
  const answers = await Promise.all([freeze(here, seat), freeze(here, seat), freeze(here, await here.seat('lead'))]);
  const raised = await Promise.all(answers.map(async (answer) => (await answer.json()) as FrozenAnswer));
  expect(raised.map(({ version }) => version.number)).toEqual([2, 2, 2]);
  expect(raised.filter(({ again }) => !again).length).toBe(1);
  await move(here, 2000);
  const prints = [here.get(seat, 'paper/elevation.pdf?surface=wheel:head'), freeze(here, seat)];
  for (const answer of await Promise.all(prints)) expect(answer.status).toBe(200);
  const versions = [...here.server.sessions.documents.all('versions')];
  expect(versions.map(([key, { number }]) => [key, number]).sort()).toEqual([1, 2, 3, 4].map((n) => [String(n), n]));
});

test('story: nothing is frozen of a show without a vignette, nor by who may not change the hang', async () => {
  const empty = await furnished();
  const refused = await freeze(empty, await empty.seat('lead'));
  expect(refused.status).toBe(409);
  expect(await refused.json()).toMatchObject({ what: 'There is no vignette yet, so there is nothing to freeze.' });
  await empty.server.sessions
    .get('hang')
    .act((doc) => doc.getMap('vignettes').set('sixty', { name: 'S', intent: '', focal: null, order: 'a0' }));
  for (const role of ['viewer', 'registrar', 'conservator'] as const) {
    expect((await freeze(empty, await empty.seat(role))).status).toBe(403);
  }
  expect(empty.server.sessions.documents.all('versions').size).toBe(0);
});
