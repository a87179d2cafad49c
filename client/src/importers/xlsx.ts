/** XLSX workbooks: read by a library that is loaded here alone, from a copy unpacked within bounds. */

import type { CellObject, WorkBook, WorkSheet } from '@e965/xlsx';
import type { GridCell, SheetGrid } from '@enfilade/records/sheet-grid';
import { zipSync } from 'fflate';
import { bytesOf, type Importer, NotImported, type SheetName } from './importer.ts';
import { importedSheet, likeliestSheet } from './sheet-choice.ts';
import { entriesOf, zipEntries } from './zip-entries.ts';

const MOST_BYTES = 120_000_000;
const MOST_UNPACKED = 400_000_000;
const MOST_ENTRIES = 10_000;
/** What no table is made of is not even unpacked: pictures, drawings, charts, macros, settings of printers. */
const NOT_NEEDED =
  /^(xl\/(media|drawings|charts|diagrams|embeddings|printerSettings|activeX|ctrlProps|vbaProject)|customXml|docProps)\b/i;
/** Rows by which a sheet is told to be a checklist. */
const TOP_ROWS = 50;

type Xlsx = typeof import('@e965/xlsx');

export const xlsx: Importer = {
  knows: (head, fileName) => isZip(head) && /\.(xlsx|xlsm)$/i.test(fileName),
  read: async (file, { sheet: asked, tell }) => {
    tell('unpacking', null);
    const packed = await bytesOf(file, MOST_BYTES);
    const entries = zipEntries(packed, MOST_ENTRIES).filter(({ name }) => !NOT_NEEDED.test(name));
    const bytes = entries.reduce((sum, entry) => sum + entry.bytes, 0);
    if (bytes > MOST_UNPACKED) {
      throw new NotImported(`It unpacks to ${Math.round(bytes / 1e6)} MB; at most ${MOST_UNPACKED / 1e6} are taken.`);
    }
    const parts = entriesOf(packed, new Set(entries.map(({ name }) => name)));
    if (![...parts.keys()].some((name) => /^xl\/workbook\.xml$/i.test(name))) {
      throw new NotImported('It is no XLSX workbook, whatever its name says.');
    }
    const plain = zipSync(Object.fromEntries(parts), { level: 0 });
    const library = await import('@e965/xlsx');
    tell('looking through its sheets', null);
    // Where there is one sheet, nothing has to be looked at twice.
    const alone = opened(library, plain, { bookSheets: true }).SheetNames.length === 1;
    const book = opened(library, plain, alone ? {} : { sheetRows: TOP_ROWS });
    const sheets = book.SheetNames.map((name, index): SheetName => {
      return { name, hidden: (book.Workbook?.Sheets?.[index]?.Hidden ?? 0) !== 0 };
    });
    const date1904 = book.Workbook?.WBProps?.date1904 === true;
    const grids = (from: WorkBook, names: readonly SheetName[]): SheetGrid[] =>
      names.flatMap(({ name, hidden }) => {
        const found = from.Sheets[name];
        return found === undefined ? [] : [gridFrom(library, found, { name, hidden, date1904 })];
      });
    const name = sheets.some((one) => one.name === asked)
      ? (asked as string)
      : alone
        ? sheets[0]?.name
        : (likeliestSheet(grids(book, sheets)) ?? sheets[0]?.name);
    if (name === undefined) throw new NotImported('There is no sheet in it.');
    tell(`reading sheet “${name}”`, null);
    const whole = alone ? book : opened(library, plain, { sheets: [name] });
    const [grid] = grids(
      whole,
      sheets.filter((one) => one.name === name),
    );
    if (grid === undefined) throw new NotImported(`Sheet “${name}” cannot be read.`);
    tell('reading its rows', null);
    return importedSheet(grid, sheets, 'XLSX');
  },
};

export function isZip(head: Uint8Array): boolean {
  return head[0] === 0x50 && head[1] === 0x4b && head[2] === 0x03 && head[3] === 0x04;
}

function opened(
  library: Xlsx,
  bytes: Uint8Array,
  which: { bookSheets?: true; sheetRows?: number; sheets?: string[] },
): WorkBook {
  try {
    return library.read(bytes, { type: 'array', dense: true, cellNF: true, cellHTML: false, ...which });
  } catch {
    throw new NotImported('It is an XLSX workbook that cannot be read: it is damaged, or locked with a password.');
  }
}

function gridFrom(
  library: Xlsx,
  sheet: WorkSheet,
  { name, hidden, date1904 }: SheetName & { readonly date1904: boolean },
): SheetGrid {
  const rows = (sheet['!data'] ?? []) as readonly (readonly (CellObject | undefined)[] | undefined)[];
  return {
    name,
    hidden,
    rows: Array.from(rows, (row) => Array.from(row ?? [], (cell) => gridCell(library, cell, date1904))),
    merged: (sheet['!merges'] ?? []).map(({ s, e }) => ({ top: s.r, left: s.c, bottom: e.r, right: e.c })),
  };
}

function gridCell(library: Xlsx, cell: CellObject | undefined, date1904: boolean): GridCell {
  if (cell === undefined) return undefined;
  const { t, v, z, w = '', f } = cell;
  if (t === 'e')
    return { text: w, fault: `The spreadsheet shows ${w || 'an error'} here; the cell is taken as empty.` };
  if (f !== undefined && (v === undefined || v === '')) {
    const fault =
      'A formula whose value is not kept in the file; the cell is taken as empty. Opened in a spreadsheet and saved, it will be.';
    return { text: `=${f}`, fault };
  }
  if (t === 's') return String(v ?? '');
  if (t !== 'n' || typeof v !== 'number') return w || (v === undefined ? undefined : String(v));
  const format = String(z ?? 'General');
  if (library.SSF.is_date(format)) {
    const parts = library.SSF.parse_date_code(v, { date1904 });
    if (parts === null) return w;
    const { y: year, m: month, d: day } = parts;
    const text = dateText(format, { year, month, day });
    return text === '' ? w : { text, shown: w, date: { year, month, day } };
  }
  return format === 'General' ? { text: String(v), figure: v } : w;
}

/** ISO 8601, to the day only where the format shows one: `Dec-87` is 1987-12. Clock times stay as shown. */
function dateText(format: string, { year, month, day }: { year: number; month: number; day: number }): string {
  const plain = format.replace(/"[^"]*"|\[[^\]]*\]|\\./g, '').toLowerCase();
  const two = (n: number): string => String(n).padStart(2, '0');
  if (!plain.includes('y') && !plain.includes('d')) return '';
  if (!plain.includes('m')) return String(year);
  return plain.includes('d') ? `${year}-${two(month)}-${two(day)}` : `${year}-${two(month)}`;
}
