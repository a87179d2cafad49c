/**
 * What an update must pass before it may reach the log: a named, ordered list. A check answers null when the update
 * may go on, or why it may not.
 */
import { CLOSE } from '@enfilade/shared/protocol';
import * as Y from 'yjs';
import type { ClientIds } from './client-ids.ts';
import type { Limits } from './limits.ts';

/** One update as it came from one socket, decoded. */
export interface Arrived {
  readonly bytes: Uint8Array;
  readonly decoded: ReturnType<typeof Y.decodeUpdate>;
  readonly mayWrite: boolean;
  /** Whose socket it came on. */
  readonly personId: string;
}

/** What the checks may know of the document. */
export interface Standing {
  readonly doc: Y.Doc;
  readonly limits: Limits;
  readonly ids: ClientIds;
  /** The next clock of a client, updates still on their way to the log counted in. */
  nextClockOf(client: number): number;
  /** Updates and bytes that wait for predecessors. */
  readonly pendingUpdates: number;
  readonly pendingBytes: number;
  readonly documentBytes: number;
}

export type Verdict =
  /** Holds nothing the document has not: needs no place in the log. */
  | { readonly kind: 'known' }
  /** Dropped, and the person told. */
  | { readonly kind: 'refuse'; readonly reason: string }
  /** Dropped, and the socket closed. */
  | { readonly kind: 'close'; readonly code: number; readonly reason: string };

interface Check {
  readonly name: string;
  readonly judge: (arrived: Arrived, standing: Standing) => Verdict | null;
}

/** No client counts so far: clocks beyond it come from a broken length, and would leave no room to count on. */
const LAST_CLOCK = 2 ** 31;

/** @returns the update taken apart, or null when it does not parse to its last byte, or counts beyond all reason. */
export function decodedUpdate(bytes: Uint8Array): Arrived['decoded'] | null {
  try {
    const decoded = Y.decodeUpdate(bytes);
    if (decoded.structs.some(({ id, length }) => id.clock + length > LAST_CLOCK)) return null;
    for (const ranges of decoded.ds.clients.values()) {
      if (ranges.some(({ clock, len }) => clock + len > LAST_CLOCK)) return null;
    }
    return decoded;
  } catch {
    return null;
  }
}

/** The client ids an update writes under. */
export function clientsOf({ decoded }: Arrived): ReadonlySet<number> {
  const clients = new Set<number>();
  // A skip stands for what is left out, and writes nothing.
  for (const struct of decoded.structs) if (!(struct instanceof Y.Skip)) clients.add(struct.id.client);
  return clients;
}

/** What an item cannot be put in its place without: the items left and right of it, and the one it is in. */
function* referencesOf(struct: Y.Item | Y.GC | Y.Skip): Iterable<Y.ID> {
  if (!(struct instanceof Y.Item)) return;
  if (struct.origin !== null) yield struct.origin;
  if (struct.rightOrigin !== null) yield struct.rightOrigin;
  if (struct.parent instanceof Y.ID) yield struct.parent;
}

/** Whether structs of several clients that lean on each other can be put in their places one after another. */
function hasAnOrder(structs: Arrived['decoded']['structs'], standing: Standing): boolean {
  const queues = new Map<number, { structs: (typeof structs)[number][]; at: number; next: number }>();
  for (const struct of structs) {
    if (struct instanceof Y.Skip) continue;
    const { client } = struct.id;
    const queue = queues.get(client) ?? { structs: [], at: 0, next: standing.nextClockOf(client) };
    queue.structs.push(struct);
    queues.set(client, queue);
  }
  const waiters = new Map<number, number[]>();
  const ready = [...queues.keys()];
  for (let client = ready.pop(); client !== undefined; client = ready.pop()) {
    const queue = queues.get(client);
    if (queue === undefined) continue;
    const before = queue.at;
    for (; queue.at < queue.structs.length; queue.at++) {
      const struct = queue.structs[queue.at] as (typeof structs)[number];
      const missing = [...referencesOf(struct)].find(
        (of) => of.client !== client && of.clock >= (queues.get(of.client)?.next ?? standing.nextClockOf(of.client)),
      );
      if (missing !== undefined) {
        waiters.set(missing.client, [...(waiters.get(missing.client) ?? []), client]);
        break;
      }
      queue.next = Math.max(queue.next, struct.id.clock + struct.length);
    }
    if (queue.at === before) continue;
    ready.push(...(waiters.get(client) ?? []));
    waiters.delete(client);
  }
  return [...queues.values()].every((queue) => queue.at === queue.structs.length);
}

