/**
 * Reads a checklist apart from the page: a file to a table to rows. The table stays here, so that a mended heading is quick,
 * and of a long file the rows too: to the collection they are sent from here.
 */
import type { ChecklistField } from '@enfilade/records/checklist-headings';
import { MAX_ROWS } from '@enfilade/records/checklist-rows';
import { objectNumberKey } from '@enfilade/records/object-number';
import { answeredRow } from '@enfilade/shared/checklist-answers';
import {
  type ChecklistReading,
  type ChecklistRow,
  checklistFromTable,
  sourceCellsOf,
} from '@enfilade/shared/checklist-reading';
import { COLLECTION_ROWS, collectionRowFrom } from '@enfilade/shared/collection-in';
import { collectionReadingOf, outOf } from '@enfilade/shared/collection-reading';
import { type Imported, NotImported } from '../importers/importer.ts';
import { importFile } from '../importers/importers.ts';
import { type ChecklistAnswer, type ChecklistQuestion, type ToCollection, WINDOW_ROWS } from './checklist-task.ts';
import { collectionNumbers, numbersByPicture } from './match-in-collection.ts';
import { type Collected, NOTHING_COLLECTED, type RowToSend, sendToCollection } from './send-to-collection.ts';

let imported: Imported | null = null;
let reading: ChecklistReading | null = null;
let museum = '';
let stopped = false;
/** What is being sent, kept as long as it can be gone on with. */
let sending: { readonly rows: readonly RowToSend[]; readonly state: Collected } | null = null;

addEventListener('message', ({ data }: MessageEvent<ChecklistQuestion>) => {
  if (data.kind === 'stop collecting') stopped = true;
  else if (data.kind === 'collect') void collect(data);
  else if (data.kind === 'match') void match(data);
  else void read(data);
});

async function read(
  data: Exclude<ChecklistQuestion, { kind: 'collect' | 'match' | 'stop collecting' }>,
): Promise<void> {
  try {
    if (data.kind === 'read') {
      museum = data.museum;
      imported = await importFile(data.file, data.file.name, {
        sheet: data.sheet,
        tell: (what, share) => answer({ kind: 'progress', what, share }),
      });
      answerRows(imported);
    } else if (imported !== null && data.kind === 'mend') {
      answerRows(imported, data.mapping);
    } else if (imported !== null && reading !== null && data.kind === 'source') {
      const cells = sourceCellsOf(imported.table, reading.mapping, data.line);
      answer({ kind: 'source', line: data.line, cells });
    } else if (reading !== null && data.kind === 'window') {
      answer({ kind: 'window', from: data.from, rows: reading.rows.slice(data.from, data.from + WINDOW_ROWS) });
    }
  } catch (error) {
    const what = error instanceof NotImported ? error.message : 'It could not be read to its end.';
    answer({ kind: 'failed', what: `${what} Nothing of it was brought in.` });
  }
}

function answerRows(from: Imported, mended?: readonly (ChecklistField | null)[]): void {
  const table = mended === undefined ? from.table : (from.mended?.(mended) ?? from.table);
  reading = checklistFromTable(table, mended, {
    maxRows: COLLECTION_ROWS,
    tell: (done, of) => {
      if (of <= MAX_ROWS) return;
      const [now, all] = [done, of].map((n) => n.toLocaleString('en-GB'));
      answer({ kind: 'progress', what: `reading row ${now} of ${all}`, share: done / of });
    },
  });
  sending = null;
  imported = { ...from, table };
  answer({
    kind: 'read',
    reading: { ...reading, rows: reading.rows.slice(0, MAX_ROWS).map(withoutDays) },
    collection: collectionReadingOf(reading, museum),
    ...{ about: from.about, sheets: from.sheets, sheet: from.sheet },
  });
}

/** A checklist has no place for when a thing was last shown: nothing waits for it there. */
function withoutDays(row: ChecklistRow): ChecklistRow {
  const waits = row.waits.filter(({ issue }) => issue.kind !== 'day not understood');
  return waits.length === row.waits.length ? row : { ...row, waits };
}

async function match({ base, pictures }: Extract<ChecklistQuestion, { kind: 'match' }>): Promise<void> {
  const numbers = await collectionNumbers(base).catch(() => null);
  const found = numbers === null ? null : numbersByPicture(pictures, reading?.rows ?? [], numbers);
  answer({ kind: 'matched', numbers: found });
}

async function collect(asked: ToCollection): Promise<void> {
  stopped = false;
  const before = (asked.goOn ? sending : null) ?? { rows: rowsToSend(asked), state: NOTHING_COLLECTED };
  const { rows } = before;
  const state = await sendToCollection(rows, {
    base: asked.base,
    fileName: asked.fileName,
    before: before.state,
    stopped: () => stopped,
    tell: (now) => answer({ kind: 'collected', state: now }),
  });
  sending = state.ended === 'all' ? null : { rows, state };
  answer({ kind: 'collected', state });
}

function rowsToSend({ answers, picturesByLine, picturesByNumber, fileName }: ToCollection): RowToSend[] {
  const pictures = new Map(
    [...picturesByNumber].map(([number, sha256]) => [objectNumberKey(number), { number, sha256 }]),
  );
  const rows = reading?.rows ?? [];
  const shownSaid = reading?.mapping.includes('shown') ?? false;
  const out = outOf(rows, museum);
  const going = rows.flatMap((row): RowToSend[] => {
    if (out.has(row)) return [];
    const given = row.waits.flatMap(({ key }) => answers.get(key) ?? []);
    const answered = answeredRow(row, given);
    if (answered === null) return [];
    const made = collectionRowFrom(answered, shownSaid);
    const key = objectNumberKey(made.number);
    const picture = pictures.get(key)?.sha256 ?? picturesByLine.get(row.line);
    pictures.delete(key);
    return [{ row: { ...made, ...(picture === undefined ? {} : { picture }) }, place: row.place }];
  });
  // What is left shows things that the collection has already.
  const further = [...pictures.values()].map(({ number, sha256 }) => {
    return { row: { number, picture: sha256, known: true }, place: fileName };
  });
  return [...going, ...further];
}

function answer(said: ChecklistAnswer): void {
  postMessage(said);
}
