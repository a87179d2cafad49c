/** From understood rows to the records of one act: what is known is updated, the rest is added; nothing doubles. */
import { MAX_ROWS } from '@enfilade/records/checklist-rows';
import { recordKeyOf } from '@enfilade/records/object-number';
import type { ChecklistRow } from './checklist-reading.ts';
import type { RecordIn } from './commands.ts';
import type { ShowDocuments } from './documents.ts';
import type { MuseumObject, ObjectId, PrivateFacts } from './schema.ts';

/** Pictures of one record (SHA-256): the whole's, and its pieces' by their numbers, from 1. */
export interface RecordPictures {
  readonly whole: string | null;
  readonly byPiece: ReadonlyMap<number, string>;
}

export interface RecordsIn {
  readonly records: readonly RecordIn[];
  readonly updated: number;
  readonly added: number;
  /** Rows that stay out because the show would hold more than it can. */
  readonly beyond: readonly number[];
}

/**
 * Matches rows to records by (lender or held, normalised number). A known record keeps what the checklist has no column
 * for; its size as answered before stays while its texts stay as they were.
 */
export function recordsInFrom(
  documents: ShowDocuments,
  rows: readonly ChecklistRow[],
  picturesByLine: ReadonlyMap<number, RecordPictures>,
): RecordsIn {
  const known = new Map<string, ObjectId[]>();
  for (const [id, object] of [...documents.all('objects')].sort(([a], [b]) => (a < b ? -1 : 1))) {
    if (object.number === '') continue;
    const ids = known.get(recordKeyOf(object));
    if (ids === undefined) known.set(recordKeyOf(object), [id]);
    else ids.push(id);
  }
  const room = MAX_ROWS - documents.all('objects').size;
  const records: RecordIn[] = [];
  const beyond: number[] = [];
  let updated = 0;
  let added = 0;
  for (const row of rows) {
    const id = row.object.number === '' ? undefined : known.get(recordKeyOf(row.object))?.shift();
    if (id === undefined && added >= room) {
      beyond.push(row.line);
      continue;
    }
    if (id === undefined) added += 1;
    else updated += 1;
    const facts = { ...(id === undefined ? undefined : privateBase(documents, id)), ...row.private };
    records.push({
      ...(id === undefined ? {} : { id }),
      object: objectFrom(id === undefined ? undefined : baseOf(documents, id), row),
      ...(Object.keys(facts).length === 0 ? {} : { private: facts }),
      ...pictured(picturesByLine.get(row.line)),
    });
  }
  return { records, updated, added, beyond };
}

/** Records that only get pictures: each as it is imported, with its pictures. */
export function pictureRecordsFrom(
  documents: ShowDocuments,
  picturesByObject: ReadonlyMap<ObjectId, RecordPictures>,
): RecordIn[] {
  return [...picturesByObject].flatMap(([id, pictures]) => {
    const object = baseOf(documents, id);
    return object === undefined ? [] : [{ id, object, ...pictured(pictures) }];
  });
}

function pictured(pictures: RecordPictures | undefined): Pick<RecordIn, 'picture' | 'pictures'> {
  if (pictures === undefined) return {};
  const { whole, byPiece } = pictures;
  const last = Math.max(0, ...byPiece.keys());
  return {
    ...(whole === null ? {} : { picture: whole }),
    ...(last === 0 ? {} : { pictures: Array.from({ length: last }, (_, index) => byPiece.get(index + 1) ?? null) }),
  };
}

function objectFrom(known: MuseumObject | undefined, row: ChecklistRow): MuseumObject {
  const { object } = row;
  if (known === undefined) return object;
  const sameTexts = known.dimensionsText === object.dimensionsText && known.framedText === object.framedText;
  return {
    ...known,
    ...object,
    source: row.sourceStated ? object.source : object.lender === known.lender ? known.source : object.source,
    weightKg: object.weightKg ?? known.weightKg ?? null,
    measured: object.measured ?? (sameTexts ? (known.measured ?? null) : null),
  };
}

/** What was imported, without a person's later edits: those stay where they are and are laid over it. */
function baseOf(documents: ShowDocuments, id: ObjectId): MuseumObject | undefined {
  return (documents.stored('objects', id) as MuseumObject | undefined) ?? documents.get('objects', id);
}

function privateBase(documents: ShowDocuments, id: ObjectId): PrivateFacts | undefined {
  return documents.stored('values', id) as PrivateFacts | undefined;
}
