/** The museum's whole collection in the server's database: found by words, by what is known, by number. */
import { objectNumberKey } from '@enfilade/records/object-number';
import {
  COLLECTION_COUNTED,
  type CollectionAbout,
  type CollectionHeld,
  type CollectionMore,
  type CollectionPage,
  type CollectionRecord,
} from '@enfilade/shared/collection';
import type { CollectionNumbers } from '@enfilade/shared/collection-in';
import { type RawBuilder, sql } from 'kysely';
import { yearsIn } from './collection-records.ts';
import type { CollectionRow } from './database.ts';
import type { Store } from './store.ts';

/** A record as it comes into the collection. */
export type CollectionIn = Omit<CollectionRow, 'n' | 'key' | 'earliest' | 'latest'>;

/** What to look for; all of it must hold. */
export interface CollectionQuery {
  /** As typed: every word must begin a word of the record. */
  readonly words: string;
  readonly type?: string;
  /** Years within which a thing may have been made. */
  readonly from?: number;
  readonly to?: number;
  readonly pictured?: boolean;
  /** Not shown before at all, or not since the end of that year. */
  readonly notShown?: 'ever' | number;
  readonly offset: number;
  readonly limit: number;
}

const WORDS_AT_MOST = 8;
/** Written, or asked for, at once. */
const AT_ONCE = 1000;
const NUMBERS_AT_ONCE = 4000;

/** Words as the index is asked for them: quoted, so that no sign in them means anything. Null where there is no word. */
export function matchOf(words: string): string | null {
  const found = words.normalize('NFC').match(/[\p{L}\p{N}\p{M}]+(?:[._/-][\p{L}\p{N}\p{M}]+)*/gu) ?? [];
  return found.length === 0
    ? null
    : found
        .slice(0, WORDS_AT_MOST)
        .map((word) => `"${word}"*`)
        .join(' ');
}

export class Collection {
  private readonly store: Store;
  private about: CollectionAbout | null = null;
  /** Rises when records come in. */
  version = 0;

  constructor(store: Store) {
    this.store = store;
  }

  /** Adds records; one whose number is there already is left as it is. Others are served between the parts. */
  async fill(records: readonly CollectionIn[]): Promise<void> {
    // Few date texts are many records'.
    const yearsOf = new Map<string, Pick<CollectionRow, 'earliest' | 'latest'>>();
    for (let at = 0; at < records.length; at += AT_ONCE) {
      const rows = records.slice(at, at + AT_ONCE).map((record) => {
        const years = yearsOf.get(record.date) ?? yearsIn(record.date);
        yearsOf.set(record.date, years);
        return { ...record, key: objectNumberKey(record.number), ...years };
      });
      await this.store.addToCollection(rows);
      await new Promise((later) => setImmediate(later));
    }
    this.changed();
  }

  /** Something of it is other than it was. */
  changed(): void {
    this.about = null;
    this.version += 1;
  }

  async facts(): Promise<CollectionAbout> {
    if (this.about !== null) return this.about;
    const { query } = this.store;
    const types = await query
      .selectFrom('collection')
      .select(['type', ({ fn }) => fn.countAll<number>().as('count')])
      .groupBy('type')
      .orderBy('count', 'desc')
      .orderBy('type')
      .execute();
    const one = await query
      .selectFrom('collection')
      .select([
        ({ fn }) => fn.countAll<number>().as('count'),
        ({ fn }) => fn.count<number>('picture').as('pictured'),
        ({ fn }) => fn.count<number>('shown').as('shown'),
      ])
      .executeTakeFirstOrThrow();
    this.about = { count: one.count, pictured: one.pictured, neverShown: one.count - one.shown, types };
    return this.about;
  }

