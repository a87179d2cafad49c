/** A lender's loan list as printed sheets: A3, a row a record, the terms in full. */
import { MARGIN, TITLE_BLOCK, TITLE_TOP } from './elevation-layout.ts';
import type { Judgements } from './judgements.ts';
import { type LoanListRow, loanListOf } from './loan-list.ts';
import { A3, linesOf, type Sheet, type SheetMark, textMark } from './sheet.ts';
import type { Stamp } from './title-block.ts';

const LINE_MM = 3.9;
const TEXT_MM = 2.9;
const TOP = MARGIN + 20;
const BOTTOM = TITLE_TOP - 6;
const LINES_AT_MOST = 12;

interface Column {
  readonly heading: string;
  readonly widthMm: number;
  readonly text: (row: LoanListRow) => string;
}

const COLUMNS: readonly Column[] = [
  {
    heading: 'no.',
    widthMm: 30,
    text: ({ number, reference }) => (reference === '' ? number : `${number} lender’s ${reference}`),
  },
  { heading: 'work or object', widthMm: 78, text: ({ title, about }) => `${title}. ${about}` },
  { heading: 'size', widthMm: 34, text: ({ size }) => size },
  { heading: 'status', widthMm: 27, text: ({ status }) => status },
  { heading: 'days', widthMm: 48, text: ({ days }) => days },
  { heading: 'credit line, exact', widthMm: 52, text: ({ creditLine }) => creditLine },
  { heading: 'terms', widthMm: 86, text: ({ terms }) => terms },
];
const VALUE: Column = { heading: 'insured for', widthMm: 30, text: ({ value }) => value };

/** @returns none where the lender lends nothing. `withValues`: as for `loanListOf`. */
export function loanListSheetsOf(judgements: Judgements, lender: string, withValues: boolean, stamp: Stamp): Sheet[] {
  const rows = loanListOf(judgements, lender, withValues);
  if (rows.length === 0) return [];
  const columns = columnsFor(withValues);
  const pages: SheetMark[][] = [];
  let page: SheetMark[] = [];
  let y = BOTTOM;
  for (const row of rows) {
    const cells = columns.map(({ widthMm, text }) => linesOf(text(row), widthMm - 4, TEXT_MM, 'sans', LINES_AT_MOST));
    const height = Math.max(1, ...cells.map((lines) => lines.length)) * LINE_MM + 3;
    if (y + height > BOTTOM) {
      page = pageHead(judgements, lender, columns);
      pages.push(page);
      y = TOP;
    }
    let x = MARGIN;
    for (const [index, lines] of cells.entries()) {
      for (const [n, line] of lines.entries()) page.push(textMark(x, y + 3.6 + n * LINE_MM, line, TEXT_MM));
      x += columns[index]?.widthMm ?? 0;
    }
    y += height;
    page.push({ kind: 'line', x1: MARGIN, y1: y, x2: A3.widthMm - MARGIN, y2: y, weightMm: 0.18 });
  }
  const name = lender === '' ? 'a lender not named' : lender;
  return pages.map((marks, index) => ({
    title: `Loan list, ${name}, sheet ${index + 1} of ${pages.length}`,
    marks: [
      ...marks,
      ...foot(judgements, { rows: rows.length, withValues, stamp, page: index + 1, pages: pages.length }),
    ],
  }));
}

/** The columns fill the sheet's width; a list with values has one more. */
function columnsFor(withValues: boolean): readonly Column[] {
  const columns = withValues ? [...COLUMNS, VALUE] : COLUMNS;
  const share = (A3.widthMm - 2 * MARGIN) / columns.reduce((sum, { widthMm }) => sum + widthMm, 0);
  return columns.map((column) => ({ ...column, widthMm: column.widthMm * share }));
}

function pageHead(judgements: Judgements, lender: string, columns: readonly Column[]): SheetMark[] {
  const right = A3.widthMm - MARGIN;
  const marks: SheetMark[] = [
    textMark(
      MARGIN,
      MARGIN + 6,
      linesOf(lender === '' ? 'A lender not named' : lender, 250, 7, 'serif', 1)[0] ?? '',
      7,
      'serif',
    ),
    textMark(right, MARGIN + 6, `Loan list for ${judgements.setting('title')}`, 3.6, 'serif', 'end'),
    { kind: 'line', x1: MARGIN, y1: TOP - 2, x2: right, y2: TOP - 2, weightMm: 0.5 },
  ];
  let x = MARGIN;
  for (const { heading, widthMm } of columns) {
    marks.push(textMark(x, TOP - 4, heading, 2.6));
    x += widthMm;
  }
  return marks;
}

interface Foot {
  readonly rows: number;
  readonly withValues: boolean;
  readonly stamp: Stamp;
  readonly page: number;
  readonly pages: number;
}

function foot(judgements: Judgements, { rows, withValues, stamp, page, pages }: Foot): SheetMark[] {
  const top = TITLE_TOP;
  const right = A3.widthMm - MARGIN;
  const black = 330;
  const white = (y: number, words: string, size: number, face: 'sans' | 'sans bold' = 'sans'): SheetMark => ({
    ...textMark(black + 4, top + y, words, size, face),
    ink: 'white',
  });
  return [
    { kind: 'box', xMm: MARGIN, yMm: top, widthMm: right - MARGIN, heightMm: TITLE_BLOCK, weightMm: 0.5 },
    { kind: 'box', xMm: black, yMm: top, widthMm: right - black, heightMm: TITLE_BLOCK, weightMm: 0.5, fill: 'ink' },
    textMark(MARGIN + 4, top + 7, linesOf(judgements.setting('title'), 120, 5.4, 'serif', 1)[0] ?? '', 5.4, 'serif'),
    textMark(MARGIN + 4, top + 12.4, judgements.setting('museum'), 2.8),
    textMark(
      150,
      top + 6,
      `${rows} ${rows === 1 ? 'record' : 'records'}; the lender’s signed agreement goes before this list`,
      2.6,
    ),
    textMark(150, top + 10.6, 'Height × width × depth in centimetres, framed where a frame is recorded', 2.6),
    textMark(
      150,
      top + 15.2,
      withValues
        ? 'With insurance values: for the lender, the lead, the curator and the registrar alone'
        : 'Without insurance values',
      2.6,
    ),
    white(8, stamp.version === 0 ? 'Draft' : `Version ${stamp.version}`, 5, 'sans bold'),
    white(13, `sheet ${page} of ${pages}   ${stamp.at}`, 2.6),
    white(17.4, stamp.version === 0 ? 'not frozen' : 'a later version makes this list void', 2.6),
  ];
}
