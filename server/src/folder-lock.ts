/**
 * One server to a data folder. The lock is SQLite's own on a file beside the store: the operating system lets go of it
 * when its owner ends, however it ends, so nothing is left behind by kill -9 and no process number can be mistaken.
 */
import { join } from 'node:path';
import Libsql from 'libsql';

export const LOCK_FILE = 'in-use.lock';

export class FolderInUse extends Error {}

/**
 * Takes the folder; the answer lets go of it.
 * @throws FolderInUse when another server has it.
 */
export function holdFolder(dataDirectory: string): () => void {
  const lock = new Libsql(join(dataDirectory, LOCK_FILE), { timeout: 0 });
  try {
    lock.exec('begin exclusive');
  } catch (error) {
    lock.close();
    if ((error as { code?: unknown }).code !== 'SQLITE_BUSY') throw error;
    throw new FolderInUse(
      `another Enfilade server is using ${dataDirectory}; stop it, or give another folder with --data`,
    );
  }
  return () => lock.close();
}
