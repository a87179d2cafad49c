/**
 * What comes into the collection from files: rows in parts, each written in small transactions with a rest between them, so
 * that whoever edits meanwhile waits for one of them at most; and all of a bringing-in taken back.
 */
import { randomUUID } from 'node:crypto';
import { objectNumberKey } from '@enfilade/records/object-number';
import {
  COLLECTION_IMPORTS_KEPT,
  type CollectionBack,
  type CollectionImport,
  type CollectionRowIn,
  type CollectionTaken,
} from '@enfilade/shared/collection-in';
import type { Collection } from './collection.ts';
import { joined, RecordWriter, sameRecord, type WholeRecord, wholeRecords } from './collection-records.ts';
import type { Tables } from './database.ts';
import type { Store } from './store.ts';

/** Rows of one transaction. */
const TOGETHER = 200;
/** The longest rest after one, ms: what waits meanwhile is taken up in it. */
const REST_MS = 20;
/** Records taken back by one question. */
const BACK_AT_ONCE = 2000;

/** Why nothing is taken, as a sentence. */
export class IntakeRefused extends Error {
  readonly status: number;
  constructor(status: number, what: string) {
    super(what);
    this.status = status;
  }
}

export class CollectionIntake {
  private readonly store: Store;
  private readonly collection: Collection;
  private readonly recordsAtMost: number;
  private readonly writer: RecordWriter;
  private readonly insertBefore: (...row: readonly unknown[]) => void;
  private readonly dropBefore: (...row: readonly unknown[]) => void;
  /** What is being written, one after another whoever sends it. */
  private line: Promise<unknown> = Promise.resolve();
  private readonly busy = new Set<string>();

  constructor(store: Store, collection: Collection, recordsAtMost: number) {
    this.store = store;
    this.collection = collection;
    this.recordsAtMost = recordsAtMost;
    this.writer = new RecordWriter(store);
    this.insertBefore = store.statement(
      'insert or ignore into collection_before (import, key, before) values (?, ?, ?)',
    );
    this.dropBefore = store.statement('delete from collection_before where import = ? and key = ?');
  }

  async list(): Promise<CollectionImport[]> {
    const rows = await this.store.query.selectFrom('collection_imports').selectAll().orderBy('at', 'desc').execute();
    return rows.map(toldFrom);
  }

  /** Announces so many rows of a file. What the oldest of them found is no longer kept. */
  async begin(file: string, rows: number, name: string): Promise<CollectionImport> {
    const made = { id: randomUUID(), at: new Date().toISOString(), name, file, rows };
    const row = { ...made, added: 0, updated: 0, same: 0, back: null };
    await this.store.query.insertInto('collection_imports').values(row).execute();
    const old = (await this.list()).slice(COLLECTION_IMPORTS_KEPT).map(({ id }) => id);
    if (old.length > 0) {
      await this.store.query.deleteFrom('collection_imports').where('id', 'in', old).execute();
      await this.forget(old);
    }
    return toldFrom(row);
  }

  /** Takes one part. @throws IntakeRefused where none of it is taken. */
  take(id: string, rows: readonly CollectionRowIn[]): Promise<CollectionTaken> {
    return this.inLine(id, async () => {
      await this.standing(id);
      const refused: { row: number; what: string }[] = [];
      const counts = { added: 0, updated: 0, same: 0 };
      let { count } = await this.store.query
        .selectFrom('collection')
        .select(({ fn }) => fn.countAll<number>().as('count'))
        .executeTakeFirstOrThrow();
      await this.inBatches(rows, async (batch, from) => {
        const done = await this.takeBatch(id, batch, this.recordsAtMost - count);
        count += done.added;
        for (const name of ['added', 'updated', 'same'] as const) counts[name] += done[name];
        refused.push(...done.refused.map(({ row, what }) => ({ row: from + row, what })));
      });
      return { ...counts, refused };
    });
  }

  /** Takes back some of what a bringing-in changed, as long as nothing else has changed it since. */
  takeBack(id: string): Promise<CollectionBack> {
    return this.inLine(id, async () => {
      const { query } = this.store;
      const known = await query.selectFrom('collection_imports').select('back').where('id', '=', id).executeTakeFirst();
      if (known === undefined) throw new IntakeRefused(404, GONE);
      if (known.back === null) {
        const back = new Date().toISOString();
        await query.updateTable('collection_imports').set({ back }).where('id', '=', id).execute();
      }
      const befores = await query
        .selectFrom('collection_before')
        .selectAll()
        .where('import', '=', id)
        .limit(BACK_AT_ONCE)
        .execute();
      let back = 0;
      await this.inBatches(befores, async (batch) => {
        back += await this.backBatch(id, batch);
      });
      const { left } = await query
        .selectFrom('collection_before')
        .select(({ fn }) => fn.countAll<number>().as('left'))
        .where('import', '=', id)
        .executeTakeFirstOrThrow();
      return { back, stay: befores.length - back, left };
    });
  }