  /**
   * One page of what is found. Few are told best match first, many in the order they were taken into the collection: to
   * weigh tens of thousands for the sake of a page would take longer than to read it.
   */
  async search(asked: CollectionQuery): Promise<Omit<CollectionPage, 'records'> & { rows: CollectionRow[] }> {
    const match = matchOf(asked.words);
    if (match === null && asked.words.trim() !== '') return { rows: [], found: 0, more: false };
    const from =
      match === null
        ? sql`collection c`
        : sql`collection_words cross join collection c on c.n = collection_words.rowid and collection_words match ${match}`;
    const where = conditions(asked);
    const counted = await sql<{ found: number }>`
      select count(*) as found from (select 1 from ${from} where ${where} limit ${COLLECTION_COUNTED + 1})
    `.execute(this.store.query);
    const found = counted.rows[0]?.found ?? 0;
    const more = found > COLLECTION_COUNTED;
    const order = match === null || more ? sql`c.n` : sql`bm25(collection_words, 4, 4, 1, 1, 1, 2), c.n`;
    const { rows } = await sql<CollectionRow>`
      select c.* from ${from} where ${where} order by ${order} limit ${asked.limit} offset ${asked.offset}
    `.execute(this.store.query);
    return { rows, found: Math.min(found, COLLECTION_COUNTED), more };
  }

  /** Records by their numbers, however these are written; in the order of the collection. */
  async byNumbers(numbers: readonly string[]): Promise<CollectionRow[]> {
    if (numbers.length === 0) return [];
    const keys = numbers.map(objectNumberKey);
    const rows: CollectionRow[] = [];
    for (let at = 0; at < keys.length; at += AT_ONCE) {
      rows.push(
        ...(await this.store.query
          .selectFrom('collection')
          .selectAll()
          .where('key', 'in', keys.slice(at, at + AT_ONCE))
          .orderBy('n')
          .execute()),
      );
    }
    return rows;
  }

  /** What else is known of records, by their keys; what is private of them only where it is asked for. */
  async further(
    keys: readonly string[],
    withHeld: boolean,
  ): Promise<ReadonlyMap<string, Pick<CollectionRecord, 'more' | 'held'>>> {
    const found = new Map<string, { more?: CollectionMore; held?: CollectionHeld }>();
    if (keys.length === 0) return found;
    const { query } = this.store;
    for (const { key, facts } of await query
      .selectFrom('collection_more')
      .select(['key', 'facts'])
      .where('key', 'in', keys)
      .where('facts', '<>', '{}')
      .execute()) {
      found.set(key, { more: JSON.parse(facts) as CollectionMore });
    }
    if (!withHeld) return found;
    for (const { key, facts } of await query
      .selectFrom('collection_held')
      .selectAll()
      .where('key', 'in', keys)
      .execute()) {
      found.set(key, { ...found.get(key), held: JSON.parse(facts) as CollectionHeld });
    }
    return found;
  }

  /** So many numbers at a time, in the order of the collection; `after`: the last that was told. */
  async numbers(after: number): Promise<CollectionNumbers> {
    const rows = await this.store.query
      .selectFrom('collection')
      .select(['n', 'number'])
      .where('n', '>', after)
      .orderBy('n')
      .limit(NUMBERS_AT_ONCE)
      .execute();
    const numbers = rows.map(({ number }) => number);
    return { numbers, next: rows.length < NUMBERS_AT_ONCE ? null : (rows.at(-1)?.n ?? null) };
  }

  /** Everything that has a picture. */
  pictured(): Promise<CollectionRow[]> {
    return this.store.query
      .selectFrom('collection')
      .selectAll()
      .where('picture', 'is not', null)
      .orderBy('n')
      .execute();
  }
}

function conditions({ type, from, to, pictured, notShown }: CollectionQuery): RawBuilder<unknown> {
  const all = [sql`1`];
  if (type !== undefined) all.push(sql`c.type = ${type}`);
  if (from !== undefined) all.push(sql`c.latest >= ${from}`);
  if (to !== undefined) all.push(sql`c.earliest <= ${to}`);
  if (pictured !== undefined) all.push(pictured ? sql`c.picture is not null` : sql`c.picture is null`);
  if (notShown === 'ever') all.push(sql`c.shown is null`);
  else if (notShown !== undefined)
    all.push(sql`(c.shown is null or (c.shown <> '' and c.shown < ${String(notShown + 1)}))`);
  return sql.join(all, sql` and `);
}
