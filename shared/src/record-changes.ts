/** What a record came in with and what people made of it since: the base and the later words that lie over it. */
import { type ShowDocuments, sameJson } from './documents.ts';
import type { Json, MuseumObject, ObjectId, PrivateFacts } from './schema.ts';

/** One field that a person changed after its record came in. Absent: nothing was, or is, there. */
export interface RecordChange<F extends string> {
  readonly field: F;
  readonly imported?: Json;
  readonly now?: Json;
}

export interface RecordChanges {
  /** Of what every seat reads. */
  readonly open: readonly RecordChange<keyof MuseumObject & string>[];
  /** Of what few seats read; empty for a seat without the private document. */
  readonly private: readonly RecordChange<keyof PrivateFacts & string>[];
}

/** Fields whose later word differs from what came in, by name. A word that says the same again is no change. */
export function recordChangesOf(documents: ShowDocuments, id: ObjectId): RecordChanges {
  return { open: changesIn(documents, 'objects', id), private: changesIn(documents, 'values', id) };
}

function changesIn<F extends string>(
  documents: ShowDocuments,
  root: 'objects' | 'values',
  id: ObjectId,
): RecordChange<F>[] {
  const base = (documents.stored(root, id) ?? {}) as Readonly<Record<string, Json | undefined>>;
  const now = (documents.get(root, id) ?? {}) as Readonly<Record<string, Json | undefined>>;
  const changes: RecordChange<F>[] = [];
  for (const field of Object.keys(now).sort()) {
    const later = documents.stored(root, `${id}/${field}`);
    if (later === undefined || sameJson(nothing(later), nothing(base[field]))) continue;
    const imported = nothing(base[field]);
    const word = nothing(later);
    changes.push({
      field: field as F,
      ...(imported === undefined ? {} : { imported }),
      ...(word === undefined ? {} : { now: word }),
    });
  }
  return changes;
}

/** Empty, null and absent are one: nothing is known. */
function nothing(value: Json | undefined): Json | undefined {
  return value === null || value === '' ? undefined : value;
}