/** Whether an update holds, or deletes, or leans on, something that has not come. */
export function leavesGap({ decoded }: Arrived, standing: Standing): boolean {
  const next = new Map<number, number>();
  const nextOf = (client: number): number => next.get(client) ?? standing.nextClockOf(client);
  for (const struct of decoded.structs) {
    if (struct instanceof Y.Skip) continue;
    const { client, clock } = struct.id;
    if (clock > nextOf(client)) return true;
    next.set(client, Math.max(nextOf(client), clock + struct.length));
  }
  let leansOnItsOwn = false;
  for (const struct of decoded.structs) {
    for (const { client, clock } of referencesOf(struct)) {
      if (clock >= nextOf(client)) return true;
      leansOnItsOwn ||= client !== struct.id.client && clock >= standing.nextClockOf(client);
    }
  }
  if (leansOnItsOwn && !hasAnOrder(decoded.structs, standing)) return true;
  for (const [client, ranges] of decoded.ds.clients) {
    for (const { clock, len } of ranges) if (clock + len > nextOf(client)) return true;
  }
  return false;
}

function addsNothing({ decoded }: Arrived, { doc }: Standing): boolean {
  for (const { id, length } of decoded.structs) {
    if (id.clock + length > Y.getState(doc.store, id.client)) return false;
  }
  for (const [client, ranges] of decoded.ds.clients) {
    const structs = doc.store.clients.get(client);
    for (const { clock, len } of ranges) {
      if (structs === undefined || clock + len > Y.getState(doc.store, client)) return false;
      for (let at = Y.findIndexSS(structs, clock); at < structs.length; at++) {
        const struct = structs[at] as Y.Item | Y.GC;
        if (struct.id.clock >= clock + len) break;
        if (!struct.deleted) return false;
      }
    }
  }
  return true;
}

/** Most client ids that one update may write under for the first time: many a page opened without a connection. */
const NEW_IDS_AT_ONCE = 256;

export const CHECKS: readonly Check[] = [
  {
    // Yjs writes neither; applied, either would break the document for everybody, at every start again.
    name: 'sense',
    judge: ({ decoded }) => {
      for (const struct of decoded.structs) {
        const { client, clock } = struct.id;
        let sound = struct.length > 0;
        for (const of of referencesOf(struct)) sound &&= of.client !== client || of.clock < clock;
        if (!sound) return { kind: 'close', code: CLOSE.malformed, reason: 'an update that leans on itself' };
      }
      return null;
    },
  },
  {
    // A returning client sends every deletion it knows of: without this each return would lengthen the log.
    name: 'something new',
    judge: (arrived, standing) => (addsNothing(arrived, standing) ? { kind: 'known' } : null),
  },
  {
    name: 'power',
    judge: ({ mayWrite }) =>
      mayWrite ? null : { kind: 'refuse', reason: 'This seat may look here, not change anything. Nothing was stored.' },
  },
  {
    // New structs only under the person's own ids; a deletion is nobody's hand, and goes by power alone.
    name: 'identity',
    judge: (arrived, { ids, nextClockOf }) => {
      const { personId, decoded } = arrived;
      const claimed = new Set<number>();
      for (const struct of decoded.structs) {
        if (struct instanceof Y.Skip) continue;
        const { client, clock } = struct.id;
        if (clock + struct.length <= nextClockOf(client) || ids.ownerOf(client) === personId) continue;
        if (!ids.mayHold(client, personId)) {
          return {
            kind: 'refuse',
            reason: 'Part of this was written under another person’s hand. Nothing of it was stored.',
          };
        }
        claimed.add(client);
      }
      return claimed.size <= NEW_IDS_AT_ONCE && ids.hasRoomFor(claimed.size, personId)
        ? null
        : { kind: 'close', code: CLOSE.tooLarge, reason: 'more hands than one person has' };
    },
  },
  {
    name: 'document size',
    judge: ({ bytes }, { documentBytes, limits }) =>
      documentBytes + bytes.length <= limits.documentBytes
        ? null
        : {
            kind: 'refuse',
            reason: 'This show has reached the size it can hold. What is here is kept; nothing was added.',
          },
  },
  {
    name: 'gaps',
    judge: (arrived, standing) => {
      if (!leavesGap(arrived, standing)) return null;
      const { limits, pendingUpdates, pendingBytes } = standing;
      return pendingUpdates < limits.pendingUpdates && pendingBytes + arrived.bytes.length <= limits.pendingBytes
        ? null
        : { kind: 'close', code: CLOSE.tooLarge, reason: 'too many updates without their predecessors' };
    },
  },
];
