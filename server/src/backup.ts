/**
 * A show as one file, and back. The file is an SQLite database: the store as of one moment, and beside its tables
 * `sqlar` (name, mode, mtime, sz, data), the open archive layout of SQLite's own shell, with every other file of the
 * data folder. The links as printed are secrets and are left out; they stay good, their hashes are in the store.
 */
import { mkdir, open, readdir, readFile, rename, rm, stat, writeFile } from 'node:fs/promises';
import { dirname, join, relative, sep } from 'node:path';
import { openPlain } from './database.ts';
import { holdFolder, LOCK_FILE } from './folder-lock.ts';
import { STORE_FILE } from './store.ts';

const FORMAT = '1';
/** What is not part of a show: secrets, the store itself (it is the file's tables), what can be made again. */
const LEFT_OUT = new Set([
  'invitations.json',
  'server.log',
  LOCK_FILE,
  join('images', 'incoming'),
  join('images', 'atlas'),
]);

function isLeftOut(path: string): boolean {
  return LEFT_OUT.has(path) || path.startsWith(STORE_FILE) || path.startsWith(LOCK_FILE) || path.endsWith('.part');
}

async function filesBelow(folder: string, at = ''): Promise<string[]> {
  const files: string[] = [];
  for (const entry of await readdir(join(folder, at), { withFileTypes: true })) {
    const path = join(at, entry.name);
    if (isLeftOut(path) || path.startsWith(BEFORE)) continue;
    if (entry.isDirectory()) files.push(...(await filesBelow(folder, path)));
    else if (entry.isFile()) files.push(path);
  }
  return files.sort();
}

/** Where restoring puts what was there before. */
const BEFORE = 'before-restore-';

async function exists(path: string): Promise<boolean> {
  return stat(path).then(
    () => true,
    () => false,
  );
}

function quoted(path: string): string {
  return `'${path.replaceAll("'", "''")}'`;
}

async function flushed(path: string): Promise<void> {
  const handle = await open(path, 'r+');
  await handle.sync();
  await handle.close();
}

export interface BackedUp {
  readonly files: number;
  readonly bytes: number;
}

/**
 * Writes the show in a data folder into one file, also while a server is using the folder.
 * @throws Error when there is no show in the folder, or a file of that name is there already.
 */
export async function backUp(dataDirectory: string, file: string): Promise<BackedUp> {
  const store = join(dataDirectory, STORE_FILE);
  if (!(await exists(store))) throw new Error(`there is no show in ${dataDirectory}`);
  if (await exists(file)) throw new Error(`${file} is there already; nothing was written over`);
  await mkdir(dirname(file), { recursive: true });
  const part = `${file}.part`;
  await rm(part, { force: true });
  try {
    const source = openPlain(store);
    // The store first: a picture's files are whole before its row is written, so every row's picture comes along.
    source.exec(`vacuum into ${quoted(part)}`);
    source.close();
    const copy = openPlain(part);
    copy.exec('create table sqlar (name text primary key, mode int, mtime int, sz int, data blob)');
    const paths = await filesBelow(dataDirectory);
    for (const path of paths) {
      const about = await stat(join(dataDirectory, path));
      const bytes = await readFile(join(dataDirectory, path));
      // Stored as it is: pictures do not pack. `sz` equal to the blob's length says so in this layout.
      copy.run(
        'insert into sqlar values (?, ?, ?, ?, ?)',
        path.split(sep).join('/'),
        0o100600,
        Math.floor(about.mtimeMs / 1000),
        bytes.length,
        bytes,
      );
    }
    copy.run('insert or replace into meta values (?, ?)', 'backup-format', FORMAT);
    copy.close();
    await flushed(part);
    await rename(part, file);
    return { files: paths.length, bytes: (await stat(file)).size };
  } finally {
    await rm(part, { force: true });
  }
}

export interface Restored {
  readonly files: number;
  readonly epoch: number;
  /** Where what was in the folder before has been put, or null when it was empty. */
  readonly before: string | null;
}

const EPOCH = "select value from meta where key = 'epoch'";

