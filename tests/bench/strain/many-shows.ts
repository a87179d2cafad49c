/** So many shows open at once in one process, each with an editor: says what memory each takes. */
import { once } from 'node:events';
import { mkdtempSync, rmSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { type RunningServer, startServer } from '@enfilade/server/server';
import { MESSAGE_ACKNOWLEDGED, SUBPROTOCOL } from '@enfilade/shared/protocol';
import { WebSocket } from 'ws';
import * as Y from 'yjs';

const [shows = '1'] = process.argv.slice(2);
const data = mkdtempSync(join(tmpdir(), 'enfilade-shows-'));
const servers: RunningServer[] = [];
let acknowledged = 0;
for (let n = 0; n < Number(shows); n++) {
  const server = await startServer({ port: 0, host: '127.0.0.1', dataDirectory: join(data, String(n)) });
  servers.push(server);
  const { token } = await server.seats.invite({ id: 'castellane', name: 'Dov Castellane', role: 'curator' });
  const answer = await fetch(`http://127.0.0.1:${server.port}/join/${token}`, { redirect: 'manual' });
  const cookie = (answer.headers.get('set-cookie') ?? '').split(';')[0] ?? '';
  const url = `ws://127.0.0.1:${server.port}${answer.headers.get('location')}doc/hang`;
  const socket = new WebSocket(url, [SUBPROTOCOL], { headers: { cookie } });
  await once(socket, 'open');
  const doc = new Y.Doc();
  for (let piece = 0; piece < 400; piece++) doc.getMap('places').set(`oil-${piece}#1`, ['dye:head', piece, 1500, 0, 0]);
  const update = Y.encodeStateAsUpdate(doc);
  const length = [(update.length & 0x7f) | 0x80, ((update.length >> 7) & 0x7f) | 0x80, update.length >> 14];
  const done = new Promise<void>((heard) => {
    socket.on('message', (bytes: Buffer) => {
      if (bytes[0] !== MESSAGE_ACKNOWLEDGED) return;
      acknowledged += 1;
      heard();
    });
  });
  socket.send(Uint8Array.from([0, 2, ...length, ...update]));
  await done;
}
globalThis.gc?.();
process.send?.({ acknowledged, megabytes: process.memoryUsage.rss() / (1 << 20) });
await once(process, 'message');
rmSync(data, { recursive: true, force: true });
process.exit(0);
