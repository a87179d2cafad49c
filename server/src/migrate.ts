/**
 * Brings stored documents to the present schema, before anything is served. Only the server migrates; older bytes stay
 * in tests and must open.
 */
import { SCHEMA_VERSION } from '@enfilade/shared/schema';
import type { DocumentName } from '@enfilade/shared/seats';
import type * as Y from 'yjs';
import type { Session } from './session.ts';
import type { Store } from './store.ts';

interface Migration {
  /** The version it leads to. */
  readonly to: number;
  readonly document: DocumentName;
  readonly change: (doc: Y.Doc) => void;
}

const MIGRATIONS: readonly Migration[] = [];

export interface Meta {
  readonly schemaVersion: number;
  /** Rises at a restore from backup. */
  readonly epoch: number;
}

/** @throws RangeError when what is stored is of a later version than this server knows. */
export async function migrate(store: Store, sessions: ReadonlyMap<DocumentName, Session>): Promise<Meta> {
  const stored = Number((await store.meta('schema-version')) ?? SCHEMA_VERSION);
  if (stored > SCHEMA_VERSION) {
    throw new RangeError(`the show is of schema version ${stored}; this server knows up to ${SCHEMA_VERSION}`);
  }
  for (const { to, document, change } of MIGRATIONS) {
    if (to > stored) await sessions.get(document)?.act(change);
  }
  const epoch = Number((await store.meta('epoch')) ?? 1);
  await store.setMeta('schema-version', String(SCHEMA_VERSION));
  await store.setMeta('epoch', String(epoch));
  return { schemaVersion: SCHEMA_VERSION, epoch };
}
