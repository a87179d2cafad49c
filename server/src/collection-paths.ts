/**
 * `GET /seat/<id>/collection…`: the collection, read by every seat; storage places told to few, values to fewer. It is never
 * written here.
 */
import { objectNumberKey } from '@enfilade/records/object-number';
import {
  COLLECTION_PAGE,
  type CollectionLike,
  type CollectionPage,
  type CollectionRecord,
  collectionWordsOf,
  heldOnChecklist,
  type PullList,
} from '@enfilade/shared/collection';
import type { ShowDocuments } from '@enfilade/shared/documents';
import { mayBringIn, mayRead, maySeeStorage, type Person } from '@enfilade/shared/seats';
import { type Answer, json, refusal } from './answers.ts';
import type { Collection, CollectionQuery } from './collection.ts';
import type { CollectionIntake } from './collection-intake.ts';
import type { CollectionLooks, LookedFrom } from './collection-looks.ts';
import type { CollectionRow } from './database.ts';

interface Asked {
  readonly person: Person;
  readonly query: URLSearchParams;
  readonly documents: ShowDocuments;
  readonly collection: Collection;
  readonly looks: CollectionLooks;
  readonly intake: CollectionIntake;
}

const WORDS_LONG = 200;
const OFFSET_AT_MOST = 100_000;

class BadQuery extends Error {
  readonly where: string;
  constructor(where: string, what: string) {
    super(what);
    this.where = where;
  }
}

export async function collectionPath(name: string, asked: Asked): Promise<Answer> {
  const handler = Object.hasOwn(PATHS, name) ? PATHS[name] : undefined;
  if (handler === undefined) return refusal(404, 'There is nothing here.', 'address');
  try {
    return await handler(asked);
  } catch (error) {
    if (error instanceof BadQuery) return refusal(400, error.message, error.where);
    throw error;
  }
}

const PATHS: Readonly<Record<string, (asked: Asked) => Promise<Answer>>> = {
  '': async (asked) => {
    const { rows, ...found } = await asked.collection.search(queryFrom(asked.query));
    const records = await toldTo(asked.person, asked.collection, rows);
    return json(200, { records, ...found } satisfies CollectionPage);
  },
  about: async ({ collection }) => json(200, await collection.facts()),
  records: async ({ person, query, collection }) => {
    const numbers = query.getAll('number');
    if (numbers.length > COLLECTION_PAGE) {
      throw new BadQuery('number', `At most ${COLLECTION_PAGE} records are asked for at once.`);
    }
    const rows = await collection.byNumbers(numbers.map((number) => number.slice(0, WORDS_LONG)));
    return json(200, await toldTo(person, collection, rows));
  },
  like: async ({ person, query, documents, collection, looks }) => {
    const by = oneOf(query, 'by', ['likeness', 'echo']) ?? 'likeness';
    const from = await lookedFrom(query, documents, collection);
    if (from === null) return refusal(404, 'There is no such thing with a picture to look from.', 'number');
    const found = await looks.find(from.looked, by);
    const records = await toldTo(
      person,
      collection,
      found.map(({ row }) => row),
    );
    return json(200, {
      of: from.row === null ? from.told : ((await toldTo(person, collection, [from.row]))[0] as CollectionRecord),
      found: records.map((record, at) => ({ record, words: found[at]?.words ?? '' })),
    } satisfies CollectionLike);
  },
  'pull-list': async ({ person, documents, collection }) => {
    if (!maySeeStorage(person.role)) {
      return refusal(403, 'Storage places are told to lead, curator, registrar and preparator alone.', 'pull-list');
    }
    return json(200, await pullList(documents, collection));
  },
  numbers: async ({ query, collection }) =>
    json(200, await collection.numbers(wholeIn(query, 'after', 0, 999_999_999) ?? 0)),
  imports: async ({ person, intake }) => {
    if (!mayBringIn(person.role))
      return refusal(403, 'Lead, curator and registrar see what was brought in.', 'imports');
    return json(200, await intake.list());
  },
};

/** What a seat is told of records: their storage places, and what is private, only where it may see them. */
export async function toldTo(
  { role }: Person,
  collection: Collection,
  rows: readonly CollectionRow[],
): Promise<CollectionRecord[]> {
  const storekeeper = maySeeStorage(role);
  const keys = rows.map(({ key }) => key);
  const further = await collection.further(keys, mayRead(role, 'private'));
  return rows.map(({ key, number, title, maker, date, medium, type, dimensions, credit, shown, picture, storage }) => ({
    ...{ number, title, maker, date, medium, type, dimensions, credit, shown, picture },
    ...(storekeeper ? { storage } : {}),
    ...further.get(key),
  }));
}

