import { EventEmitter } from 'node:events';
import { PassThrough } from 'node:stream';
import { setImmediate as breath } from 'node:timers/promises';
import { setFlagsFromString } from 'node:v8';
import { runInNewContext } from 'node:vm';
import type { Limits } from '@enfilade/server/limits';
import { DEFAULT_LIMITS } from '@enfilade/server/limits';
import { SeatSocket } from '@enfilade/server/socket';
import { ShowDocuments } from '@enfilade/shared/documents';
import { ROOTS, type RootName } from '@enfilade/shared/schema';
import * as encoding from 'lib0/encoding';
import { expect, test } from 'vitest';
import type { WebSocket } from 'ws';
import * as Y from 'yjs';
import { scene } from './scene.ts';

/** Frames of each kind: `npm run soak` sends 100,000. */
const FRAMES = Number(process.env.SOAK_FRAMES ?? 1500);
const SAY = process.env.SOAK_FRAMES !== undefined;
const AT_ONCE = 250;
/** What may be left over when all is quiet, beyond what the document itself has grown by. */
const LEFT_MB = 96;

/** Numbers that are the same in every run. */
function seeded(seed: number): () => number {
  let state = seed;
  return () => {
    state = (Math.imul(state, 1664525) + 1013904223) >>> 0;
    return state / 2 ** 32;
  };
}

/** A socket without a network: what the server sends is counted and let go. */
class FrameSocket extends EventEmitter {
  readonly OPEN = 1;
  readonly protocol = 'enfilade.1';
  readonly bufferedAmount = 0;
  readyState = 1;
  code: number | null = null;
  send(): void {}
  ping(): void {}
  close(code: number): void {
    if (this.readyState !== 1) return;
    this.readyState = 3;
    this.code = code;
    this.emit('close', code, '');
  }
  terminate(): void {
    this.close(1006);
  }
}

function frameOf(type: number, write: (encoder: encoding.Encoder) => void): Uint8Array {
  const encoder = encoding.createEncoder();
  encoding.writeVarUint(encoder, type);
  write(encoder);
  return encoding.toUint8Array(encoder);
}

function syncFrame(step: number, content: Uint8Array): Uint8Array {
  return frameOf(0, (encoder) => {
    encoding.writeVarUint(encoder, step);
    encoding.writeVarUint8Array(encoder, content);
  });
}

/** Sound frames of each kind, from which the broken ones are made. */
function soundFrames(random: () => number): Readonly<Record<string, readonly Uint8Array[]>> {
  const doc = new Y.Doc();
  const updates: Uint8Array[] = [];
  doc.on('update', (update: Uint8Array) => updates.push(update));
  const places = doc.getMap('places');
  for (let n = 0; n < 40; n++) {
    const key = `mutated-${n % 9}#1`;
    if (n % 7 === 3) places.delete(key);
    else places.set(key, ['dye:head', Math.floor(random() * 6000), 1500, 0, 0]);
  }
  const vignette = { name: 'Sixty impressions', intent: 'loosely', focal: null, order: 'a0' };
  doc.transact(() => doc.getMap('vignettes').set('mutated', vignette));
  doc.getText('odd').insert(0, 'a type of root that no command writes');
  doc.getArray('odder').push([1, null, true, 'x', new Uint8Array([1, 2])]);
  const presence = [0, 1, 2].map((n) =>
    frameOf(1, (encoder) => {
      const inside = encoding.createEncoder();
      encoding.writeVarUint(inside, 1);
      encoding.writeVarUint(inside, 900_000 + n);
      encoding.writeVarUint(inside, 1 + n);
      encoding.writeVarString(inside, JSON.stringify({ at: 'wall/dye:head', person: { id: 'x', name: 'y' } }));
      encoding.writeVarUint8Array(encoder, encoding.toUint8Array(inside));
    }),
  );
  return {
    'sync step 1': [syncFrame(0, Y.encodeStateVector(doc)), syncFrame(0, Uint8Array.of(0))],
    'sync step 2': [syncFrame(1, Y.encodeStateAsUpdate(doc)), syncFrame(1, Uint8Array.of(0, 0))],
    update: updates.map((update) => syncFrame(2, update)),
    presence,
    'who is here': [frameOf(3, () => {})],
    hello: [frameOf(122, (encoder) => encoding.writeVarUint(encoder, doc.clientID))],
  };
}

function mutated(sound: Uint8Array, other: Uint8Array, random: () => number): Uint8Array {
  let bytes = Array.from(sound);
  const at = (): number => Math.floor(random() * bytes.length);
  const changes = 1 + Math.floor(random() * 4);
  for (let n = 0; n < changes; n++) {
    const kind = Math.floor(random() * 7);
    if (kind === 0) bytes[at()] = Math.floor(random() * 256);
    else if (kind === 1) bytes[at()] = (bytes[at()] ?? 0) ^ (1 << Math.floor(random() * 8));
    else if (kind === 2) bytes.splice(at(), 0, Math.floor(random() * 256));
    else if (kind === 3) bytes.splice(at(), 1 + Math.floor(random() * 4));
    else if (kind === 4) bytes = bytes.slice(0, at() + 1);
    else if (kind === 5) bytes.splice(at(), 0, ...bytes.slice(at(), at() + 16));
    else bytes.splice(at(), bytes.length, ...other.slice(Math.floor(random() * other.length)));
  }
  return Uint8Array.from(bytes);
}

