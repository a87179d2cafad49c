/** A checklist as the review shows it: each row as it will go in, what waits for a person's word, and the ways to answer. */
import { type ChecklistField, mappingFrom } from '@enfilade/records/checklist-headings';
import { checklistRowsFrom, type ChecklistRow as ReadRow } from '@enfilade/records/checklist-rows';
import { dimensionsFrom } from '@enfilade/records/dimensions';
import { type ImportedTable, type PictureSource, placeIn, tableFromRows } from '@enfilade/records/imported-table';
import { type OuterSize, outerSizeOf } from '@enfilade/records/outer-size';
import type { RowIssue } from '@enfilade/records/row-issue';
import type { MeasuredSize, MuseumObject, PrivateFacts, Source } from './schema.ts';

/** One way to settle what waits: the facts that then stand in the record, or the row left out. */
export interface RowAnswer {
  readonly label: string;
  readonly fields?: Partial<Pick<MuseumObject, 'number' | 'measured' | 'count' | 'weightKg' | 'source'>>;
  /** Another row is the same object: this one stays out. */
  readonly leaveOut?: boolean;
}

export interface RowWait {
  /** The same for the same question, however the other headings are mended. */
  readonly key: string;
  /** Of its cell in the source: 'Sheet “Loans”, C14'. */
  readonly place: string;
  readonly row: number;
  readonly issue: RowIssue;
  readonly answers: readonly RowAnswer[];
}

export interface ChecklistRow {
  /** Row of the table; the headings are row 1. */
  readonly line: number;
  /** Its number as the source counts: the row of its sheet. */
  readonly row: number;
  /** Where it stands in the source: 'Sheet “Loans”, row 14', 'lido 3'. */
  readonly place: string;
  /** Pictures that the source names by their addresses. */
  readonly named: readonly PictureSource[];
  readonly object: MuseumObject;
  /** False where `source` follows from the lender alone. */
  readonly sourceStated: boolean;
  readonly private: PrivateFacts;
  readonly pictureFile: string;
  /** ISO day it was last shown; null: the row says none; empty: not understood. The collection alone has a place for it. */
  readonly shown: string | null;
  readonly waits: readonly RowWait[];
}

export interface ChecklistReading {
  readonly headings: readonly string[];
  readonly mapping: readonly (ChecklistField | null)[];
  /** Cells filled under each heading. */
  readonly filled: readonly number[];
  readonly rows: readonly ChecklistRow[];
  /** What is said of the file as a whole, and of rows that cannot go in. */
  readonly notes: readonly Note[];
}

export interface Note {
  /** The row that stays out; absent where the file as a whole is meant. */
  readonly line?: number;
  readonly place: string;
  readonly heading: string;
  readonly what: string;
  /** The cell as it stands; empty where it is told in `what`, or private. */
  readonly value: string;
}

/** One cell of a row, as the source has it and what it is taken as. */
export interface SourceCell {
  readonly place: string;
  readonly heading: string;
  readonly text: string;
  readonly field: ChecklistField | null;
}

/** Reads the cells of a CSV (its headings first). `mended`: the mapping as a person mended it; else as the headings say. */
export function checklistFrom(
  cells: readonly (readonly string[])[],
  mended?: readonly (ChecklistField | null)[],
): ChecklistReading {
  return checklistFromTable(tableFromRows(cells), mended);
}

