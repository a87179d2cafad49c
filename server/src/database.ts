/**
 * The one door to SQLite. libsql ends the whole process on a boolean parameter or on a bare Buffer, cuts a text at its
 * first NUL when reading, and hands blobs back as ArrayBuffer: everything is coerced here, both ways.
 */
import { Kysely, SqliteDialect } from 'kysely';
import Libsql from 'libsql';

/** The show's meta facts, its log, its people and its pictures. Times are ISO 8601; hashes are hex. */
export interface Tables {
  meta: { key: string; value: string };
  /** `bytes` is a Yjs update, V1, as it was received. `seq` rises over all documents. */
  updates: { document: string; seq: number; bytes: Uint8Array };
  /** `bytes` is the whole document as one Yjs update, V2: everything of that document up to `seq`. */
  snapshots: { document: string; seq: number; bytes: Uint8Array };
  people: { id: string; name: string; role: string };
  /** `invitation`: SHA-256 of the invitation's token. */
  seats: { id: string; person: string; invitation: string; revoked: string | null };
  /** What a seat was given on: its end (null: none), since when, and the name of whoever gave it. */
  terms: { seat: string; until: string | null; since: string; giver: string };
  /** Whose hand a Yjs client id of a document is. */
  client_ids: { document: string; client: number; person: string };
  /** One device that exchanged the invitation; `hash`: SHA-256 of its cookie. */
  devices: { hash: string; seat: string; since: string };
  /** One person's change each; `changes`: JSON of DeedChange[]. */
  deeds: { n: number; at: string; person: string; name: string; role: string; changes: string; more: number };
  /** `bytes`: gzip of the canonical JSON whose SHA-256 is the digest. */
  kept: { digest: string; bytes: Uint8Array };
  /** `facts`: JSON of what was derived, by `engine`. `cell`: its running number in the atlas. */
  images: { sha256: string; cell: number; engine: string; facts: string };
  collection: CollectionRow;
  /** What else is known of a record; `facts`: JSON of CollectionMore. `last`: the bringing-in that changed it last. */
  collection_more: { key: string; facts: string; last: string };
  /** What of a record is for those alone who read `private`; `facts`: JSON of CollectionHeld. */
  collection_held: { key: string; facts: string };
  /** One bringing-in; `back`: since when it is taken back. */
  collection_imports: {
    id: string;
    at: string;
    name: string;
    file: string;
    rows: number;
    added: number;
    updated: number;
    same: number;
    back: string | null;
  };
  /** What a bringing-in found under a key: JSON of the whole record, null where there was none. */
  collection_before: { import: string; key: string; before: string | null };
}

/** A record of the museum's whole collection. Storage places are for few and are in no index of words. */
export interface CollectionRow {
  n: number;
  /** The number as it is compared, whatever stands between its groups. */
  key: string;
  number: string;
  title: string;
  maker: string;
  date: string;
  /** Years the date text may mean, negative before our era; null where it says none. */
  earliest: number | null;
  latest: number | null;
  medium: string;
  type: string;
  dimensions: string;
  credit: string;
  /** ISO date it was last shown; null: never; empty: not known. */
  shown: string | null;
  /** SHA-256 of its picture. */
  picture: string | null;
  storage: string;
}

const TABLES = [
  'create table if not exists meta (key text primary key, value text not null) without rowid',
  'create table if not exists updates (seq integer primary key, document text not null, bytes blob not null)',
  'create index if not exists updates_by_document on updates (document, seq)',
  'create table if not exists snapshots (document text primary key, seq integer not null, bytes blob not null)',
  'create table if not exists people (id text primary key, name text not null, role text not null) without rowid',
  'create table if not exists seats (id text primary key, person text not null, invitation text not null unique, revoked text) without rowid',
  'create table if not exists terms (seat text primary key, until text, since text not null, giver text not null) without rowid',
  'create table if not exists client_ids (document text not null, client integer not null, person text not null, primary key (document, client)) without rowid',
  'create table if not exists devices (hash text primary key, seat text not null, since text not null) without rowid',
  'create table if not exists deeds (n integer primary key, at text not null, person text not null, name text not null, role text not null, changes text not null, more integer not null)',
  'create index if not exists deeds_by_time on deeds (at)',
  'create table if not exists kept (digest text primary key, bytes blob not null) without rowid',
  'create table if not exists images (sha256 text primary key, cell integer not null unique, engine text not null, facts text not null) without rowid',
  'create table if not exists collection (n integer primary key, key text not null unique, number text not null, title text not null, maker text not null, date text not null, earliest integer, latest integer, medium text not null, type text not null, dimensions text not null, credit text not null, shown text, picture text, storage text not null)',
  'create index if not exists collection_by_facts on collection (type, shown, earliest, latest, picture)',
  'create index if not exists collection_pictured on collection (n) where picture is not null',
  `create virtual table if not exists collection_words using fts5 (number, title, maker, date, medium, type, content='collection', content_rowid='n', tokenize="unicode61 remove_diacritics 2", prefix='1 2 3')`,
  'create trigger if not exists collection_in after insert on collection begin insert into collection_words (rowid, number, title, maker, date, medium, type) values (new.n, new.number, new.title, new.maker, new.date, new.medium, new.type); end',
  `create trigger if not exists collection_out after delete on collection begin insert into collection_words (collection_words, rowid, number, title, maker, date, medium, type) values ('delete', old.n, old.number, old.title, old.maker, old.date, old.medium, old.type); end`,
  `create trigger if not exists collection_anew after update of number, title, maker, date, medium, type on collection begin insert into collection_words (collection_words, rowid, number, title, maker, date, medium, type) values ('delete', old.n, old.number, old.title, old.maker, old.date, old.medium, old.type); insert into collection_words (rowid, number, title, maker, date, medium, type) values (new.n, new.number, new.title, new.maker, new.date, new.medium, new.type); end`,
  'create table if not exists collection_more (key text primary key, facts text not null, last text not null) without rowid',
  'create table if not exists collection_held (key text primary key, facts text not null) without rowid',
  'create table if not exists collection_imports (id text primary key, at text not null, name text not null, file text not null, rows integer not null, added integer not null, updated integer not null, same integer not null, back text)',
  'create table if not exists collection_before (import text not null, key text not null, before text, primary key (import, key)) without rowid',
];

