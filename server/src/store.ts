/** The show on disk: the log of every document, their snapshots, and what the server itself knows. */
import { mkdir } from 'node:fs/promises';
import { join } from 'node:path';
import { type DocumentName, isDocumentName } from '@enfilade/shared/seats';
import type { Kysely } from 'kysely';
import { type CollectionRow, type OpenDatabase, openDatabase, type Tables } from './database.ts';
import { holdFolder } from './folder-lock.ts';

export interface LogEntry {
  readonly document: DocumentName;
  /** A Yjs update, V1. */
  readonly bytes: Uint8Array;
}

/** Whose hand a client id of a document is from now on; null: nobody's again. */
export interface HeldClient {
  readonly document: DocumentName;
  readonly client: number;
  readonly person: string | null;
}

export interface Logged {
  readonly seq: number;
  readonly bytes: Uint8Array;
}

/** Everything a document is made of: its last snapshot (V2), and the updates (V1) that came after it. */
export interface StoredDocument {
  readonly snapshot: Logged | null;
  readonly updates: readonly Logged[];
}

export const STORE_FILE = 'store.sqlite';

export class Store {
  readonly query: Kysely<Tables>;
  private readonly database: OpenDatabase;
  private lastSeq: number;

  private readonly letGo: () => void;
  /** Written once and bound for each: most of what a commit of many small updates would cost is making its text. */
  private readonly insertUpdate: (document: DocumentName, seq: number, bytes: Uint8Array) => void;

  private readonly upsertDeed: (...row: readonly (string | number)[]) => void;

  private readonly insertCollected: (...row: readonly (string | number | null)[]) => void;

  private constructor(database: OpenDatabase, lastSeq: number, letGo: () => void) {
    this.database = database;
    this.query = database.query;
    this.lastSeq = lastSeq;
    this.letGo = letGo;
    this.insertUpdate = database.statement('insert into updates (document, seq, bytes) values (?, ?, ?)');
    this.upsertDeed = database.statement(
      'insert into deeds (n, at, person, name, role, changes, more) values (?, ?, ?, ?, ?, ?, ?) on conflict (n) do update set at = excluded.at, changes = excluded.changes',
    );
    this.insertCollected = database.statement(
      'insert into collection (key, number, title, maker, date, earliest, latest, medium, type, dimensions, credit, shown, picture, storage) values (?, ?, ?, ?, ?, ?, ?, ?, ?, ?, ?, ?, ?, ?) on conflict (key) do nothing',
    );
  }

  /**
   * Opens `store.sqlite` in the folder, making both where they are missing.
   * @throws FolderInUse when another server has the folder.
   */
  static async open(dataDirectory: string): Promise<Store> {
    await mkdir(dataDirectory, { recursive: true, mode: 0o700 });
    const letGo = holdFolder(dataDirectory);
    const database = openDatabase(join(dataDirectory, STORE_FILE));
    const last = async (table: 'updates' | 'snapshots'): Promise<number> => {
      const row = await database.query
        .selectFrom(table)
        .select(({ fn }) => fn.max('seq').as('seq'))
        .executeTakeFirst();
      return row?.seq ?? 0;
    };
    return new Store(database, Math.max(await last('updates'), await last('snapshots')), letGo);
  }

  /**
   * Appends all in one transaction, with whose the client ids in it are, and answers when it is on the disk, with the
   * sequence number of each.
   */
  async appendAll(entries: readonly LogEntry[], held: readonly HeldClient[] = []): Promise<number[]> {
    const first = this.lastSeq + 1;
    const rows = entries.map(({ document, bytes }, index) => ({ document, seq: first + index, bytes }));
    await this.query.transaction().execute(async (transaction) => {
      for (const { document, seq, bytes } of rows) this.insertUpdate(document, seq, bytes);
      for (const { document, client, person } of held) {
        if (person !== null) {
          await transaction
            .insertInto('client_ids')
            .values({ document, client, person })
            .onConflict((conflict) => conflict.doNothing())
            .execute();
        } else {
          await transaction
            .deleteFrom('client_ids')
            .where('document', '=', document)
            .where('client', '=', client)
            .execute();
        }
      }
    });
    this.lastSeq = first + rows.length - 1;
    return rows.map(({ seq }) => seq);
  }