/** Epoch, and the seats taken back, of the show that is being replaced. */
function standingOf(store: string): { epoch: number; revoked: { id: unknown; revoked: unknown }[] } {
  const database = openPlain(store);
  try {
    return {
      epoch: Number(database.all(EPOCH)[0]?.value ?? 1),
      revoked: database
        .all('select id, revoked from seats where revoked is not null')
        .map(({ id, revoked }) => ({ id, revoked })),
    };
  } catch {
    // It may be just what is broken.
    return { epoch: 1, revoked: [] };
  } finally {
    database.close();
  }
}

/**
 * Brings a backed-up show into a data folder. What was there is put aside whole, not deleted. The epoch rises above any
 * that a page can hold, so that no page brings back what came after the copy; seats taken back meanwhile stay so.
 * @throws FolderInUse while a server uses the folder; Error when the file is no backup, or damaged.
 */
export async function restore(file: string, dataDirectory: string, now = new Date()): Promise<Restored> {
  if (!(await exists(file))) throw new Error(`there is no file ${file}`);
  await mkdir(dataDirectory, { recursive: true, mode: 0o700 });
  const letGo = holdFolder(dataDirectory);
  const incoming = join(dataDirectory, `${STORE_FILE}.part`);
  try {
    await rm(incoming, { force: true });
    const backup = openPlain(file);
    let names: string[];
    try {
      const format = backup.all("select value from meta where key = 'backup-format'")[0]?.value;
      const health = backup.all('pragma integrity_check')[0]?.integrity_check;
      if (format !== FORMAT || health !== 'ok') throw new Error('not whole');
      names = backup.all('select name from sqlar order by name').map(({ name }) => String(name));
      backup.exec(`vacuum into ${quoted(incoming)}`);
    } catch {
      backup.close();
      throw new Error(`${file} is no backup of a show, or is damaged; nothing was changed`);
    }
    const store = join(dataDirectory, STORE_FILE);
    const replaced = await exists(store);
    const standing = replaced ? standingOf(store) : { epoch: 0, revoked: [] };
    const own = openPlain(incoming);
    // Seconds since 1970 too: a copy restored twice, on two machines, must not give one epoch two meanings.
    const epoch = Math.max(
      standing.epoch + 1,
      Number(own.all(EPOCH)[0]?.value ?? 1) + 1,
      Math.floor(now.getTime() / 1000),
    );
    own.run('insert or replace into meta values (?, ?)', 'epoch', String(epoch));
    own.exec("delete from meta where key = 'backup-format'");
    own.exec('drop table sqlar');
    for (const { id, revoked } of standing.revoked) {
      own.run('update seats set revoked = ? where id = ? and revoked is null', revoked, id);
      own.run('delete from devices where seat = ?', id);
    }
    own.exec('vacuum');
    own.close();
    await flushed(incoming);

    // Files first, under names that no present file means otherwise by; then, in a moment, one store for the other.
    for (const name of names) {
      const path = join(dataDirectory, ...name.split('/'));
      if (relative(dataDirectory, path).startsWith('..')) throw new Error(`${file} names a file outside the folder`);
      const data = backup.all('select data from sqlar where name = ?', name)[0]?.data;
      await mkdir(dirname(path), { recursive: true });
      await writeFile(`${path}.part`, data instanceof Uint8Array ? data : new Uint8Array(), { mode: 0o600 });
      await rename(`${path}.part`, path);
    }
    backup.close();
    await rm(join(dataDirectory, 'images', 'atlas'), { recursive: true, force: true });
    const before = replaced ? join(dataDirectory, `${BEFORE}${now.toISOString().replace(/[:.]/g, '-')}`) : null;
    if (before !== null) {
      await mkdir(before);
      for (const ending of ['-wal', '-shm', '']) {
        if (await exists(store + ending)) await rename(store + ending, join(before, STORE_FILE + ending));
      }
    }
    await rename(incoming, store);
    return { files: names.length, epoch, before };
  } finally {
    await rm(incoming, { force: true });
    letGo();
  }
}
