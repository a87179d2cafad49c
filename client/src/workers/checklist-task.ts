/** What the page asks of the worker that reads a checklist, and what it answers. */
import type { ChecklistField } from '@enfilade/records/checklist-headings';
import type { ChecklistReading, SourceCell } from '@enfilade/shared/checklist-reading';
import type { SheetName } from '../importers/importer.ts';

export type ChecklistQuestion =
  | { readonly kind: 'read'; readonly file: File; readonly sheet: string | null }
  | { readonly kind: 'mend'; readonly mapping: readonly (ChecklistField | null)[] }
  | { readonly kind: 'source'; readonly line: number };

export interface ReadAnswer {
  readonly kind: 'read';
  readonly reading: ChecklistReading;
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

export type ChecklistAnswer =
  | ReadAnswer
  | { readonly kind: 'failed'; readonly what: string }
  | { readonly kind: 'progress'; readonly what: string; readonly share: number | null }
  | SourceAnswer;
