/** What a person is told about one cell or row of a checklist. */
import type { ChecklistField } from './checklist-headings.ts';
import type { DimensionIssueKind } from './dimension-reading.ts';

export type RowIssueKind =
  | DimensionIssueKind
  | 'too few cells'
  | 'too many cells'
  | 'too many rows'
  | 'no heading row'
  | 'private heading'
  | 'number missing'
  | 'number changed'
  | 'cell at fault'
  | 'number twice'
  | 'count not understood'
  | 'counts disagree'
  | 'weight not understood'
  | 'weight without unit'
  | 'source not understood'
  | 'order not understood'
  | 'frame not understood'
  | 'day not understood'
  | 'size missing';

export interface RowIssue {
  /** Record row of the file; 1 is the heading row. */
  readonly line: number;
  /** As it stands in the file; '' where the whole row is meant. */
  readonly heading: string;
  readonly field: ChecklistField | null;
  readonly kind: RowIssueKind;
  /** A sentence for a person. */
  readonly what: string;
  /** The cell as it stands in the file, never one of a private column. */
  readonly value: string;
  /** What could be put in the cell's place, one of them to be picked. */
  readonly choices?: readonly string[];
}

/** Tells one issue of the row and column at hand. */
export type Tell = (
  field: ChecklistField | null,
  kind: RowIssueKind,
  what: string,
  more?: { readonly value?: string; readonly choices?: readonly string[] },
) => void;
