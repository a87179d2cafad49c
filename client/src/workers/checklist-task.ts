/** What the page asks of the worker that reads a checklist, and what it answers. */
import type { ChecklistField } from '@enfilade/records/checklist-headings';
import type { ChecklistReading } from '@enfilade/shared/checklist-reading';

export type ChecklistQuestion =
  | { readonly kind: 'read'; readonly file: File }
  | { readonly kind: 'mend'; readonly mapping: readonly (ChecklistField | null)[] };

export type ChecklistAnswer =
  | {
      readonly kind: 'read';
      readonly reading: ChecklistReading;
      /** 'semicolons', 'commas', 'tabs'. */
      readonly parted: string;
      readonly encoding: 'UTF-8' | 'UTF-16' | 'Windows-1252';
    }
  | { readonly kind: 'failed'; readonly what: string };
