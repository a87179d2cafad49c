/** What lies in a zip, and its bytes, within bounds that are held to before anything is unpacked. */
import { unzipSync } from 'fflate';
import { NotImported } from './importer.ts';

export interface ZipEntry {
  readonly name: string;
  /** As packed, and as the zip says it unpacks to. */
  readonly packedBytes: number;
  readonly bytes: number;
}

/** @throws NotImported where it is no zip or more entries lie in it than `most`. */
export function zipEntries(zip: Uint8Array, most: number): ZipEntry[] {
  const entries: ZipEntry[] = [];
  unpack(zip, ({ name, size, originalSize }) => {
    entries.push({ name, packedBytes: size, bytes: originalSize });
    return false;
  });
  if (entries.length > most) {
    throw new NotImported(`${entries.length} files are packed in it; at most ${most} are taken. Bring it in by parts.`);
  }
  return entries;
}

/**
 * The bytes of those named. An entry unpacks to no more than the zip said beforehand, whatever its bytes hold: the room for
 * it is made once and never grows.
 */
export function entriesOf(zip: Uint8Array, wanted: ReadonlySet<string>): ReadonlyMap<string, Uint8Array<ArrayBuffer>> {
  return new Map(Object.entries(unpack(zip, ({ name }) => wanted.has(name))));
}

function unpack(
  zip: Uint8Array,
  filter: (entry: { name: string; size: number; originalSize: number }) => boolean,
): Record<string, Uint8Array<ArrayBuffer>> {
  try {
    return unzipSync(zip, { filter }) as Record<string, Uint8Array<ArrayBuffer>>;
  } catch {
    throw new NotImported('It is a zip that cannot be read to its end: it is damaged or incomplete.');
  }
}

/** Why an entry's name cannot be taken, as a clause; null where it can. Nothing is ever written under such a name. */
export function climbs(name: string): boolean {
  return /(^|[/\\])\.\.([/\\]|$)/.test(name) || /^([/\\]|[a-z]:)/i.test(name) || name.includes('\0');
}
