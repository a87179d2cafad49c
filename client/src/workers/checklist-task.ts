/** What the page asks of the worker that reads a checklist, and what it answers. */
import type { ChecklistField } from '@enfilade/records/checklist-headings';
import type { ChecklistReading, ChecklistRow, RowAnswer, SourceCell } from '@enfilade/shared/checklist-reading';
import type { CollectionReading } from '@enfilade/shared/collection-reading';
import type { SheetName } from '../importers/importer.ts';
import type { NamedPicture } from './match-in-collection.ts';
import type { Collected } from './send-to-collection.ts';

/** What goes to the collection beside the rows that were read. */
export interface ToCollection {
  /** The seat's path. */
  readonly base: string;
  readonly fileName: string;
  /** With what was left when it stopped, or from the beginning. */
  readonly goOn: boolean;
  readonly answers: ReadonlyMap<string, RowAnswer>;
  /** SHA-256 by row of the table. */
  readonly picturesByLine: ReadonlyMap<number, string>;
  /** SHA-256 by number; a number that no row has is of the collection. */
  readonly picturesByNumber: ReadonlyMap<string, string>;
}

export type ChecklistQuestion =
  | { readonly kind: 'read'; readonly file: File; readonly sheet: string | null; readonly museum: string }
  | { readonly kind: 'mend'; readonly mapping: readonly (ChecklistField | null)[] }
  | { readonly kind: 'source'; readonly line: number }
  /** Rows from one on, beyond those that the reading holds. */
  | { readonly kind: 'window'; readonly from: number }
  | { readonly kind: 'match'; readonly base: string; readonly pictures: readonly NamedPicture[] }
  | ({ readonly kind: 'collect' } & ToCollection)
  | { readonly kind: 'stop collecting' };

export interface ReadAnswer {
  readonly kind: 'read';
  /** Of a long file the first rows: as many as a checklist holds. */
  readonly reading: ChecklistReading;
  /** The whole of it, as it goes into the collection. */
  readonly collection: CollectionReading;
  /** What it was read as: 'semicolons, UTF-8'; 'XLSX'. */
  readonly about: string;
  readonly sheets: readonly SheetName[];
  readonly sheet: string | null;
}

export interface SourceAnswer {
  readonly kind: 'source';
  readonly line: number;
  readonly cells: readonly SourceCell[];
}

export interface WindowAnswer {
  readonly kind: 'window';
  readonly from: number;
  readonly rows: readonly ChecklistRow[];
}

export interface MatchAnswer {
  readonly kind: 'matched';
  /** Numbers by picture; null where the collection could not be asked. */
  readonly numbers: ReadonlyMap<string, string> | null;
}

export type ChecklistAnswer =
  | ReadAnswer
  | { readonly kind: 'failed'; readonly what: string }
  | { readonly kind: 'progress'; readonly what: string; readonly share: number | null }
  | SourceAnswer
  | WindowAnswer
  | MatchAnswer
  | { readonly kind: 'collected'; readonly state: Collected };

/** Rows told beyond those of the reading, at once. */
export const WINDOW_ROWS = 400;
