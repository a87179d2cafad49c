/** A checklist's table read row by row: what is sure becomes records, what is not is told with its row and cell. */
import {
  CHECKLIST_FIELDS,
  type ChecklistField,
  isPrivate,
  mayMean,
  type PrivateField,
  smellsPrivate,
} from './checklist-headings.ts';
import type { CalendarDate } from './date-reading.ts';
import { dateFrom } from './dates.ts';
import type { DimensionReading } from './dimension-reading.ts';
import { type FrameWords, frameFromCell } from './frame-words.ts';
import type { CellTold } from './imported-table.ts';
import { objectNumberKey, recordKeyOf } from './object-number.ts';
import type { OuterSize } from './outer-size.ts';
import { countFrom } from './row-count.ts';
import type { RowIssue, Tell } from './row-issue.ts';
import { rowSizeFrom, weightKgFrom } from './row-size.ts';

export type RowSource = 'collection' | 'loan' | 'artist' | 'bought';

export interface RowFields {
  readonly number: string;
  readonly title: string;
  readonly maker?: string;
  readonly dateText?: string;
  readonly medium?: string;
  readonly type?: string;
  readonly dimensionsText?: string;
  readonly framedText?: string;
  readonly count: number;
  /** Empty: held by the museum. */
  readonly lender: string;
  readonly creditLine?: string;
  readonly source: RowSource;
  readonly weightKg: number | null;
  readonly hardwareText?: string;
  readonly pictureFile?: string;
  readonly notes?: string;
  readonly frame?: FrameWords;
}

export interface ChecklistRow {
  /** Record row of the file; 1 is the heading row. */
  readonly line: number;
  readonly fields: RowFields;
  /** For the museum's eyes only. */
  readonly private: { readonly [field in PrivateField]?: string };
  readonly size: OuterSize | null;
  readonly dimensions: DimensionReading | null;
  readonly framed: DimensionReading | null;
  /** ISO day by which it was last shown; null where the row says none; empty where what it says is not understood. */
  readonly shown: string | null;
}

export interface ChecklistRead {
  readonly rows: readonly ChecklistRow[];
  readonly issues: readonly RowIssue[];
}

/** What a show holds. */
export const MAX_ROWS = 5000;
const TELL_EVERY = 500;

const SOURCES: readonly (readonly [RegExp, RowSource])[] = [
  [/loan|lent|borrow/, 'loan'],
  [/artist|made for|commission/, 'artist'],
  [/bought|buy|purchas|salvage/, 'bought'],
  [/collection|held|own|museum|permanent/, 'collection'],
];

/** What stands below a table, in the languages checklists come in; beyond English from memory. */
const SUMS = /^(?:grand |sub ?)?(?:totals?|sum|summe|gesamt|zwischensumme|somme|totale)\b[^\d]*$/i;

/**
 * Rows and issues of `table`, whose first row are the headings, in the order of the file. Empty rows are passed over; a row
 * without an object number is told and left out, since it could not be found again, and so are all where no column holds
 * numbers; of more than `maxRows` the first are kept. `told`: what an importer has to say of single cells;
 * `rowOf`: the number by which a row is named to a person. Cells of columns mapped to null go nowhere. Never throws on what a file holds.
 */
export function checklistRowsFrom(
  table: readonly (readonly string[])[],
  mapping: readonly (ChecklistField | null)[],
  options: {
    readonly maxRows?: number;
    /** Told now and then how many rows are read. */
    readonly tell?: (done: number, of: number) => void;
    readonly told?: readonly CellTold[];
    readonly rowOf?: (line: number) => number;
  } = {},
): ChecklistRead {
  const { maxRows = MAX_ROWS, rowOf = (line: number) => line, tell } = options;
  if (!(maxRows >= 1)) throw new RangeError(`maxRows is ${maxRows}; it must be at least 1`);
  const headings = (table[0] ?? []).map((heading) => heading.trim());
  const issues: RowIssue[] = [];
  const columns = columnsOf(headings, mapping, issues);
  if (!columns.has('number')) return { rows: [], issues };
  const filled = table
    .map((cells, i) => ({ cells, line: i + 1 }))
    .slice(1)
    .filter(({ cells }) => !isEmpty(cells));
  const rows: ChecklistRow[] = [];
  const lineOf = new Map<string, number>();
  const told = new Map<number, CellTold[]>();
  for (const one of options.told ?? []) told.set(one.line, [...(told.get(one.line) ?? []), one]);
  const taken = filled.slice(0, maxRows);
  for (const [index, { cells, line }] of taken.entries()) {
    if (index % TELL_EVERY === 0) tell?.(index, taken.length);
    const row = rowFrom(cells, line, { headings, columns, lineOf, told, rowOf }, issues);
    if (row) rows.push(row);
  }
  const [over] = filled.slice(maxRows);
  if (over) {
    const left = filled.length - maxRows;
    const what = `The file holds ${filled.length} rows; a show holds ${maxRows}. The last ${left}, from row ${rowOf(over.line)} on, stay out.`;
    issues.push({
      line: over.line,
      heading: '',
      field: null,
      kind: 'too many rows',
      what,
      value: String(filled.length),
    });
  }
  return { rows, issues };
}