  /** One photograph to one record, whatever brought it in: it stays when that is taken back. False: no such record. */
  photograph(number: string, picture: string): Promise<boolean> {
    return this.inLine(randomUUID(), async () => {
      const found = await this.store.query.transaction().execute(async (transaction) => {
        const key = objectNumberKey(number);
        const known = (await wholeRecords(transaction, [key])).get(key);
        if (known !== undefined) this.writer.write({ ...known, row: { ...known.row, picture }, last: '' });
        return known !== undefined;
      });
      this.collection.changed();
      return found;
    });
  }

  /** Some at a time: what the largest found is as long as the collection. */
  private async forget(imports: readonly string[]): Promise<void> {
    const { query } = this.store;
    for (;;) {
      const some = query
        .selectFrom('collection_before')
        .select('key')
        .where('import', 'in', imports)
        .limit(BACK_AT_ONCE);
      const { numDeletedRows } = await query
        .deleteFrom('collection_before')
        .where('import', 'in', imports)
        .where('key', 'in', some)
        .executeTakeFirst();
      if (numDeletedRows === 0n) return;
      await new Promise((later) => setImmediate(later));
    }
  }

  private async standing(id: string): Promise<void> {
    const { query } = this.store;
    const known = await query.selectFrom('collection_imports').select('back').where('id', '=', id).executeTakeFirst();
    if (known === undefined) throw new IntakeRefused(404, GONE);
    if (known.back !== null) throw new IntakeRefused(409, 'This was taken back; nothing more comes in with it.');
  }

  private takeBatch(id: string, rows: readonly CollectionRowIn[], room: number): Promise<CollectionTaken> {
    return this.store.query.transaction().execute(async (transaction) => {
      const known = await wholeRecords(
        transaction,
        rows.map(({ number }) => objectNumberKey(number)),
      );
      const counts = { added: 0, updated: 0, same: 0 };
      const refused: { row: number; what: string }[] = [];
      for (const [row, coming] of rows.entries()) {
        const key = objectNumberKey(coming.number);
        const before = known.get(key);
        if (before === undefined && coming.known) {
          refused.push({ row, what: `No record of the collection has the number ${coming.number}.` });
          continue;
        }
        if (before === undefined && counts.added >= room) {
          const what = `The collection is full: it holds ${this.recordsAtMost.toLocaleString('en-GB')} records.`;
          refused.push({ row, what });
          continue;
        }
        const after = joined(before, coming.known && before ? { ...coming, number: before.row.number } : coming, id);
        if (before !== undefined && sameRecord(before, after)) {
          counts.same += 1;
          continue;
        }
        this.insertBefore(id, key, before === undefined ? null : JSON.stringify(before));
        this.writer.write(after);
        known.set(key, after);
        counts[before === undefined ? 'added' : 'updated'] += 1;
      }
      await transaction
        .updateTable('collection_imports')
        .set(({ eb }) => ({
          added: eb('added', '+', counts.added),
          updated: eb('updated', '+', counts.updated),
          same: eb('same', '+', counts.same),
        }))
        .where('id', '=', id)
        .execute();
      return { ...counts, refused };
    });
  }

  private backBatch(id: string, befores: readonly Tables['collection_before'][]): Promise<number> {
    return this.store.query.transaction().execute(async (transaction) => {
      const now = await wholeRecords(
        transaction,
        befores.map(({ key }) => key),
      );
      let back = 0;
      for (const { key, before } of befores) {
        this.dropBefore(id, key);
        if (now.get(key)?.last !== id) continue;
        if (before === null) this.writer.remove(key);
        else this.writer.write(JSON.parse(before) as WholeRecord);
        back += 1;
      }
      return back;
    });
  }

  private async inBatches<T>(
    all: readonly T[],
    write: (batch: readonly T[], from: number) => Promise<void>,
  ): Promise<void> {
    try {
      for (let from = 0; from < all.length; from += TOGETHER) {
        const began = performance.now();
        await write(all.slice(from, from + TOGETHER), from);
        await new Promise((later) => setTimeout(later, Math.min(REST_MS, performance.now() - began)));
      }
    } finally {
      this.collection.changed();
    }
  }

  /** One after another; a second part of the same while one waits is refused. */
  private async inLine<T>(what: string, work: () => Promise<T>): Promise<T> {
    if (this.busy.has(what)) {
      throw new IntakeRefused(429, 'A part of this is still being written; send the next when it is answered.');
    }
    this.busy.add(what);
    const turn = this.line.then(work, work);
    this.line = turn.catch(() => {});
    try {
      return await turn;
    } finally {
      this.busy.delete(what);
    }
  }
}

const GONE = 'This bringing-in is not known here, or is too long ago to be taken back.';

function toldFrom({ name, ...row }: Tables['collection_imports']): CollectionImport {
  return { ...row, by: name, mayGoBack: row.back === null };
}
