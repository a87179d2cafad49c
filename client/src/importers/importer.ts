/** What each importer is: it knows its files by their first bytes and reads one into a table; run in a worker. */
import type { ChecklistField } from '@enfilade/records/checklist-headings';
import type { ImportedTable } from '@enfilade/records/imported-table';

export interface SheetName {
  readonly name: string;
  readonly hidden: boolean;
}

export interface Imported {
  readonly table: ImportedTable;
  /** What it was read as: 'semicolons, UTF-8'; 'XLSX'. */
  readonly about: string;
  /** Of a spreadsheet: every sheet there is, and which was read. */
  readonly sheets: readonly SheetName[];
  readonly sheet: string | null;
  /** The table anew where a person has said which columns mean what; absent where that changes nothing of it. */
  readonly mended?: (mapping: readonly (ChecklistField | null)[]) => ImportedTable;
}

/** How far the reading is: a clause such as 'unpacking', and a share of 0 to 1, null where none can be told. */
export type TellProgress = (what: string, share: number | null) => void;

export interface ImportOptions {
  /** The sheet a person asked for; else the one that looks most like a checklist. */
  readonly sheet: string | null;
  readonly tell: TellProgress;
}

export interface Importer {
  /** `head`: the first bytes, at most HEAD_BYTES of them. */
  readonly knows: (head: Uint8Array, fileName: string) => boolean;
  /** @throws NotImported with a sentence for the person; whatever else is thrown is ours to mend. */
  readonly read: (file: Blob, options: ImportOptions) => Promise<Imported>;
}

export const HEAD_BYTES = 1024;

/** What is wrong with a file as a whole, as a sentence to be said after its name. */
export class NotImported extends Error {}

/** @throws NotImported where the file is empty or larger than `most` bytes. */
export async function bytesOf(file: Blob, most: number): Promise<Uint8Array<ArrayBuffer>> {
  if (file.size === 0) throw new NotImported('It is empty: 0 bytes.');
  if (file.size > most) {
    throw new NotImported(`It is larger than ${Math.round(most / 1e6)} MB. Bring it in by parts.`);
  }
  return new Uint8Array(await file.arrayBuffer());
}
