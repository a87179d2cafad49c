/** A file as it goes into the collection: what of it waits for a word there, and which rows stay out, each with its reason. */
import { objectNumberKey } from '@enfilade/records/object-number';
import type { RowIssueKind } from '@enfilade/records/row-issue';
import type { ChecklistReading, ChecklistRow } from './checklist-reading.ts';
import { outOfCollection } from './collection-in.ts';

/** A row, or a part of one, that does not go in. */
export interface StaysOut {
  readonly place: string;
  readonly value: string;
  readonly what: string;
}

export interface CollectionReading {
  /** Rows that are filled, those that stay out among them. */
  readonly count: number;
  /** Of these with a number. */
  readonly withNumber: number;
  readonly going: number;
  /** Rows with something to say that matters to the collection, as many as are looked through by hand. */
  readonly waiting: readonly ChecklistRow[];
  readonly waitingInAll: number;
  readonly out: readonly StaysOut[];
  readonly outInAll: number;
}

/** The collection keeps sizes and counts as written: what of them is doubtful waits until a thing goes to the checklist. */
const WAITS: readonly RowIssueKind[] = [
  'number changed',
  'cell at fault',
  'too few cells',
  'too many cells',
  'day not understood',
];
const WAITING_AT_MOST = 2000;
const OUT_AT_MOST = 1000;

/** `museum`: its own name, which as a lender's is its own. */
export function collectionReadingOf(reading: ChecklistReading, museum: string): CollectionReading {
  const number = reading.headings[reading.mapping.indexOf('number')] ?? '';
  const out = withoutNumber(reading);
  const reasons = new Map<number, string>();
  for (const [row, what] of outOf(reading.rows, museum)) {
    reasons.set(row.line, what);
    out.set(row.line, { place: `${row.place}, “${number}”`, value: row.object.number, what });
  }
  const waiting: ChecklistRow[] = [];
  let waitingInAll = 0;
  for (const row of reading.rows) {
    if (reasons.has(row.line)) continue;
    const waits = row.waits.filter(({ issue }) => WAITS.includes(issue.kind));
    if (waits.length === 0) continue;
    waitingInAll += 1;
    if (waiting.length < WAITING_AT_MOST) waiting.push({ ...row, waits });
  }
  const { length: withNumber } = reading.rows;
  const inOrder = [...out].sort(([a], [b]) => a - b).map(([, one]) => one);
  return {
    count: withNumber + out.size - reasons.size,
    withNumber,
    going: withNumber - reasons.size,
    waiting,
    waitingInAll,
    out: inOrder.slice(0, OUT_AT_MOST),
    outInAll: out.size,
  };
}

/** Rows that could not be found again, by their lines, each once with all that is said of it. */
function withoutNumber({ notes }: ChecklistReading): Map<number, StaysOut> {
  const byLine = new Map<number, StaysOut>();
  for (const { line, place, what, value } of notes) {
    if (line === undefined) continue;
    const before = byLine.get(line);
    byLine.set(line, { place, value, ...before, what: [before?.what, what].filter(Boolean).join(' ') });
  }
  return byLine;
}

/** Rows that stay out, with why: lent by others, or of a number that an earlier row has. */
export function outOf(rows: readonly ChecklistRow[], museum: string): ReadonlyMap<ChecklistRow, string> {
  const first = new Map<string, ChecklistRow>();
  const out = new Map<ChecklistRow, string>();
  for (const row of rows) {
    const lent = outOfCollection(row, museum);
    const key = objectNumberKey(row.object.number);
    const before = first.get(key);
    if (lent !== null) out.set(row, lent);
    else if (before === undefined) first.set(key, row);
    else out.set(row, `${row.object.number} is also in ${before.place}: one number is one record. That row goes in.`);
  }
  return out;
}
