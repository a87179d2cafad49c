import { expect, test } from 'vitest';
import { type Scene, scene, type TakenSeat } from './scene.ts';

async function idFor(here: Scene, seat: TakenSeat): Promise<number | null> {
  const answer = await here.get(seat, 'client-id', { method: 'POST' });
  return answer.ok ? ((await answer.json()) as { clientId: number }).clientId : null;
}

test('law: each page gets a short id of its own, and no start of the server gives one twice', async () => {
  const here = await scene();
  const dov = await here.seat('curator');
  const isolde = await here.seat('guest artist');
  const given = await Promise.all([dov, isolde, dov, isolde].map((seat) => idFor(here, seat)));
  await here.reopen();
  given.push(await idFor(here, dov));
  expect(given.map(Number).sort((a, b) => a - b)).toEqual([1, 2, 3, 4, 5]);
});

test('law: a short id is written under by whom it was given to, and by nobody else, given or not', async () => {
  const here = await scene();
  const dov = await here.seat('curator');
  const isolde = await here.seat('guest artist');
  const own = (await idFor(here, dov)) as number;
  const a = await here.client(dov, 'hang');
  a.doc.clientID = own;
  a.edit((doc) => doc.getMap('places').set('oil#1', 1));
  await a.when(({ acknowledged }) => acknowledged === 1);
  for (const id of [own, own + 1]) {
    const thief = await here.client(isolde, 'hang');
    thief.sendStepOne();
    await thief.when(({ doc }) => doc.getMap('places').has('oil#1'));
    thief.doc.clientID = id;
    thief.edit((doc) => doc.getMap('places').set('oil#2', id));
    await thief.when(({ closed, notices }) => closed !== null || notices.length > 0);
  }
  expect([...here.server.sessions.get('hang').doc.getMap('places').keys()]).toEqual(['oil#1']);
});