/** The same of whatever an importer has read. */
export function checklistFromTable(
  table: ImportedTable,
  mended?: readonly (ChecklistField | null)[],
  options: { readonly maxRows?: number; readonly tell?: (done: number, of: number) => void } = {},
): ChecklistReading {
  const { cells } = table;
  const rowOf = (line: number): number => table.sheet?.rowNumbers[line - 2] ?? line;
  const headings = (cells[0] ?? []).map((heading) => heading.trim());
  const mapping = mended ?? mappingFrom(headings);
  const { rows, issues } = checklistRowsFrom(cells, mapping, { ...options, told: table.told ?? [], rowOf });
  const filled = headings.map(() => 0);
  for (const row of cells.slice(1)) {
    for (let column = 0; column < headings.length; column++) {
      if ((row[column] ?? '').trim() !== '') filled[column] = (filled[column] ?? 0) + 1;
    }
  }
  const lines = new Set(rows.map(({ line }) => line));
  const byLine = new Map<number, RowIssue[]>();
  const notes: Note[] = table.issues.map(({ where, what }) => ({ place: where, heading: '', what, value: '' }));
  const columnOf = ({ field }: RowIssue): number | null => (field === null ? null : mapping.indexOf(field));
  for (const issue of issues) {
    if (!lines.has(issue.line)) {
      const place = issue.line === 1 ? '' : placeIn(table, issue.line, columnOf(issue));
      notes.push({
        ...(issue.line === 1 || isOver(issue) ? {} : { line: issue.line }),
        place,
        heading: issue.line === 1 ? issue.heading : '',
        what: issue.what,
        value: issue.line === 1 ? '' : issue.value,
      });
    } else byLine.set(issue.line, [...(byLine.get(issue.line) ?? []), issue]);
  }
  const source = mapping.indexOf('source');
  return {
    headings,
    mapping,
    filled,
    notes,
    rows: rows.map((row) => ({
      line: row.line,
      row: rowOf(row.line),
      place: placeIn(table, row.line, null),
      named: table.pictures[row.line - 2] ?? [],
      object: objectOf(row),
      sourceStated: source >= 0 && (cells[row.line - 1]?.[source] ?? '').trim() !== '',
      private: row.private,
      pictureFile: row.fields.pictureFile ?? '',
      shown: row.shown,
      waits: (byLine.get(row.line) ?? []).map((issue) => ({
        key: `${issue.line}/${issue.heading}/${issue.field ?? ''}/${issue.kind}`,
        place: placeIn(table, issue.line, columnOf(issue)),
        row: rowOf(row.line),
        issue,
        answers: answersTo(issue, row),
      })),
    })),
  };
}

function isOver({ kind }: RowIssue): boolean {
  return kind === 'too many rows';
}

/** Every cell of a row that holds anything, beside where it stands and what it is taken as. */
export function sourceCellsOf(
  table: ImportedTable,
  mapping: readonly (ChecklistField | null)[],
  line: number,
): readonly SourceCell[] {
  return (table.cells[line - 1] ?? []).flatMap((text, column) => {
    if (text.trim() === '') return [];
    const heading = table.cells[0]?.[column]?.trim() ?? '';
    return [{ place: placeIn(table, line, column), heading, text, field: mapping[column] ?? null }];
  });
}

function objectOf({ fields: { pictureFile: _, ...fields } }: ReadRow): MuseumObject {
  return fields;
}

function answersTo(issue: RowIssue, row: ReadRow): RowAnswer[] {
  switch (issue.kind) {
    case 'number twice':
      return [{ label: 'one', leaveOut: true }, { label: 'two' }];
    case 'unit unknown':
      return (['cm', 'in', 'mm'] as const).flatMap((unit) => sizeAnswer(issue, row, `${issue.value} ${unit}`, unit));
    case 'systems disagree':
      if (issue.field === 'weight') return [LEFT_SO];
      return (issue.choices ?? []).flatMap((choice) => sizeAnswer(issue, row, choice, choice));
    case 'weight without unit':
      return (issue.choices ?? []).flatMap((choice) => {
        const kg = dimensionsFrom(choice).weight?.kg;
        return kg === undefined ? [] : [{ label: choice, fields: { weightKg: kg } }];
      });
    case 'number changed':
      return [LEFT_SO, ...(issue.choices ?? []).map((choice) => ({ label: choice, fields: { number: choice } }))];
    case 'counts disagree':
      return (issue.choices ?? []).map((choice) => ({ label: choice, fields: { count: Number(choice) } }));
    case 'source not understood':
      return (issue.choices ?? []).map((choice) => ({ label: choice, fields: { source: choice as Source } }));
    default:
      return [LEFT_SO];
  }
}

/** Looked at, and nothing to add: what is sure of the row goes in, the rest stays as written. */
const LEFT_SO: RowAnswer = { label: 'leave it so' };

/** The size with the cell read as `text`; none where even so no height and width come of it. */
function sizeAnswer(issue: RowIssue, row: ReadRow, text: string, label: string): RowAnswer[] {
  const reading = dimensionsFrom(text);
  const framed = issue.field === 'framedDimensions' ? reading : row.framed;
  const dimensions = issue.field === 'framedDimensions' ? row.dimensions : reading;
  const size = outerSizeOf({ ...(dimensions ? { dimensions } : {}), ...(framed ? { framed } : {}) });
  if (size === null) return [];
  return [{ label, fields: { measured: measuredFrom(size) } }];
}

export function measuredFrom({ heightMm, widthMm, depthMm, certain }: OuterSize): MeasuredSize {
  return { heightMm, widthMm, depthMm, estimated: !certain };
}
