/** A record of the collection as a whole, out of its tables and back into them; and joined with what a file says of it. */
import { dateFrom } from '@enfilade/records/dates';
import { objectNumberKey } from '@enfilade/records/object-number';
import type { CollectionHeld, CollectionMore } from '@enfilade/shared/collection';
import type { CollectionRowIn } from '@enfilade/shared/collection-in';
import type { Transaction } from 'kysely';
import type { CollectionRow, Tables } from './database.ts';
import type { Store } from './store.ts';

export interface WholeRecord {
  readonly row: Omit<CollectionRow, 'n'>;
  readonly more: CollectionMore;
  readonly held: CollectionHeld;
  /** The bringing-in that changed it last; empty: none. */
  readonly last: string;
}

const TEXTS = ['title', 'maker', 'date', 'medium', 'type', 'dimensions', 'credit', 'storage'] as const;

/** The record once a row has come in over what is known of it. */
export function joined(known: WholeRecord | undefined, coming: CollectionRowIn, last: string): WholeRecord {
  const texts = Object.fromEntries(TEXTS.map((name) => [name, coming[name] || known?.row[name] || ''])) as Record<
    (typeof TEXTS)[number],
    string
  >;
  const years =
    known !== undefined && known.row.date === texts.date
      ? { earliest: known.row.earliest, latest: known.row.latest }
      : yearsIn(texts.date);
  // Of a thing that is there, an empty cell takes no day away.
  const shown = coming.shown ?? (known === undefined ? (coming.shown === null ? null : '') : known.row.shown);
  const row = {
    key: objectNumberKey(coming.number),
    number: coming.number,
    ...texts,
    ...years,
    shown,
    picture: coming.picture ?? known?.row.picture ?? null,
  };
  return { row, more: { ...known?.more, ...coming.more }, held: { ...known?.held, ...coming.held }, last };
}

/** Whether two say the same, whoever said it. */
export function sameRecord(a: WholeRecord, b: WholeRecord): boolean {
  const text = ({ row, more, held }: WholeRecord): string => JSON.stringify([sorted(row), sorted(more), sorted(held)]);
  return text(a) === text(b);
}

function sorted(facts: object): [string, unknown][] {
  return Object.entries(facts).sort(([a], [b]) => (a < b ? -1 : 1));
}

export function yearsIn(date: string): Pick<CollectionRow, 'earliest' | 'latest'> {
  if (date === '') return { earliest: null, latest: null };
  const { earliest, latest } = dateFrom(date);
  return { earliest: earliest?.year ?? null, latest: latest?.year ?? null };
}

/** Records by their keys, within a transaction. */
export async function wholeRecords(
  transaction: Transaction<Tables>,
  keys: readonly string[],
): Promise<Map<string, WholeRecord>> {
  const rows = await transaction.selectFrom('collection').selectAll().where('key', 'in', keys).execute();
  const more = await transaction.selectFrom('collection_more').selectAll().where('key', 'in', keys).execute();
  const held = await transaction.selectFrom('collection_held').selectAll().where('key', 'in', keys).execute();
  const moreOf = new Map(more.map((one) => [one.key, one]));
  const heldOf = new Map(held.map((one) => [one.key, one.facts]));
  return new Map(
    rows.map(({ n: _, ...row }) => {
      const own = moreOf.get(row.key);
      return [
        row.key,
        {
          row,
          more: JSON.parse(own?.facts ?? '{}') as CollectionMore,
          held: JSON.parse(heldOf.get(row.key) ?? '{}') as CollectionHeld,
          last: own?.last ?? '',
        },
      ];
    }),
  );
}

/** Writes and removes whole records; to be called within a transaction. */
export class RecordWriter {
  private readonly upsert: (...row: readonly unknown[]) => void;
  private readonly upsertMore: (...row: readonly unknown[]) => void;
  private readonly upsertHeld: (...row: readonly unknown[]) => void;
  private readonly removals: readonly ((key: string) => void)[];
  private readonly removeHeld: (key: string) => void;

  constructor(store: Store) {
    const names =
      'key, number, title, maker, date, earliest, latest, medium, type, dimensions, credit, shown, picture, storage';
    const changed = names
      .split(', ')
      .slice(1)
      .map((name) => `${name} = excluded.${name}`);
    const marks = names.replaceAll(/\w+/g, '?');
    this.upsert = store.statement(
      `insert into collection (${names}) values (${marks}) on conflict (key) do update set ${changed.join(', ')}`,
    );
    this.upsertMore = store.statement(
      'insert into collection_more (key, facts, last) values (?, ?, ?) on conflict (key) do update set facts = excluded.facts, last = excluded.last',
    );
    this.upsertHeld = store.statement(
      'insert into collection_held (key, facts) values (?, ?) on conflict (key) do update set facts = excluded.facts',
    );
    this.removeHeld = store.statement('delete from collection_held where key = ?');
    this.removals = [
      store.statement('delete from collection where key = ?'),
      store.statement('delete from collection_more where key = ?'),
      this.removeHeld,
    ];
  }

  write({ row, more, held, last }: WholeRecord): void {
    const {
      key,
      number,
      title,
      maker,
      date,
      earliest,
      latest,
      medium,
      type,
      dimensions,
      credit,
      shown,
      picture,
      storage,
    } = row;
    this.upsert(
      ...[key, number, title, maker, date, earliest, latest],
      ...[medium, type, dimensions, credit, shown, picture, storage],
    );
    this.upsertMore(key, JSON.stringify(more), last);
    if (Object.keys(held).length > 0) this.upsertHeld(key, JSON.stringify(held));
    else this.removeHeld(key);
  }

  remove(key: string): void {
    for (const remove of this.removals) remove(key);
  }
}
