/** A seat's documents on this device, so that the show opens without a connection and unsent work outlives the page. */
import type { DocumentName } from '@enfilade/shared/seats';
import { IndexeddbPersistence } from 'y-indexeddb';
import type * as Y from 'yjs';
import { canKeep } from './register.ts';

export interface LocalCopies {
  /** Whether anything of the show was here already. */
  readonly held: boolean;
  /** Whether what is done is kept here from now on. */
  readonly kept: boolean;
  /** Whether a change came from the copy and not from a person. */
  isOrigin(origin: unknown): boolean;
}

const NONE: LocalCopies = { held: false, kept: false, isOrigin: () => false };

function nameOf(seatId: string, epoch: number, name: DocumentName): string {
  return `enfilade ${seatId} ${epoch} ${name}`;
}

/**
 * Loads what this device holds of the seat's documents into them, and keeps it up with them from then on. Copies of an
 * earlier epoch are thrown away: they are of a show that was replaced by a restored one.
 */
export async function keepCopies(
  seatId: string,
  epoch: number,
  docs: ReadonlyMap<DocumentName, Y.Doc>,
): Promise<LocalCopies> {
  if (!canKeep()) return NONE;
  try {
    await dropOthers(
      seatId,
      [...docs.keys()].map((name) => nameOf(seatId, epoch, name)),
    );
    const copies = [...docs].map(([name, doc]) => new IndexeddbPersistence(nameOf(seatId, epoch, name), doc));
    await Promise.all(copies.map((copy) => copy.whenSynced));
    const origins = new Set<unknown>(copies);
    return {
      kept: true,
      held: [...docs.values()].some((doc) => doc.store.clients.size > 0),
      isOrigin: (origin) => origins.has(origin),
    };
  } catch {
    // Storage that is off or full: the show works as long as this page and the connection do.
    return NONE;
  }
}

async function dropOthers(seatId: string, wanted: readonly string[]): Promise<void> {
  const all = (await indexedDB.databases?.()) ?? [];
  for (const { name } of all) {
    if (name?.startsWith(`enfilade ${seatId} `) && !wanted.includes(name)) indexedDB.deleteDatabase(name);
  }
}
