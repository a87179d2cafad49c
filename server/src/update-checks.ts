/**
 * What an update must pass before it may reach the log: a named, ordered list. A check answers null when the update
 * may go on, or why it may not.
 */
import { CLOSE } from '@enfilade/shared/protocol';
import * as Y from 'yjs';
import type { Limits } from './limits.ts';

/** One update as it came from one socket, decoded. */
export interface Arrived {
  readonly bytes: Uint8Array;
  readonly decoded: ReturnType<typeof Y.decodeUpdate>;
  readonly mayWrite: boolean;
}

/** What the checks may know of the document. */
export interface Standing {
  readonly doc: Y.Doc;
  readonly limits: Limits;
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

/** @returns the update taken apart, or null when it does not parse to its last byte. */
export function decodedUpdate(bytes: Uint8Array): Arrived['decoded'] | null {
  try {
    return Y.decodeUpdate(bytes);
  } catch {
    return null;
  }
}

/** Whether an update holds, or deletes, something whose predecessors have not come. */
export function leavesGap({ decoded }: Arrived, standing: Standing): boolean {
  const next = new Map<number, number>();
  const nextOf = (client: number): number => next.get(client) ?? standing.nextClockOf(client);
  for (const struct of decoded.structs) {
    // A skip stands for what is left out.
    if (struct instanceof Y.Skip) continue;
    const { client, clock } = struct.id;
    if (clock > nextOf(client)) return true;
    next.set(client, Math.max(nextOf(client), clock + struct.length));
  }
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

export const CHECKS: readonly Check[] = [
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
  // Here goes 'identity': new structs only under ids bound to this socket, or its person's earlier ones.
];
