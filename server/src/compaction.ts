/** Puts a snapshot in the place of a long log, without a moment in which anything acknowledged is not on the disk. */
import { setImmediate as breath } from 'node:timers/promises';
import * as Y from 'yjs';
import type { Limits } from './limits.ts';
import type { Session } from './session.ts';
import type { Store } from './store.ts';

/** Whether the log has grown long enough, for its own length and beside its snapshot. */
export function wantsCompaction(session: Session, limits: Limits): boolean {
  return (
    session.updatesSinceSnapshot >= limits.compactAfterUpdates ||
    session.bytesSinceSnapshot >= Math.max(limits.compactAfterBytes, session.snapshotBytes / 2)
  );
}

/**
 * Whether one state holds all of another: every struct and every deletion. It may hold more: updates that waited for
 * each other are sometimes only joined when they are read again.
 */
function holdsAll(state: Y.Snapshot, other: Y.Snapshot): boolean {
  for (const [client, clock] of other.sv) if ((state.sv.get(client) ?? 0) < clock) return false;
  for (const [client, ranges] of other.ds.clients) {
    // Both in the order of clocks, neighbours joined: a range lies in one range or in none.
    const held = state.ds.clients.get(client) ?? [];
    let at = 0;
    for (const { clock, len } of ranges) {
      let range = held[at];
      while (range !== undefined && range.clock + range.len < clock + len) {
        at += 1;
        range = held[at];
      }
      if (range === undefined || range.clock > clock) return false;
    }
  }
  return true;
}

/**
 * Writes the document as one snapshot, opens that again and compares, and only then lets the updates it holds go.
 * Updates that come meanwhile stay in the log.
 * @throws Error when the snapshot does not hold what the document holds; the log is kept.
 */
export async function compact(session: Session, store: Store): Promise<void> {
  const { appliedSeq: seq, updatesSinceSnapshot, bytesSinceSnapshot } = session;
  if (updatesSinceSnapshot === 0) return;
  const bytes = Y.encodeStateAsUpdateV2(session.doc);
  const held = Y.snapshot(session.doc);
  await breath();
  const again = new Y.Doc();
  Y.applyUpdateV2(again, bytes);
  const whole = holdsAll(Y.snapshot(again), held);
  again.destroy();
  if (!whole) throw new Error(`a snapshot of '${session.name}' does not hold what the document holds; the log is kept`);
  await breath();
  await store.replaceBySnapshot(session.name, { seq, bytes });
  session.updatesSinceSnapshot -= updatesSinceSnapshot;
  session.bytesSinceSnapshot -= bytesSinceSnapshot;
  session.snapshotBytes = bytes.length;
}
