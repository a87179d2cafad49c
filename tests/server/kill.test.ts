import { type ChildProcess, spawn } from 'node:child_process';
import { once } from 'node:events';
import { mkdtemp, rm } from 'node:fs/promises';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { createInterface } from 'node:readline';
import { docFrom } from '@enfilade/server/session';
import { Store } from '@enfilade/server/store';
import { SUBPROTOCOL } from '@enfilade/shared/protocol';
import { afterAll, beforeAll, expect, test } from 'vitest';
import { WebSocket } from 'ws';
import * as Y from 'yjs';
import { bundleForNode } from '../launch/bundle-for-node.mjs';
import { Client } from './scene.ts';

const ROUNDS = Number(process.env.SOAK_ROUNDS ?? 6);
const DOCUMENTS = ['hang', 'talk'] as const;

let bundle = '';
let folder = '';

beforeAll(async () => {
  // Inside the project, so that packages are found from the bundle.
  folder = await mkdtemp(join(import.meta.dirname, '..', '.kill-'));
  bundle = await bundleForNode(join(import.meta.dirname, 'kill-child.ts'), folder);
});

afterAll(() => rm(folder, { recursive: true, force: true }));

/** Numbers that are the same in every run. */
function seeded(seed: number): () => number {
  let state = seed;
  return () => {
    state = (Math.imul(state, 1664525) + 1013904223) >>> 0;
    return state / 2 ** 32;
  };
}

async function started(dataDirectory: string): Promise<{ child: ChildProcess; port: number; token: string }> {
  const child = spawn(process.execPath, [bundle, dataDirectory], { stdio: ['ignore', 'pipe', 'inherit'] });
  const ready = once(createInterface({ input: child.stdout as NodeJS.ReadableStream }), 'line');
  const [line] = await Promise.race([
    ready,
    once(child, 'exit').then(([code]) => {
      throw new Error(`the server ended with ${code} before it was ready`);
    }),
  ]);
  return { child, ...(JSON.parse(String(line)) as { port: number; token: string }) };
}

/** A client that remembers the document as it was after each frame it sent. */
class Editor {
  readonly client: Client;
  /** What each frame, from the first, adds and deletes. */
  readonly sent: Uint8Array[] = [];

  constructor(client: Client) {
    this.client = client;
  }

  edit(change: (map: Y.Map<unknown>) => void): void {
    const keep = (update: Uint8Array): void => {
      this.sent.push(update);
    };
    this.client.doc.on('update', keep);
    this.client.edit((doc) => change(doc.getMap('places')));
    this.client.doc.off('update', keep);
  }

  get acknowledged(): Uint8Array[] {
    return this.sent.slice(0, this.client.acknowledged);
  }
}

test(
  `law: over ${ROUNDS} kills in the middle of edits and deletes, nothing acknowledged is missing`,
  async () => {
    const data = await mkdtemp(join(tmpdir(), 'enfilade-kill-'));
    const random = seeded(20261125);
    const kept: Record<string, Uint8Array[]> = { hang: [], talk: [] };
    let acknowledged = 0;
    let unacknowledged = 0;
    try {
      for (let round = 0; round < ROUNDS; round++) {
        const { child, port, token } = await started(data);
        const answer = await fetch(`http://127.0.0.1:${port}/join/${token}`, { redirect: 'manual' });
        const cookie = (answer.headers.get('set-cookie') ?? '').split(';')[0] ?? '';
        const path = answer.headers.get('location') ?? '';
        const editors = new Map<(typeof DOCUMENTS)[number], Editor>();
        for (const name of DOCUMENTS) {
          const socket = new WebSocket(`ws://127.0.0.1:${port}${path}doc/${name}`, [SUBPROTOCOL], {
            headers: { cookie },
          });
          const editor = new Editor(new Client(socket));
          editors.set(name, editor);
          await once(socket, 'open');
          editor.client.sendStepOne();
          await editor.client.when(({ updatesReceived }) => updatesReceived > 0);
        }
        // Edits go out without waiting; the kill comes at a moment drawn by lot among their acknowledgements.
        const dead = once(child, 'exit');
        const killAfter = 1 + Math.floor(random() * 120);
        const watch = [...editors.values()].map(({ client }) =>
          client.when(({ acknowledged: count, closed }) => {
            if (count >= killAfter && child.exitCode === null && child.signalCode === null) child.kill('SIGKILL');
            return closed !== null;
          }),
        );
        let n = 0;
        while (child.exitCode === null && child.signalCode === null) {
          // What is on its way stays below what one socket may send at once.
          const ahead = Math.max(...[...editors.values()].map(({ sent, client }) => sent.length - client.acknowledged));
          for (let burst = 0; burst < 8 && ahead < 500; burst++) {
            n += 1;
            const key = `block#${Math.floor(random() * 60)}`;
            const editor = editors.get(random() < 0.5 ? 'hang' : 'talk') as Editor;
            editor.edit((map) => {
              if (random() < 0.3 && map.has(key)) map.delete(key);
              else map.set(key, ['layout', round, n, 0, 0]);
            });
          }
          await new Promise(setImmediate);
          // A socket that closed by itself would never see the moment come.
          if ([...editors.values()].some(({ client }) => client.closed !== null)) child.kill('SIGKILL');
        }
        await Promise.all([dead, ...watch]);
        for (const [name, editor] of editors) {
          (kept[name] as Uint8Array[]).push(...editor.acknowledged);
          acknowledged += editor.acknowledged.length;
          unacknowledged += editor.sent.length - editor.acknowledged.length;
          editor.client.doc.destroy();
        }
        const store = await Store.open(data);
        for (const name of DOCUMENTS) {
          const doc = docFrom(await store.load(name));
          const before = Y.snapshot(doc);
          for (const update of kept[name] as Uint8Array[]) Y.applyUpdate(doc, update);
          // Everything acknowledged, deletions too, was there already: applying it once more changes nothing.
          expect(doc.store.pendingStructs).toBeNull();
          expect(Y.equalSnapshots(Y.snapshot(doc), before)).toBe(true);
          kept[name] = [Y.encodeStateAsUpdate(doc)];
          doc.destroy();
        }
        await store.close();
        if (process.env.SOAK_ROUNDS !== undefined && (round + 1) % 10 === 0) {
          process.stderr.write(
            `killed ${round + 1} of ${ROUNDS} times: ${acknowledged} edits acknowledged, none missing; ${unacknowledged} were on their way\n`,
          );
        }
      }
    } finally {
      await rm(data, { recursive: true, force: true });
    }
    // The kills did come in the middle.
    expect(acknowledged).toBeGreaterThan(ROUNDS * 5);
    expect(unacknowledged).toBeGreaterThan(ROUNDS);
  },
  ROUNDS * 6000,
);