function heapMb(): number {
  setFlagsFromString('--expose-gc');
  (runInNewContext('gc') as () => void)();
  return process.memoryUsage().heapUsed / (1 << 20);
}

test(
  `law: ${FRAMES} mutated frames of each kind end no process, leave nothing behind, and poison no document`,
  async () => {
    const here = await scene();
    const { sessions } = here.server;
    const honest = await here.client(await here.seat('curator'), 'hang');
    const reader = await here.client(await here.seat('viewer'), 'hang');
    reader.sendStepOne();
    await reader.when(({ updatesReceived }) => updatesReceived > 0);
    const session = sessions.get('hang');
    const members = session.members.size;
    const random = seeded(20261125);
    const kinds = Object.keys(soundFrames(random));
    const limits: Limits = { ...DEFAULT_LIMITS, framesAtOnce: 1e9, bytesAtOnce: 1e12 };
    const counts = { framesIn: 0, framesOut: 0, closedForFault: 0 };
    const seat = {
      seatId: 'mutator',
      person: { id: 'mutator', name: 'A mutator', role: 'curator' as const },
      mayWrite: true,
    };
    let edits = 0;
    let opened = 0;
    const before = heapMb();
    const grown = session.bytesSinceSnapshot + session.snapshotBytes;
    for (const kind of kinds) {
      let frames: readonly Uint8Array[] = [];
      let all: readonly Uint8Array[] = [];
      let socket = new FrameSocket();
      socket.close(1000);
      for (let n = 0; n < FRAMES; n++) {
        if (n % AT_ONCE === 0) {
          // Another page with something new to say, so that what is broken is not just what is known.
          const sound = soundFrames(random);
          frames = sound[kind] ?? [];
          all = Object.values(sound).flat();
        }
        if (socket.readyState !== 1) {
          socket = new FrameSocket();
          opened += 1;
          new SeatSocket(socket as unknown as WebSocket, new PassThrough(), session, seat, limits, counts);
        }
        // In order, the sound one after its broken one: the next finds its predecessors there.
        const from = frames[n % frames.length] as Uint8Array;
        const other = all[Math.floor(random() * all.length)] as Uint8Array;
        socket.emit('message', Buffer.from(mutated(from, other, random)), true);
        if (socket.readyState === 1) socket.emit('message', Buffer.from(from), true);
        if (n % AT_ONCE !== AT_ONCE - 1) continue;
        await sessions.commit.drain();
        await breath();
        if (SAY && (n + 1) % 10_000 === 0) {
          process.stderr.write(
            `${kind}: ${n + 1} mutated frames, ${opened} sockets opened, ${Math.round(heapMb())} MB\n`,
          );
        }
      }
      socket.close(1000);
      await sessions.commit.drain();
      // Whoever is honest goes on, and is heard, after each kind.
      edits += 1;
      honest.edit((doc) => doc.getMap('places').set(`honest-${kind}#1`, ['dye:head', edits, 1500, 0, 0]));
      await honest.when(({ acknowledged }) => acknowledged === edits);
      await reader.when(({ doc }) => doc.getMap('places').has(`honest-${kind}#1`));
    }
    // The frames did what they were made for: some were taken, most closed their socket.
    expect(counts.closedForFault).toBeGreaterThan(FRAMES / 2);
    expect(sessions.updates).toBeGreaterThan(edits + FRAMES / 100);

    // None leaks.
    expect(session.members.size).toBe(members);
    expect([...session.presence.clients()]).toEqual([]);
    const document = (session.bytesSinceSnapshot + session.snapshotBytes - grown) / (1 << 20);
    expect(heapMb() - before - 40 * document).toBeLessThan(LEFT_MB);

    // None poisons: the document is read in full, opens again as it was, and a newcomer gets all of it.
    const documents = new ShowDocuments(new Map([['hang', session.doc]]));
    for (const root of Object.keys(ROOTS) as RootName[]) {
      if (ROOTS[root].document === 'hang') expect(() => [...documents.all(root)]).not.toThrow();
    }
    const state = Y.encodeStateAsUpdate(session.doc);
    await sessions.compactAll();
    await here.reopen();
    const again = here.server.sessions.get('hang').doc;
    // What waits for predecessors may be joined when it is read again: never less than it was.
    const known = Y.encodeStateVector(again);
    Y.applyUpdate(again, state);
    expect(Y.encodeStateVector(again)).toEqual(known);
    const newcomer = await here.client(await here.seat('lead'), 'hang');
    newcomer.sendStepOne();
    await newcomer.when(({ updatesReceived }) => updatesReceived > 0);
    for (const kind of kinds) expect(newcomer.doc.getMap('places').has(`honest-${kind}#1`)).toBe(true);
  },
  20_000 + FRAMES * 60,
);
