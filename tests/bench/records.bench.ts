/** Strings a second through the records' parsers, and the longest CPU time that hostile strings take. */

import * as XLSX from '@e965/xlsx';
import { importFile } from '@enfilade/client/importers/importers';
import { dateFrom } from '@enfilade/records/dates';
import { dimensionsFrom } from '@enfilade/records/dimensions';
import { makerFrom } from '@enfilade/records/makers';
import { checklistFromTable } from '@enfilade/shared/checklist-reading';
import { longWorkbook } from './long-workbook.ts';

export const name = 'records';

const SECONDS = 1;
const PARSERS: readonly (readonly [parser: string, read: (text: string) => unknown, texts: readonly string[]])[] = [
  [
    'dimensions',
    dimensionsFrom,
    [
      '24 1/2 x 36 in. (62.2 x 91.4 cm)',
      'H. 14 3/8 in. (36.5 cm); W. 9 in. (22.9 cm); D. 7 1/4 in. (18.4 cm)',
      'Unframed: 18 × 24 in.; framed: 25 1/4 × 31 1/4 × 2 1/2 in.',
      'Höhe: 58 mm Breite: 92 mm',
      'Set of 12, each approx. 10 1/2 × 3 3/4 in.',
      'support: 940 x 1747 mm\r\nframe (carry frame): 1105 x 1607 x 146 mm, 33 kg',
    ],
  ],
  [
    'dates',
    dateFrom,
    [
      'ca. 1880–90',
      'late 18th–early 19th century',
      'designed 1902, made 1905–10',
      '12–9 BCE',
      '2. Hälfte 18. Jahrhundert',
      'Edo period (1603–1867), 19th century',
    ],
  ],
  [
    'makers',
    makerFrom,
    ['Lind, Jona, attributed to', 'Unknown maker, American, 1840s', 'Designed by Ray Aho, made by Aho & Co.'],
  ],
];
/** What makes a careless pattern run on and come back, at any length a cell may have. */
const PIECES = [
  ...'( [ < <a &nbsp 1 9 0 , . - – / x × ½ ¹ ₁ " \' ; : ? ~ \n \u0301 a e'.split(' '),
  ' ',
  '\t',
  '1/',
  '1 ',
  '1,',
  '1(',
  '1 (cm)',
  '1 in (',
  'h1',
  'h1 b',
  'frame ',
  'frame, ',
  'each ',
  'overall ',
  'c. ',
  'early ',
  'late 18th-',
  '1880 or ',
  '1880 and ',
  'printed ',
  'printed (',
  '1/2/1880 or ',
  'the ',
  'possibly ',
  'attributed to ',
  'a and b ',
  ', after a',
  '1,234,',
  '1.234.',
];
const LENGTHS = [100, 1_000, 4_000, 100_000];

function cpuMs(): number {
  const { user, system } = process.cpuUsage();
  return (user + system) / 1000;
}

function perSecond(read: (text: string) => unknown, texts: readonly string[]): number {
  let count = 0;
  const start = cpuMs();
  while (cpuMs() - start < SECONDS * 1000) {
    for (let n = 0; n < 50; n++) read(texts[count++ % texts.length] as string);
  }
  return (1000 * count) / (cpuMs() - start);
}

/** Milliseconds of the dearest hostile string: the least of three, for another process's time is not ours. */
function dearest(read: (text: string) => unknown): { ms: number; text: string } {
  let worst = { ms: 0, text: '' };
  for (const piece of PIECES) {
    for (const length of LENGTHS) {
      const text = piece.repeat(Math.ceil(length / piece.length));
      const times = [1, 2, 3].map(() => {
        const start = cpuMs();
        read(text);
        return cpuMs() - start;
      });
      const ms = Math.min(...times);
      if (ms > worst.ms) worst = { ms, text: `${JSON.stringify(piece)} × ${Math.ceil(length / piece.length)}` };
    }
  }
  return worst;
}

const WORKBOOK_ROWS = 50_000;

interface Row {
  readonly row: string;
  readonly ours: number;
  readonly peer: number;
  readonly ratio: number;
  readonly unit: string;
  readonly gate?: string;
}

/** A long workbook to the review, against the library alone turning the same bytes into rows of cells. */
async function workbookRows(): Promise<Row[]> {
  const bytes = longWorkbook(WORKBOOK_ROWS);
  const start = cpuMs();
  const { table } = await importFile(new Blob([bytes]), 'long.xlsx', { sheet: null, tell: () => {} });
  const { rows } = checklistFromTable(table);
  const ours = cpuMs() - start;
  // The making of the workbook counted in; the reading is what needs most.
  const most = process.resourceUsage().maxRSS / 1024;
  if (table.cells.length !== WORKBOOK_ROWS + 1 || rows.length === 0) throw new Error('the workbook was not read whole');
  const again = cpuMs();
  const sheet = XLSX.read(bytes, { type: 'array', dense: true }).Sheets.Checklist as XLSX.WorkSheet;
  XLSX.utils.sheet_to_json(sheet, { header: 1 });
  const peer = cpuMs() - again;
  const what = `XLSX of ${WORKBOOK_ROWS} rows`;
  return [
    { row: `${what} to the review (CPU; peer: the library alone)`, ours, peer, ratio: ours / peer, unit: 'ms' },
    { row: `${what}: most memory of the process`, ours: most, peer: Number.NaN, ratio: Number.NaN, unit: 'MB' },
  ];
}

export async function run(): Promise<Row[]> {
  return [...(await workbookRows()), ...parserRows()];
}

function parserRows(): Row[] {
  return PARSERS.flatMap(([parser, read, texts]) => {
    perSecond(read, texts.slice(0, 1));
    const rate = perSecond(read, texts);
    const { ms, text } = dearest(read);
    const none = { peer: Number.NaN, ratio: Number.NaN };
    return [
      { row: `${parser}: strings a second (CPU)`, ours: rate, unit: '/s', ...none },
      { row: `${parser}: dearest hostile string, ${text}`, ours: ms, unit: 'ms', gate: '≤ 50 ms', ...none },
    ];
  });
}
