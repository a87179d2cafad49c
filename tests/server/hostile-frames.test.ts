import { once } from 'node:events';
import { connect, type Socket } from 'node:net';
import { expect, test } from 'vitest';
import { Client, type Scene, scene, type TakenSeat } from './scene.ts';

/** A socket opened by hand, on which any bytes can be put. */
async function rawSocket(here: Scene, seat: TakenSeat): Promise<Socket> {
  const socket = connect(here.server.port, '127.0.0.1');
  socket.on('error', () => {});
  socket.write(
    [
      `GET /seat/${seat.seatId}/doc/hang HTTP/1.1`,
      `Host: 127.0.0.1:${here.server.port}`,
      'Connection: Upgrade',
      'Upgrade: websocket',
      'Sec-WebSocket-Version: 13',
      'Sec-WebSocket-Key: dGhlIHNhbXBsZSBub25jZQ==',
      `Cookie: ${seat.cookie}`,
      '',
      '',
    ].join('\r\n'),
  );
  const [head] = await once(socket, 'data');
  expect(String(head)).toMatch(/^HTTP\/1\.1 101/);
  return socket;
}

/** RFC 6455 5.2: a client's frame with a mask of zeros. */
function frame(firstByte: number, payload: readonly number[], length = payload.length): Buffer {
  return Buffer.from([firstByte, 0x80 | length, 0, 0, 0, 0, ...payload]);
}

const BROKEN: readonly [string, Buffer][] = [
  ['a reserved bit', frame(0xc2, [0, 0])],
  ['an unknown opcode', frame(0x83, [0])],
  ['a frame without a mask', Buffer.from([0x82, 0x01, 0x00])],
  ['a close code that may not be sent (1005)', frame(0x88, [0x03, 0xed])],
  ['a close frame of one byte', frame(0x88, [0x03])],
  ['a ping in pieces', frame(0x09, [])],
  ['a ping that is too long', Buffer.from([0x89, 0xfe, 0x00, 0x80, 0, 0, 0, 0])],
  ['a continuation of nothing', frame(0x80, [0])],
  ['a length of 2^63', Buffer.from([0x82, 0xff, 0xff, 0xff, 0xff, 0xff, 0xff, 0xff, 0xff, 0xff, 0, 0, 0, 0])],
  ['a length beyond what is taken', Buffer.from([0x82, 0xff, 0, 0, 0, 0, 0x7f, 0xff, 0xff, 0xff, 0, 0, 0, 0])],
  ['a text that is not UTF-8', frame(0x81, [0xff, 0xfe])],
];

test('story: broken frames close their own socket; the others notice nothing and the server lives', async () => {
  const here = await scene();
  const seat = await here.seat('guest artist');
  const a = await here.client(await here.seat('curator'), 'hang');
  const b = await here.client(seat, 'hang');
  for (const [what, bytes] of BROKEN) {
    const raw = await rawSocket(here, seat);
    const ended = once(raw, 'close');
    raw.write(bytes);
    raw.resume();
    await ended;
    a.edit((doc) => doc.getMap('places').set(what, 1));
    await b.when(({ doc }) => doc.getMap('places').get(what) === 1);
  }
  expect(a.closed).toBeNull();
  expect(b.closed).toBeNull();
  await a.when(({ acknowledged }) => acknowledged === BROKEN.length);
  expect((await fetch(`${here.address}/health`)).status).toBe(200);
});

test('law: whole frames that say nothing sensible are closed with a coded reason', async () => {
  const here = await scene({ awarenessBytes: 2000 });
  const seat = await here.seat('curator');
  const cases: readonly [number, (client: Client) => void][] = [
    [4400, ({ socket }) => socket.send(Uint8Array.of(99))],
    [4400, ({ socket }) => socket.send(Uint8Array.of())],
    [4400, ({ socket }) => socket.send('a text')],
    [4400, ({ socket }) => socket.send(Uint8Array.of(0, 9, 0))],
    [4400, ({ socket }) => socket.send(Uint8Array.of(0, 0, 5, 1, 2))],
    [4400, ({ socket }) => socket.send(Uint8Array.of(1, 3, 1, 1, 1))],
    [4400, (client) => client.sendPresence(500_005, 1, [1, 2])],
    [4413, (client) => client.sendPresence(500_005, 1, { at: 'x'.repeat(4000) })],
    [1009, ({ socket }) => socket.send(new Uint8Array((16 << 20) + 1))],
  ];
  for (const [code, send] of cases) {
    const client = await here.client(seat, 'hang');
    send(client);
    await client.when(({ closed }) => closed !== null);
    expect(client.closed?.code).toBe(code);
  }
});

test('law: a socket that sends faster than any person is closed, and the others go on', async () => {
  const here = await scene({ framesAtOnce: 50, framesPerSecond: 1 });
  const seat = await here.seat('curator');
  const flood = await here.client(seat, 'hang');
  for (let n = 0; n < 60; n++) flood.sendPresence(1, n + 1, {});
  await flood.when(({ closed }) => closed !== null);
  expect(flood.closed?.code).toBe(4429);
  const calm = await here.client(seat, 'hang');
  calm.edit((doc) => doc.getMap('places').set('a#1', 1));
  await calm.when(({ acknowledged }) => acknowledged === 1);
});

test('story: somebody whose line takes nothing is let go; whoever reads gets everything', async () => {
  const here = await scene({ unsentBytes: 1 << 20, tickMs: 1 });
  const seat = await here.seat('curator');
  const slow = await here.client(seat, 'hang');
  const reader = await here.client(seat, 'hang');
  const writer = await here.client(seat, 'hang');
  slow.socket.pause();
  const parts = 40;
  for (let n = 0; n < parts; n++) {
    writer.edit((doc) => doc.getMap('places').set(`large#${n}`, 'x'.repeat(512 << 10)));
    await writer.when(({ acknowledged }) => acknowledged === n + 1);
  }
  await reader.when(({ doc }) => doc.getMap('places').size === parts);
  await expect.poll(() => here.server.sessions.sockets.size, { timeout: 5000 }).toBe(2);
  expect(reader.closed).toBeNull();
});

test('law: a request that breaks off, and one that is no HTTP, leave the server as it was', async () => {
  const here = await scene();
  for (const text of ['GET /seat/x/doc/hang HTTP/1.1\r\nUpgr', 'nonsense\r\n\r\n', '\u0000\u0001\u0002']) {
    const socket = connect(here.server.port, '127.0.0.1');
    socket.on('error', () => {});
    await once(socket, 'connect');
    socket.write(text);
    socket.resetAndDestroy();
  }
  const socket = new Client((await here.client(await here.seat('curator'), 'hang')).socket);
  socket.sendUpdate(Uint8Array.of(0, 0), 1);
  await socket.when(({ acknowledged }) => acknowledged === 1);
});
