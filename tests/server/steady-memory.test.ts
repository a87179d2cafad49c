import { type ChildProcess, fork } from 'node:child_process';
import { once } from 'node:events';
import { mkdtemp, rm } from 'node:fs/promises';
import { join } from 'node:path';
import { SUBPROTOCOL } from '@enfilade/shared/protocol';
import { expect, onTestFinished, test } from 'vitest';
import { WebSocket } from 'ws';
import { bundleForNode } from '../launch/bundle-for-node.mjs';
import { Client } from './scene.ts';

/** `npm run soak` goes on for 20 minutes; `npm test` for a few rounds. */
const MINUTES = Number(process.env.SOAK_MINUTES ?? 0);
const LEAST_ROUNDS = 9;
const PEOPLE = MINUTES === 0 ? 5 : 8;
const NUDGES = MINUTES === 0 ? 15 : 60;
/** What the middle of three parts of the run, and the last of them, may differ by. */
const FLAT_MB = 6;

interface Memory {
  readonly heapMb: number;
  readonly residentMb: number;
  readonly sockets: number;
}

async function memoryOf(server: ChildProcess): Promise<Memory> {
  const heard = once(server, 'message');
  server.send('memory');
  const [told] = await heard;
  return told as Memory;
}

/** People who come, look, nudge a piece each, say where they are, and go; the piece they nudge is their own. */
async function round({ url, cookie }: { url: string; cookie: string }, n: number): Promise<void> {
  await Promise.all(
    Array.from({ length: PEOPLE }, async (_, person) => {
      const client = new Client(new WebSocket(url, [SUBPROTOCOL], { headers: { cookie } }));
      await once(client.socket, 'open');
      client.sendStepOne();
      await client.when(({ updatesReceived }) => updatesReceived > 0);
      for (let nudge = 1; nudge <= NUDGES; nudge++) {
        client.edit((doc) => doc.getMap('places').set(`oil-${person}#1`, ['dye:head', nudge, n, 0, 0]));
        client.sendPresence(client.doc.clientID, nudge, {
          at: 'wall/dye:head',
          drag: { [`oil-${person}#1`]: [nudge, 0] },
        });
      }
      await client.when(({ acknowledged }) => acknowledged === NUDGES);
      client.socket.terminate();
      client.doc.destroy();
    }),
  );
}

function median(values: readonly number[]): number {
  return [...values].sort((a, b) => a - b)[values.length >> 1] ?? Number.NaN;
}

test(
  `law: people come, nudge and go for ${MINUTES === 0 ? 'a while' : `${MINUTES} minutes`}, and the server takes no more memory for it`,
  async () => {
    // Inside the project, so that packages are found from the bundle.
    const folder = await mkdtemp(join(import.meta.dirname, '..', '.kill-'));
    const bundle = await bundleForNode(join(import.meta.dirname, '..', 'bench', 'strain', 'our-server.ts'), folder);
    const server = fork(bundle, { execArgv: ['--expose-gc'] });
    onTestFinished(async () => {
      server.send('end');
      await rm(folder, { recursive: true, force: true });
    });
    const [where] = (await once(server, 'message')) as [{ url: string; cookie: string }];
    const heaps: number[] = [];
    const end = performance.now() + MINUTES * 60_000;
    for (let n = 0; n < LEAST_ROUNDS || performance.now() < end; n++) {
      await round(where, n);
      const { heapMb, residentMb } = await memoryOf(server);
      heaps.push(heapMb);
      if (MINUTES > 0 && n % 50 === 0) {
        process.stderr.write(`round ${n}: ${heapMb.toFixed(1)} MB in use, ${residentMb.toFixed(0)} MB resident\n`);
      }
    }
    const third = Math.floor(heaps.length / 3);
    const middle = median(heaps.slice(third, 2 * third));
    const last = median(heaps.slice(-third));
    expect(last - middle).toBeLessThan(FLAT_MB);
    await expect.poll(async () => (await memoryOf(server)).sockets).toBe(0);
  },
  120_000 + MINUTES * 90_000,
);
