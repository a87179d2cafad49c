/** Updates whose predecessors never come, and the check that refuses them before they are applied. */

import { ClientIds } from '@enfilade/server/client-ids';
import type { Limits } from '@enfilade/server/limits';
import { type Arrived, CHECKS, decodedUpdate, type Standing } from '@enfilade/server/update-checks';
import * as Y from 'yjs';

/** Every second update of one writer, so that each waits for one that is not there. */
export function gapUpdates(count: number): Uint8Array[] {
  const doc = new Y.Doc();
  doc.clientID = 77_000;
  const all: Uint8Array[] = [];
  doc.on('update', (update: Uint8Array) => all.push(update));
  for (let n = 0; n <= 2 * count; n++) doc.getMap('places').set(`oil-${n % 60}#1`, ['dye:head', n, 1500, 0, 0]);
  return all.filter((_, index) => index % 2 === 1).slice(0, count);
}

/** How many of them are refused by a document in which as many as may wait are waiting already. */
export function refused(updates: readonly Uint8Array[], limits: Limits): number {
  const doc = new Y.Doc();
  const standing: Standing = {
    doc,
    limits,
    ids: new ClientIds(
      [],
      () => false,
      () => {},
    ),
    nextClockOf: (client) => Y.getState(doc.store, client),
    pendingUpdates: limits.pendingUpdates,
    pendingBytes: 0,
    documentBytes: 0,
  };
  let count = 0;
  for (const bytes of updates) {
    const decoded = decodedUpdate(bytes);
    if (decoded === null) continue;
    const arrived: Arrived = { bytes, decoded, mayWrite: true, personId: 'castellane' };
    const verdict = CHECKS.map(({ judge }) => judge(arrived, standing)).find((found) => found !== null);
    if (verdict?.kind === 'close') count += 1;
  }
  return count;
}
