/** Who did what, when, as facts: what the server wrote down of each change, and what of it still shows. */
import { sameJson } from './documents.ts';
import type { Json, RootName } from './schema.ts';
import type { Role } from './seats.ts';

/** One fact as it was and as it became. Without `from` there was none, without `to` it was taken away. */
export interface DeedChange {
  readonly root: RootName;
  /** The raw key: `id` or `id/field`. */
  readonly key: string;
  readonly from?: Json;
  readonly to?: Json;
}

/** One person's change, as the server took it. Several nudges of one thing within a minute are one deed. */
export interface Deed {
  /** Rises with every deed. */
  readonly n: number;
  /** ISO 8601, the server's clock. */
  readonly at: string;
  readonly personId: string;
  readonly name: string;
  readonly role: Role;
  readonly changes: readonly DeedChange[];
  /** Changes beyond those written down: an import of thousands is told by its number. */
  readonly more: number;
}

/** `GET /seat/<id>/history?before=<n>&since=<ISO>&limit=<n>`: newest first, at most 500. */
export interface HistoryAnswer {
  readonly deeds: readonly Deed[];
  /** Older ones remain. */
  readonly older: boolean;
}

/** A fact that differs between then and now, with whose hand it was last. */
export interface NetChange extends DeedChange {
  readonly at: string;
  readonly personId: string;
  readonly name: string;
}

/**
 * What the deeds, newest first, come to: for each fact its first `from`, its last `to` and who set that; what was set
 * back is left out. `except`: a person whose own last word is no news to them.
 */
export function netOf(deeds: readonly Deed[], except?: string): NetChange[] {
  const net = new Map<string, NetChange>();
  for (const { changes, at, personId, name } of [...deeds].reverse()) {
    for (const { root, key, from, to } of changes) {
      const id = `${root}|${key}`;
      const first = net.get(id);
      const was = first === undefined ? from : first.from;
      net.set(id, {
        root,
        key,
        at,
        personId,
        name,
        ...(was === undefined ? {} : { from: was }),
        ...(to === undefined ? {} : { to }),
      });
    }
  }
  return [...net.values()]
    .filter(({ from, to, personId }) => !sameJson(from, to) && personId !== except)
    .sort((a, b) => (a.at < b.at ? 1 : a.at > b.at ? -1 : a.key < b.key ? -1 : 1));
}
