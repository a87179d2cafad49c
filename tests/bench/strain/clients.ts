/** So many people in one document, each with 5 moves and 10 words of presence a second; in a process of their own. */
import { once } from 'node:events';
import { MESSAGE_ACKNOWLEDGED, SUBPROTOCOL } from '@enfilade/shared/protocol';
import * as decoding from 'lib0/decoding';
import * as encoding from 'lib0/encoding';
import { WebSocket } from 'ws';
import * as Y from 'yjs';

export interface Load {
  readonly url: string;
  readonly cookie: string;
  readonly people: number;
  readonly seconds: number;
}

export interface Told {
  /** Update and presence messages that were sent. */
  readonly sent: number;
  /** Frames received by all, acknowledgements aside. */
  readonly frames: number;
  /** Of the moves that the listeners should have heard of, the share that they had when it was quiet again. */
  readonly delivered: number;
  readonly p50Ms: number;
  readonly p95Ms: number;
}

/** So many of them take apart what they hear; the others only count it, so that this process is not what is measured. */
const LISTENERS = 4;
const MOVE_EVERY_MS = 200;
const PRESENCE_EVERY_MS = 100;
const QUIET_MS = 1500;
/** A server that is behind is not one that has lost something. */
const LOST_AFTER_MS = 15_000;

interface Person {
  readonly socket: WebSocket;
  readonly doc: Y.Doc;
  /** When each clock was sent. */
  readonly sentAt: number[];
  clock: number;
}

let frames = 0;
let heardAt = performance.now();
const delays: number[] = [];
const people: Person[] = [];
const byId = new Map<number, Person>();

function frame(type: number, write: (encoder: encoding.Encoder) => void): Uint8Array {
  const encoder = encoding.createEncoder();
  encoding.writeVarUint(encoder, type);
  write(encoder);
  return encoding.toUint8Array(encoder);
}

function listen(self: Person, bytes: Uint8Array): void {
  const decoder = decoding.createDecoder(bytes);
  if (decoding.readVarUint(decoder) !== 0) return;
  const step = decoding.readVarUint(decoder);
  if (step === 0) return;
  const now = performance.now();
  for (const { id, length } of Y.decodeUpdate(decoding.readVarUint8Array(decoder)).structs) {
    const sender = byId.get(id.client);
    if (sender === undefined || sender === self) continue;
    for (let clock = id.clock; clock < id.clock + length; clock++) {
      const at = sender.sentAt[clock];
      if (at !== undefined) delays.push(now - at);
    }
  }
}

async function sitDown({ url, cookie }: Load, n: number): Promise<void> {
  const socket = new WebSocket(url, cookie === '' ? [] : [SUBPROTOCOL], {
    perMessageDeflate: false,
    headers: cookie === '' ? {} : { cookie },
  });
  const doc = new Y.Doc();
  const person: Person = { socket, doc, sentAt: [], clock: 0 };
  people.push(person);
  byId.set(doc.clientID, person);
  socket.on('message', (data: Buffer) => {
    if (data[0] === MESSAGE_ACKNOWLEDGED) return;
    frames += 1;
    heardAt = performance.now();
    if (n < LISTENERS) listen(person, new Uint8Array(data));
  });
  doc.on('update', (update: Uint8Array) => {
    person.sentAt[doc.store.clients.get(doc.clientID)?.at(-1)?.id.clock ?? 0] = performance.now();
    const bytes = frame(0, (encoder) => {
      encoding.writeVarUint(encoder, 2);
      encoding.writeVarUint8Array(encoder, update);
    });
    socket.send(bytes);
  });
  await once(socket, 'open');
}

function sayWhere(person: Person, n: number): void {
  person.clock += 1;
  const state = { at: 'wall/dye:head', drag: { [`oil-${n}#1`]: [(person.clock * 7) % 6000, 1500, 0] } };
  const inside = encoding.createEncoder();
  encoding.writeVarUint(inside, 1);
  encoding.writeVarUint(inside, person.doc.clientID);
  encoding.writeVarUint(inside, person.clock);
  encoding.writeVarString(inside, JSON.stringify(state));
  person.socket.send(frame(1, (encoder) => encoding.writeVarUint8Array(encoder, encoding.toUint8Array(inside))));
}

function quantile(sorted: readonly number[], share: number): number {
  return sorted[Math.min(sorted.length - 1, Math.floor(sorted.length * share))] ?? Number.NaN;
}

interface Sent {
  messages: number;
  moves: number;
}

/** Everybody works for so long. */
async function work(seconds: number): Promise<Sent> {
  const sent: Sent = { messages: 0, moves: 0 };
  const began = performance.now();
  const end = began + seconds * 1000;
  await Promise.all(
    people.map(async (person, n) => {
      const places = person.doc.getMap('places');
      // Each begins at a moment of their own.
      let move = began + ((n * 61) % MOVE_EVERY_MS);
      let word = began + ((n * 37) % PRESENCE_EVERY_MS);
      for (;;) {
        const next = Math.min(move, word);
        if (next >= end) return;
        await new Promise((go) => setTimeout(go, Math.max(0, next - performance.now())));
        sent.messages += 1;
        if (next === word) {
          sayWhere(person, n);
          word += PRESENCE_EVERY_MS;
        } else {
          places.set(`oil-${n}#1`, ['dye:head', Math.round(move) % 6000, 1500, 0, 0]);
          sent.moves += 1;
          move += MOVE_EVERY_MS;
        }
      }
    }),
  );
  return sent;
}

/** Both servers are measured as they run for a day, not as their code is first compiled. */
const WARM_S = 3;

function forget(): void {
  frames = 0;
  delays.length = 0;
  for (const { sentAt } of people) sentAt.length = 0;
}

async function carry(load: Load): Promise<Told> {
  for (let n = 0; n < load.people; n++) await sitDown(load, n);
  await work(WARM_S);
  heardAt = performance.now();
  while (performance.now() - heardAt < QUIET_MS) await new Promise((go) => setTimeout(go, 100));
  process.send?.('seated');
  await once(process, 'message');
  forget();
  const { messages: sent, moves } = await work(load.seconds);
  const listeners = Math.min(LISTENERS, load.people);
  const own = people.slice(0, listeners).reduce((sum, { sentAt }) => sum + sentAt.filter(Number.isFinite).length, 0);
  const expected = moves * listeners - own;
  // Until they have heard of all of it and nothing more comes, or nothing came for long.
  heardAt = performance.now();
  const quiet = (): number => (delays.length >= expected ? QUIET_MS : LOST_AFTER_MS);
  while (performance.now() - heardAt < quiet()) await new Promise((go) => setTimeout(go, 100));
  delays.sort((a, b) => a - b);
  return {
    sent,
    frames,
    delivered: delays.length / expected,
    p50Ms: quantile(delays, 0.5),
    p95Ms: quantile(delays, 0.95),
  };
}

const [given = '{}'] = process.argv.slice(2);
const told = await carry(JSON.parse(given) as Load);
process.send?.(told);
await once(process, 'message');
process.exit(0);
