import { SCHEMA_VERSION } from '@enfilade/shared/schema';
import { expect, test } from 'vitest';
import { WebSocket } from 'ws';
import { Client, scene } from './scene.ts';

test('story: a page made for another schema, or holding what was before a restore, is told so before a frame is taken', async () => {
  const here = await scene();
  const seat = await here.seat('curator');
  const cases: readonly [string, number | null][] = [
    [`schema=${SCHEMA_VERSION - 1}&epoch=1`, 4409],
    [`schema=${SCHEMA_VERSION + 1}&epoch=1`, 4409],
    [`schema=${SCHEMA_VERSION}&epoch=0`, 4412],
    [`schema=${SCHEMA_VERSION}&epoch=1`, null],
    ['', null],
  ];
  for (const [hello, code] of cases) {
    const socket = new WebSocket(`${here.socketUrl(seat, 'hang')}?${hello}`, { headers: { cookie: seat.cookie } });
    const client = new Client(socket);
    await client.when(({ closed, stepOnes }) => closed !== null || stepOnes > 0);
    expect([hello, client.closed?.code ?? null]).toEqual([hello, code]);
    if (code !== null)
      expect([client.closed?.reason, client.stepOnes]).toEqual([expect.stringMatching(/reload the page/), 0]);
    socket.terminate();
  }
});

test('story: a document near its limit says so once while all is still taken, to newcomers too, and only then refuses', async () => {
  const here = await scene({ documentBytes: 10_000 });
  const seat = await here.seat('curator');
  const a = await here.client(seat, 'hang');
  let sent = 0;
  while (!a.notices.some(({ kind }) => kind === 'refused')) {
    a.edit((doc) => doc.getMap('places').set(`large#${sent}`, 'x'.repeat(400)));
    sent += 1;
    await a.when(({ acknowledged, notices }) => acknowledged === sent || notices.at(-1)?.kind === 'refused');
  }
  expect(a.notices.map(({ kind }) => kind)).toEqual(['nearly full', 'refused']);
  expect(a.acknowledged).toBe(sent - 1);
  const late = await here.client(seat, 'hang');
  await late.when(({ notices }) => notices[0]?.kind === 'nearly full');
});
