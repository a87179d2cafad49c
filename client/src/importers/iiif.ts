/** A IIIF manifest (Presentation 3 and 2.1) from a file. */
import { iiifTableFrom } from '@enfilade/records/iiif-manifest';
import type { ImportedTable } from '@enfilade/records/imported-table';
import { bytesOf, type Imported, type Importer, NotImported } from './importer.ts';

/** The server takes no larger one either. */
const MOST_BYTES = 10_000_000;

export const iiif: Importer = {
  knows: (head, fileName) => /\.(json|jsonld)$/i.test(fileName) || head.find((byte) => byte > 0x20) === 0x7b,
  read: async (file, { tell }) => {
    tell('reading', null);
    const text = new TextDecoder().decode(await bytesOf(file, MOST_BYTES));
    let json: unknown;
    try {
      json = JSON.parse(text);
    } catch {
      throw new NotImported('It is no JSON that can be read, so no IIIF manifest.');
    }
    return importedManifest(iiifTableFrom(json));
  },
};

/** @throws NotImported where it is no manifest. */
export function importedManifest(table: ImportedTable): Imported {
  const [first] = table.issues;
  if (table.cells.length < 2) throw new NotImported(first?.what ?? 'This is no IIIF manifest.');
  return { table, about: 'IIIF manifest', sheets: [], sheet: null };
}
