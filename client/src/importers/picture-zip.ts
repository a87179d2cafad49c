/** A zip of pictures, perhaps with their checklist beside them: unpacked a few at a time, and nothing under a name of its own. */
import { bytesOf, NotImported, type TellProgress } from './importer.ts';
import { climbs, entriesOf, type ZipEntry, zipEntries } from './zip-entries.ts';

/** Own rules: what a page can hold at once, and what a photograph never is. */
export const ZIP_AT_MOST = {
  packedBytes: 1_500_000_000,
  entries: 10_000,
  entryBytes: 120 << 20,
  bytes: 3_000_000_000,
  /** Unpacked to packed, of entries over a megabyte; a blank scan reaches about 40. */
  ratio: 100,
} as const;
const AT_ONCE_BYTES = 64 << 20;
const TAKEN = /\.(jpe?g|png|webp|tiff?|csv|tsv|xlsx|ods)$/i;
/** What systems pack beside the files that were meant. */
const ASIDE = /(^|\/)(__MACOSX\/|\.|Thumbs\.db$|desktop\.ini$)/i;

export interface ZipLeft {
  readonly name: string;
  readonly what: string;
}

/** Hands over each file as it comes out, its folders left off; answers what stayed in the zip, and why. @throws NotImported */
export async function unpackPictures(
  file: Blob,
  {
    tell,
    give,
  }: { readonly tell: TellProgress; readonly give: (name: string, bytes: Uint8Array<ArrayBuffer>) => void },
): Promise<readonly ZipLeft[]> {
  tell('opening', null);
  const zip = await bytesOf(file, ZIP_AT_MOST.packedBytes);
  const left: ZipLeft[] = [];
  const taken: ZipEntry[] = [];
  let bytes = 0;
  for (const entry of zipEntries(zip, ZIP_AT_MOST.entries)) {
    const { name } = entry;
    if (!climbs(name) && (name.endsWith('/') || ASIDE.test(name))) continue;
    const fault = faultOf(entry);
    if (fault !== null) left.push({ name, what: fault });
    else {
      taken.push(entry);
      bytes += entry.bytes;
    }
  }
  if (bytes > ZIP_AT_MOST.bytes) {
    throw new NotImported(
      `It unpacks to ${(bytes / 1e9).toFixed(1)} GB; at most ${ZIP_AT_MOST.bytes / 1e9} are taken at once. Bring it in by parts.`,
    );
  }
  let done = 0;
  for (const batch of batchesOf(taken)) {
    const found = entriesOf(zip, new Set(batch.map(({ name }) => name)));
    for (const { name } of batch) {
      const own = found.get(name);
      if (own !== undefined) give(baseOf(name), own);
    }
    done += batch.length;
    tell(`unpacking, ${done} of ${taken.length}`, done / taken.length);
  }
  return left;
}

function faultOf({ name, packedBytes, bytes }: ZipEntry): string | null {
  if (climbs(name)) return 'its path climbs out of the folder it is packed in; it was not unpacked.';
  if (!TAKEN.test(name)) return 'is neither a picture nor a checklist; it stays in the zip.';
  if (bytes > ZIP_AT_MOST.entryBytes)
    return `unpacks to more than ${ZIP_AT_MOST.entryBytes >> 20} MB; it was not unpacked.`;
  if (bytes > 1 << 20 && bytes / Math.max(1, packedBytes) > ZIP_AT_MOST.ratio) {
    return `unpacks to ${Math.round(bytes / Math.max(1, packedBytes))} times its size, as no photograph does; it was not unpacked.`;
  }
  return null;
}

function batchesOf(entries: readonly ZipEntry[]): ZipEntry[][] {
  const batches: ZipEntry[][] = [];
  let room = 0;
  for (const entry of entries) {
    if (entry.bytes > room || batches.length === 0) {
      batches.push([]);
      room = AT_ONCE_BYTES;
    }
    batches.at(-1)?.push(entry);
    room -= entry.bytes;
  }
  return batches;
}

function baseOf(name: string): string {
  return name.split(/[/\\]/).at(-1) ?? name;
}
