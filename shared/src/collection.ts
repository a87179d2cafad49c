/**
 * The museum's whole collection beside the show: its records are in the server's database and are asked for page by
 * page; what people say of them is in `talk`; what goes into the show becomes a record of the checklist.
 */
import { objectNumberKey } from '@enfilade/records/object-number';
import type { Act } from './acts.ts';
import { addObjects } from './commands.ts';
import type { ShowDocuments } from './documents.ts';
import type { FrameFact, MuseumObject, ObjectId, PrivateFacts } from './schema.ts';
import type { CollectionSaid, CollectionWord, Word } from './talk.ts';

/** One record as a seat is told it. Texts are as written; empty where nothing is. */
export interface CollectionRecord {
  readonly number: string;
  readonly title: string;
  readonly maker: string;
  readonly date: string;
  readonly medium: string;
  readonly type: string;
  readonly dimensions: string;
  readonly credit: string;
  /** ISO date it was last shown; null: never; empty: not known. */
  readonly shown: string | null;
  /** SHA-256 of its picture; null: not photographed. */
  readonly picture: string | null;
  /** Where it is kept: only for seats that may see storage places. */
  readonly storage?: string;
  /** What else its file said of it. */
  readonly more?: CollectionMore;
  /** Only for seats that read what is private. */
  readonly held?: CollectionHeld;
}

/** What only the checklist has a use for; it goes there with the record. */
export type CollectionMore = Partial<
  Pick<MuseumObject, 'framedText' | 'hardwareText' | 'notes'> & { weightKg: number; count: number; frame: FrameFact }
>;

export interface CollectionHeld {
  readonly value?: string;
  readonly contact?: string;
  readonly price?: string;
}

/** `GET /seat/<id>/collection?words=&type=&from=&to=&picture=with|without&shown=never|<year>&offset=&limit=` */
export interface CollectionPage {
  readonly records: readonly CollectionRecord[];
  /** How many there are in all, as far as they were counted. */
  readonly found: number;
  /** There are more than were counted. */
  readonly more: boolean;
}

/** `GET /seat/<id>/collection/about` */
export interface CollectionAbout {
  readonly count: number;
  readonly pictured: number;
  readonly neverShown: number;
  /** Kinds of things, the most frequent first. */
  readonly types: readonly { readonly type: string; readonly count: number }[];
}

/** `GET /seat/<id>/collection/like?number=&by=likeness|echo`: what looks like a thing, or answers it, the nearest first. */
export interface CollectionLike {
  readonly of: CollectionRecord;
  readonly found: readonly { readonly record: CollectionRecord; readonly words: string }[];
}

/** `GET /seat/<id>/collection/pull-list`, by storage place; 403 for seats that may not see them. */
export type PullList = readonly PullLine[];
export interface PullLine {
  readonly record: CollectionRecord & { readonly storage: string };
  readonly why: 'on the checklist' | 'yes';
}

/** At most so many records are asked for at once, by page or by number. */
export const COLLECTION_PAGE = 120;
/** Matches are counted up to here. */
export const COLLECTION_COUNTED = 1000;

export function sayOfCollection(number: string, said: CollectionSaid | null, word: Word): Act {
  const value: CollectionWord | undefined = said === null ? undefined : { number, said, ...word };
  return {
    name: said === null ? `take back a word on ${number}` : `say ${said} to ${number}`,
    changes: [{ root: 'collectionWords', key: `${word.by}/${objectNumberKey(number)}`, value: value as never }],
  };
}

/** What was said of each thing, by the key of its number; a thing's words in the order of their names. */
export function collectionWordsOf(documents: ShowDocuments): ReadonlyMap<string, readonly CollectionWord[]> {
  const found = new Map<string, CollectionWord[]>();
  for (const word of documents.all('collectionWords').values()) {
    if (typeof word.number !== 'string' || typeof word.name !== 'string') continue;
    const key = objectNumberKey(word.number);
    found.set(key, [...(found.get(key) ?? []), word]);
  }
  for (const words of found.values()) words.sort((a, b) => (a.name < b.name ? -1 : a.name > b.name ? 1 : 0));
  return found;
}

/** Records of the checklist that are the museum's own, by the key of their number. */
export function heldOnChecklist(documents: ShowDocuments): ReadonlyMap<string, ObjectId> {
  const found = new Map<string, ObjectId>();
  for (const [id, { lender, number }] of documents.all('objects')) {
    if (lender === '' && number !== '') found.set(objectNumberKey(number), id);
  }
  return found;
}

/** One id a thing, whoever takes it: taken by two at once it is one record. */
function idInShow(number: string): ObjectId {
  return `collection-${objectNumberKey(number).replaceAll('#', '_')}`;
}

/**
 * Brings things of the collection onto the checklist, each with its picture, and its storage place into what is private.
 * One that is there already is left out; one that was taken away comes back.
 */
export function takeFromCollection(
  documents: ShowDocuments,
  records: readonly CollectionRecord[],
): Act & { readonly ids: readonly ObjectId[] } {
  const there = heldOnChecklist(documents);
  const coming = records.filter(({ number }) => !there.has(objectNumberKey(number)));
  const made = addObjects(
    documents,
    coming.map((record) => ({
      id: idInShow(record.number),
      object: objectFrom(record),
      ...(record.picture === null ? {} : { picture: record.picture }),
      ...privateFrom(record),
    })),
  );
  const back = made.ids.filter((id) => documents.stored('objects', `${id}/removed`) === true);
  const name = coming.length === 1 ? `take ${coming[0]?.title ?? ''} to the checklist` : 'take to the checklist';
  const changes = [
    ...made.changes,
    ...back.map((id) => ({ root: 'objects' as const, key: `${id}/removed`, value: false })),
  ];
  return { ids: made.ids, name, changes };
}

function privateFrom({ storage, held }: CollectionRecord): { private?: PrivateFacts } {
  if (storage === undefined && held === undefined) return {};
  return { private: { ...(storage === undefined ? {} : { storage }), ...held } };
}

function objectFrom(record: CollectionRecord): MuseumObject {
  return {
    number: record.number,
    title: record.title,
    maker: record.maker,
    dateText: record.date,
    medium: record.medium,
    type: record.type,
    dimensionsText: record.dimensions,
    count: 1,
    lender: '',
    creditLine: record.credit,
    source: 'collection',
    ...record.more,
  };
}