export type Parameter = string | number | bigint | null | Uint8Array;

/** What may be bound, from whatever a query holds. @throws RangeError for what has no place in a column. */
export function toParameter(value: unknown): Parameter {
  if (value === null || value === undefined) return null;
  if (typeof value === 'boolean') return value ? 1 : 0;
  if (typeof value === 'string') return value.replaceAll('\0', '\uFFFD');
  if (typeof value === 'number') {
    if (!Number.isFinite(value)) throw new RangeError(`a column takes finite numbers, not ${value}`);
    // Numbers are bound as floating point; a whole one is kept whole.
    return Number.isSafeInteger(value) ? BigInt(value) : value;
  }
  if (typeof value === 'bigint') {
    if (value !== BigInt.asIntN(64, value)) throw new RangeError(`a column takes 64-bit integers, not ${value}`);
    return value;
  }
  if (value instanceof Date) return value.toISOString();
  if (value instanceof ArrayBuffer) return new Uint8Array(value);
  if (ArrayBuffer.isView(value)) return new Uint8Array(value.buffer, value.byteOffset, value.byteLength);
  throw new RangeError(`a column takes texts, numbers and bytes, not ${Object.prototype.toString.call(value)}`);
}

function fromRow(row: unknown): unknown {
  const fields = row as Record<string, unknown>;
  for (const [name, value] of Object.entries(fields)) {
    if (value instanceof ArrayBuffer) fields[name] = new Uint8Array(value);
  }
  return fields;
}

/** A database file as it is, whatever its tables; parameters and rows coerced as everywhere. */
export interface PlainDatabase {
  exec(sql: string): void;
  run(sql: string, ...parameters: readonly unknown[]): void;
  all(sql: string, ...parameters: readonly unknown[]): Readonly<Record<string, unknown>>[];
  close(): void;
}

export function openPlain(path: string): PlainDatabase {
  const database = new Libsql(path, { timeout: BUSY_MS });
  return {
    exec: (sql) => {
      database.exec(sql);
    },
    run: (sql, ...parameters) => {
      database.prepare(sql).run(parameters.map(toParameter));
    },
    all: (sql, ...parameters) =>
      database
        .prepare(sql)
        .all(parameters.map(toParameter))
        .map((row) => fromRow(row) as Record<string, unknown>),
    close: () => {
      database.close();
    },
  };
}

/** How long a file that another process is writing is waited for. */
const BUSY_MS = 5000;

export interface OpenDatabase {
  readonly query: Kysely<Tables>;
  /** Statements without parameters. */
  exec(sql: string): void;
  /** A statement that answers nothing, made once to be run often; within a transaction of `query` it is part of that. */
  statement(sql: string): (...parameters: readonly unknown[]) => void;
}

/** Opens the file, makes what tables are missing; every commit is on the disk before it is answered. */
export function openDatabase(path: string): OpenDatabase {
  const database = new Libsql(path, { timeout: BUSY_MS });
  database.exec('pragma journal_mode = wal');
  database.exec('pragma synchronous = full');
  for (const table of TABLES) database.exec(table);
  const coerced = {
    prepare(sql: string) {
      const statement = database.prepare(sql);
      const bound = (parameters: readonly unknown[]) => parameters.map(toParameter);
      return {
        reader: statement.reader,
        all: (parameters: readonly unknown[]) => statement.all(bound(parameters)).map(fromRow),
        run: (parameters: readonly unknown[]) => {
          try {
            return statement.run(bound(parameters));
          } catch (error) {
            // A full disk has rolled back already; what is to be told is that, not that there is nothing to roll back.
            if (sql === 'rollback' && !database.inTransaction) return { changes: 0, lastInsertRowid: 0 };
            throw error;
          }
        },
        *iterate(parameters: readonly unknown[]) {
          for (const row of statement.iterate(bound(parameters))) yield fromRow(row);
        },
      };
    },
    close: () => database.close(),
  };
  return {
    query: new Kysely<Tables>({ dialect: new SqliteDialect({ database: coerced }) }),
    exec: (sql) => {
      database.exec(sql);
    },
    statement: (sql) => {
      const made = database.prepare(sql);
      return (...parameters) => {
        made.run(parameters.map(toParameter));
      };
    },
  };
}
