/** Our server in a process of its own; says its port and a cookie, and what CPU and memory it uses whenever it is asked. */
import { mkdtempSync, rmSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { startServer } from '@enfilade/server/server';

const data = mkdtempSync(join(tmpdir(), 'enfilade-strain-'));
const server = await startServer({ port: 0, host: '127.0.0.1', dataDirectory: data });
const { token } = await server.seats.invite({ id: 'castellane', name: 'Dov Castellane', role: 'curator' });
const answer = await fetch(`http://127.0.0.1:${server.port}/join/${token}`, { redirect: 'manual' });
const cookie = (answer.headers.get('set-cookie') ?? '').split(';')[0] ?? '';
const path = `${answer.headers.get('location')}doc/hang`;
process.on('message', (asked) => {
  if (asked === 'cpu') process.send?.({ cpu: process.cpuUsage() });
  else if (asked === 'memory') {
    globalThis.gc?.();
    const { heapUsed, rss, external } = process.memoryUsage();
    process.send?.({
      heapMb: (heapUsed + external) / (1 << 20),
      residentMb: rss / (1 << 20),
      sockets: server.sessions.sockets.size,
    });
  } else {
    rmSync(data, { recursive: true, force: true });
    process.exit(0);
  }
});
process.send?.({ url: `ws://127.0.0.1:${server.port}${path}`, cookie });