  /** Writes all in one transaction, each over what stood under its number. */
  async writeDeeds(rows: readonly Tables['deeds'][]): Promise<void> {
    await this.query.transaction().execute(async () => {
      for (const { n, at, person, name, role, changes, more } of rows) {
        this.upsertDeed(n, at, person, name, role, changes, more);
      }
    });
  }

  /** Writes all in one transaction; a key that is there already keeps its record. */
  async addToCollection(rows: readonly Omit<CollectionRow, 'n'>[]): Promise<void> {
    await this.query.transaction().execute(async () => {
      for (const row of rows) {
        this.insertCollected(
          row.key,
          row.number,
          row.title,
          row.maker,
          row.date,
          row.earliest,
          row.latest,
          row.medium,
          row.type,
          row.dimensions,
          row.credit,
          row.shown,
          row.picture,
          row.storage,
        );
      }
    });
  }

  /** A statement that answers nothing, made once to be run often; within a transaction of `query` it is part of that. */
  statement(sql: string): ReturnType<OpenDatabase['statement']> {
    return this.database.statement(sql);
  }

  async load(document: DocumentName): Promise<StoredDocument> {
    const snapshot = await this.query
      .selectFrom('snapshots')
      .select(['seq', 'bytes'])
      .where('document', '=', document)
      .executeTakeFirst();
    const updates = await this.query
      .selectFrom('updates')
      .select(['seq', 'bytes'])
      .where('document', '=', document)
      .where('seq', '>', snapshot?.seq ?? 0)
      .orderBy('seq')
      .execute();
    return { snapshot: snapshot ?? null, updates };
  }

  /** Whose the client ids of a document are, oldest first as far as the table tells. */
  async heldClients(document: DocumentName): Promise<{ client: number; person: string }[]> {
    return await this.query
      .selectFrom('client_ids')
      .select(['client', 'person'])
      .where('document', '=', document)
      .execute();
  }

  /** Puts a snapshot that holds everything up to `seq` in the place of those updates. */
  async replaceBySnapshot(document: DocumentName, { seq, bytes }: Logged): Promise<void> {
    await this.query.transaction().execute(async (transaction) => {
      await transaction
        .insertInto('snapshots')
        .values({ document, seq, bytes })
        .onConflict((conflict) => conflict.column('document').doUpdateSet({ seq, bytes }))
        .execute();
      await transaction.deleteFrom('updates').where('document', '=', document).where('seq', '<=', seq).execute();
    });
  }

  /** Names of the documents of which anything is stored. */
  async documents(): Promise<DocumentName[]> {
    const logged = await this.query.selectFrom('updates').select('document').distinct().execute();
    const snapshots = await this.query.selectFrom('snapshots').select('document').execute();
    return [...new Set([...logged, ...snapshots].map(({ document }) => document))].filter(isDocumentName);
  }

  async meta(key: string): Promise<string | undefined> {
    const row = await this.query.selectFrom('meta').select('value').where('key', '=', key).executeTakeFirst();
    return row?.value;
  }

  async setMeta(key: string, value: string): Promise<void> {
    await this.query
      .insertInto('meta')
      .values({ key, value })
      .onConflict((conflict) => conflict.column('key').doUpdateSet({ value }))
      .execute();
  }

  /** Bounds the file to so many pages of 4,096 bytes, as a full disk would; tests fill it. SQLite's own bound: null. */
  limitPages(pages: number | null): void {
    this.database.exec(`pragma max_page_count = ${pages === null ? 1_073_741_823 : Math.max(1, Math.trunc(pages))}`);
  }

  async close(): Promise<void> {
    await this.query.destroy();
    this.letGo();
  }
}