type Columns = ReadonlyMap<ChecklistField, number>;

interface Table {
  readonly headings: readonly string[];
  readonly columns: Columns;
  /** Row in which a record's key was first met. */
  readonly lineOf: Map<string, number>;
  readonly told: ReadonlyMap<number, readonly CellTold[]>;
  readonly rowOf: (line: number) => number;
}

function columnsOf(
  headings: readonly string[],
  mapping: readonly (ChecklistField | null)[],
  issues: RowIssue[],
): Columns {
  const columns = new Map<ChecklistField, number>();
  for (const [column, field] of mapping.entries()) {
    const heading = headings[column];
    if (field === null || heading === undefined || columns.has(field)) continue;
    if (mayMean(heading, field)) {
      columns.set(field, column);
      continue;
    }
    const label = CHECKLIST_FIELDS.find((words) => words.field === field)?.label ?? field;
    const what = `This column may be for the museum alone; it is not taken as ${label}, which everybody sees.`;
    issues.push({ line: 1, heading, field, kind: 'private heading', what, value: heading });
  }
  if (!columns.has('number')) {
    const what = 'No column holds object numbers; say which one does.';
    issues.push({ line: 1, heading: '', field: 'number', kind: 'no heading row', what, value: headings.join(' | ') });
  }
  return columns;
}

function rowFrom(cells: readonly string[], line: number, table: Table, issues: RowIssue[]): ChecklistRow | null {
  const { headings, columns } = table;
  const shift = shiftOf(cells, headings.length);
  const cellOf = (field: ChecklistField): string => {
    const column = columns.get(field);
    if (column === undefined || (!isPrivate(field) && mayBePrivate(column, shift, table))) return '';
    return (cells[column] ?? '').replace(/\r\n?/g, '\n').trim();
  };
  const headingOf = (field: ChecklistField | null) =>
    field === null ? '' : (headings[columns.get(field) ?? -1] ?? '');
  const tell: Tell = (field, kind, what, more = {}) => {
    const value = more.value ?? (field === null ? '' : cellOf(field));
    const choices = more.choices ? { choices: more.choices } : {};
    issues.push({ line, heading: headingOf(field), field, kind, what, value, ...choices });
  };
  const oneLine = (field: ChecklistField) => cellOf(field).replace(/\s+/g, ' ');
  const number = oneLine('number');
  const atFault = (table.told.get(line) ?? []).find(({ column }) => column === columns.get('number'));
  if (shift !== 0) tellRagged(cells.length, headings.length, number, shift, table, tell);
  if (objectNumberKey(number) === '') {
    const why =
      atFault?.kind === 'cell at fault' ? atFault.what : 'No object number: it could not be found again, so it waits.';
    tell('number', 'number missing', why, { value: oneLine('title') });
    return null;
  }
  if (SUMS.test(number) && oneLine('title') === '') {
    tell('number', 'number missing', `“${number}” is no object number: a row of sums, by its looks. It stays out.`);
    return null;
  }
  if (/^\d([.,]\d+)?e\+?\d+$/i.test(number)) {
    tell('number', 'number changed', 'A spreadsheet seems to have turned this number into another; look at the card.');
  }
  for (const { column, kind, what, value, choices } of table.told.get(line) ?? []) {
    const field = [...columns].find(([, at]) => at === column)?.[0];
    if (field === undefined) continue;
    tell(field, kind, what, { value: isPrivate(field) ? '' : value, ...(choices.length === 0 ? {} : { choices }) });
  }
  const lender = oneLine('lender');
  const key = recordKeyOf({ lender, number });
  const before = table.lineOf.get(key);
  if (before === undefined) table.lineOf.set(key, line);
  else
    tell('number', 'number twice', `Also in row ${table.rowOf(before)}. Two objects or one?`, {
      choices: ['one', 'two'],
    });
  const sized = rowSizeFrom(
    {
      dimensions: [cellOf('dimensions'), headingOf('dimensions')],
      framed: [cellOf('framedDimensions'), headingOf('framedDimensions')],
    },
    tell,
  );
  const frame = frameIn(cellOf('frame'), headingOf('frame'), tell);
  const weightKg = weightKgFrom(cellOf('weight'), headingOf('weight'), tell) ?? sized.dimensions?.weight?.kg ?? null;
  return {
    line,
    fields: {
      number,
      title: oneLine('title'),
      ...given({
        maker: oneLine('maker'),
        dateText: oneLine('date'),
        medium: cellOf('medium'),
        type: oneLine('type'),
        dimensionsText: sized.dimensionsText,
        framedText: sized.framedText,
      }),
      count: countFrom(cellOf('count'), number, sized.dimensions, MAX_ROWS, tell),
      lender,
      source: sourceFrom(oneLine('source'), lender, tell),
      weightKg,
      ...given({
        creditLine: oneLine('creditLine'),
        hardwareText: cellOf('hardware'),
        pictureFile: oneLine('pictureFile'),
        notes: [cellOf('notes'), ...sized.unread, frame.note].filter((note) => note !== '').join('\n'),
      }),
      ...(frame.frame === null ? {} : { frame: frame.frame }),
    },
    private: given({
      value: cellOf('value'),
      storage: cellOf('storage'),
      contact: cellOf('contact'),
      price: cellOf('price'),
    }),
    size: sized.size,
    dimensions: sized.dimensions,
    framed: sized.framed,
    shown: shownFrom(oneLine('shown'), tell),
  };
}