async function pullList(documents: ShowDocuments, collection: Collection): Promise<PullList> {
  const held = heldOnChecklist(documents);
  const yes = [...collectionWordsOf(documents)].filter(([, words]) => words.some(({ said }) => said === 'yes'));
  const rows = await collection.byNumbers([...new Set([...held.keys(), ...yes.map(([key]) => key)])]);
  const order = new Intl.Collator('en', { numeric: true });
  return rows
    .map((row) => {
      const { key: _key, n: _n, earliest: _earliest, latest: _latest, ...record } = row;
      return { record, why: held.has(row.key) ? ('on the checklist' as const) : ('yes' as const) };
    })
    .sort(
      (a, b) => order.compare(a.record.storage, b.record.storage) || order.compare(a.record.number, b.record.number),
    );
}

type From =
  | { readonly looked: LookedFrom; readonly row: CollectionRow; readonly told?: never }
  | { readonly looked: LookedFrom; readonly row: null; readonly told: CollectionRecord };

/** The thing looked from: of the collection by its number, of the checklist by its id. */
async function lookedFrom(
  query: URLSearchParams,
  documents: ShowDocuments,
  collection: Collection,
): Promise<From | null> {
  const object = documents.get('objects', query.get('object') ?? '');
  if (object !== undefined) {
    if (!object.picture) return null;
    const { number, title, maker = '', dateText = '', medium = '', type = '', dimensionsText = '' } = object;
    const looked = { id: 'asked', type, maker, date: dateText, dimensions: dimensionsText, picture: object.picture };
    const { creditLine: credit = '', picture } = object;
    const told = { number, title, maker, date: dateText, medium, type, dimensions: dimensionsText, credit, picture };
    return { looked, row: null, told: { ...told, shown: null } };
  }
  const number = query.get('number');
  if (number === null) throw new BadQuery('number', 'Say from which thing to look: its number.');
  const [row] = await collection.byNumbers([number.slice(0, WORDS_LONG)]);
  if (row === undefined || row.picture === null) return null;
  const { type, maker, date, dimensions, picture } = row;
  return { looked: { id: objectNumberKey(number), type, maker, date, dimensions, picture }, row };
}

function queryFrom(query: URLSearchParams): CollectionQuery {
  const words = query.get('words') ?? '';
  if (words.length > WORDS_LONG) throw new BadQuery('words', `At most ${WORDS_LONG} letters are searched for.`);
  const type = query.get('type') || undefined;
  const from = yearIn(query, 'from');
  const to = yearIn(query, 'to');
  const picture = oneOf(query, 'picture', ['with', 'without']);
  const notShown = query.get('shown') === 'never' ? 'ever' : yearIn(query, 'shown');
  return {
    words,
    ...(type === undefined ? {} : { type: type.slice(0, WORDS_LONG) }),
    ...(from === undefined ? {} : { from }),
    ...(to === undefined ? {} : { to }),
    ...(picture === undefined ? {} : { pictured: picture === 'with' }),
    ...(notShown === undefined ? {} : { notShown }),
    offset: wholeIn(query, 'offset', 0, OFFSET_AT_MOST) ?? 0,
    limit: wholeIn(query, 'limit', 1, COLLECTION_PAGE) ?? 60,
  };
}

function yearIn(query: URLSearchParams, name: string): number | undefined {
  return wholeIn(query, name, -9999, 9999);
}

function wholeIn(query: URLSearchParams, name: string, least: number, most: number): number | undefined {
  const text = query.get(name);
  if (text === null || text === '') return undefined;
  const value = /^-?\d{1,9}$/.test(text) ? Number(text) : Number.NaN;
  if (value >= least && value <= most) return value;
  throw new BadQuery(name, `“${text.slice(0, 40)}” is no whole number from ${least} to ${most}.`);
}

function oneOf<T extends string>(query: URLSearchParams, name: string, words: readonly T[]): T | undefined {
  const text = query.get(name);
  if (text === null || text === '') return undefined;
  const known = words.find((word) => word === text);
  if (known !== undefined) return known;
  throw new BadQuery(name, `“${text.slice(0, 40)}” is none of ${words.join(', ')}.`);
}
