/** Every importer of a file that holds records, the surest first. */
import { csv } from './csv.ts';
import { iiif } from './iiif.ts';
import { HEAD_BYTES, type Imported, type Importer, type ImportOptions, NotImported } from './importer.ts';
import { lido } from './lido.ts';
import { ods } from './ods.ts';
import { xlsx } from './xlsx.ts';

const IMPORTERS: readonly Importer[] = [xlsx, ods, csv, iiif, lido];
/** The older workbook, and the wrapper that a locked one stands in. */
const COMPOUND = [0xd0, 0xcf, 0x11, 0xe0];

/** @throws NotImported with a sentence for the person. */
export async function importFile(file: Blob, fileName: string, options: ImportOptions): Promise<Imported> {
  if (file.size === 0) throw new NotImported('It is empty: 0 bytes.');
  const head = new Uint8Array(await file.slice(0, HEAD_BYTES).arrayBuffer());
  if (COMPOUND.every((byte, index) => head[index] === byte)) {
    throw new NotImported('It is an older XLS workbook, or one locked with a password; save it as XLSX without one.');
  }
  const importer = IMPORTERS.find(({ knows }) => knows(head, fileName));
  if (importer === undefined) {
    throw new NotImported('It is no CSV, XLSX, ODS, LIDO or IIIF file, whatever its name says.');
  }
  return importer.read(file, options);
}