/** What is not understood of a frame is kept as a note, so that nothing of it is lost. */
function frameIn(cell: string, heading: string, tell: Tell): { frame: FrameWords | null; note: string } {
  if (cell === '') return { frame: null, note: '' };
  const { frame, doubt } = frameFromCell(cell, heading);
  if (doubt !== '') tell('frame', 'frame not understood', `${doubt} It is kept among the notes.`);
  return { frame, note: doubt === '' ? '' : `${heading}: ${cell}` };
}

/** The last day that a text may mean; of a text that is none, nothing is taken. */
function shownFrom(cell: string, tell: Tell): string | null {
  if (cell === '' || /^(never|no|none|not shown|-|–|—)$/i.test(cell)) return null;
  const { events } = dateFrom(cell);
  const latest = events.flatMap((event) => event.latest ?? []).sort((a, b) => (isoOf(a) < isoOf(b) ? 1 : -1))[0];
  if (latest !== undefined && latest.year > 0) return isoOf(latest);
  tell('shown', 'day not understood', 'No day is read in this; when it was last shown is not taken.');
  return '';
}

/** The last day of what a date leaves open. */
function isoOf({ year, month = 12, day }: CalendarDate): string {
  const last = day ?? new Date(Date.UTC(year, month, 0)).getUTCDate();
  return [String(year).padStart(4, '0'), ...[month, last].map((n) => String(n).padStart(2, '0'))].join('-');
}

function given<Name extends string>(cells: Readonly<Record<Name, string>>): { [name in Name]?: string } {
  return Object.fromEntries(Object.entries(cells).filter(([, cell]) => cell !== '')) as { [name in Name]?: string };
}

function isEmpty(cells: readonly string[]): boolean {
  return cells.every((cell) => cell.trim() === '');
}

/** By how many cells a row is longer (positive) or shorter than the headings; empty cells too many are no matter. */
function shiftOf(cells: readonly string[], columns: number): number {
  if (cells.length <= columns) return cells.length - columns;
  return isEmpty(cells.slice(columns)) ? 0 : cells.length - columns;
}

/** In a ragged row a cell may belong to a neighbouring column; none that may be private is let into a public field. */
function mayBePrivate(column: number, shift: number, { headings, columns }: Table): boolean {
  if (shift === 0) return false;
  const [from, to] = shift > 0 ? [column - shift, column] : [column, column - shift];
  const kept = new Set([...columns].filter(([field]) => isPrivate(field)).map(([, at]) => at));
  return headings.some((heading, at) => at >= from && at <= to && (kept.has(at) || smellsPrivate(heading)));
}

function tellRagged(cells: number, columns: number, number: string, shift: number, table: Table, tell: Tell): void {
  const left = [...table.columns]
    .filter(([field, column]) => !isPrivate(field) && mayBePrivate(column, shift, table))
    .map(([, column]) => table.headings[column]);
  const out = left.length > 0 ? ` Not taken, since they may hold what is private: ${left.join(', ')}.` : '';
  const what = `${cells} cells under ${columns} headings; what follows the slip may stand in the wrong column.${out}`;
  tell(null, shift > 0 ? 'too many cells' : 'too few cells', what, { value: number });
}

function sourceFrom(cell: string, lender: string, tell: Tell): RowSource {
  const usual: RowSource = lender === '' ? 'collection' : 'loan';
  if (cell === '') return usual;
  const found = SOURCES.find(([words]) => words.test(cell.toLowerCase()));
  if (found) return found[1];
  tell('source', 'source not understood', `Taken as ${usual}.`, {
    choices: ['collection', 'loan', 'artist', 'bought'],
  });
  return usual;
}
