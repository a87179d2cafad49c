/** The loan list of a lender: what the registrar and the lender agree on, a row a record. */
import { csvFrom } from '@enfilade/records/checklist-csv';
import { centimetresText, sizeText } from '@enfilade/space/lengths';
import type { Judgements } from './judgements.ts';
import { type LentRecord, loansByLender } from './loans.ts';
import { type Loan, pieceIdOf } from './schema.ts';

export interface LoanListRow {
  readonly number: string;
  readonly title: string;
  /** Maker, date, medium, and how many it counts. */
  readonly about: string;
  readonly size: string;
  readonly status: string;
  readonly reference: string;
  readonly days: string;
  readonly creditLine: string;
  readonly terms: string;
  /** Empty where values are not to be shown. */
  readonly value: string;
  readonly contact: string;
}

/** @param withValues only for whoever may read the private document; without, values and contacts are left out. */
export function loanListOf(judgements: Judgements, lender: string, withValues: boolean): LoanListRow[] {
  const records = loansByLender(judgements).find((one) => one.lender === lender)?.records ?? [];
  return records.map((record) => rowOf(judgements, record, withValues));
}

function rowOf(
  judgements: Judgements,
  { objectId, number, title, loan }: LentRecord,
  withValues: boolean,
): LoanListRow {
  const object = judgements.documents.get('objects', objectId);
  const size = judgements.sizeOf(pieceIdOf(objectId, 1));
  const facts = withValues ? judgements.documents.get('values', objectId) : undefined;
  const count = object?.count ?? 1;
  return {
    number,
    title,
    about: [object?.maker, object?.dateText, object?.medium, count > 1 ? `${count} pieces` : '']
      .filter(Boolean)
      .join('; '),
    size: size?.known ? `${sizeText(size.heightMm, size.widthMm, size.depthMm || null, 'cm')} cm` : 'not known',
    status: loan.status,
    reference: loan.reference ?? '',
    days: daysText(loan),
    creditLine: object?.creditLine ?? '',
    terms: termsText(loan),
    value: facts?.value ?? '',
    contact: facts?.contact ?? '',
  };
}

/** 'leaves 2026-05-01, here 2026-05-03 to 2026-10-12, back 2026-10-14'; empty where no day is set. */
function daysText({ from, arrives, leaves, to }: Loan): string {
  const here = arrives || leaves ? `here ${arrives || 'from a day not set'} to ${leaves || 'a day not set'}` : '';
  return [from ? `leaves ${from}` : '', here, to ? `back ${to}` : ''].filter((text) => text !== '').join(', ');
}

/** Every term in words, as they are checked and as they were written. */
export function termsText(loan: Loan): string {
  const figure = (before: string, mm: number | null | undefined): string =>
    typeof mm === 'number' ? `${before} ${centimetresText(mm)} cm` : '';
  return [
    typeof loan.mostLux === 'number' ? `at most ${loan.mostLux} lux` : '',
    loan.humidity ? `RH ${loan.humidity}` : '',
    loan.temperature ?? '',
    loan.asksGlazing === true ? 'glazed' : '',
    loan.asksCase === true ? 'in a case' : '',
    figure('foot at least', loan.lowestFootMm),
    figure('top at most', loan.highestTopMm),
    loan.asksConsent === true ? 'ask before each move' : '',
    loan.terms ?? '',
  ]
    .filter((text) => text !== '')
    .join('; ');
}

/** Columns of the list as a table: headings, then a row a record. */
export function loanListTable(rows: readonly LoanListRow[], withValues: boolean): string[][] {
  const columns: readonly (readonly [heading: string, field: keyof LoanListRow])[] = [
    ['No.', 'number'],
    ['Title', 'title'],
    ['About', 'about'],
    ['Size', 'size'],
    ['Status', 'status'],
    ['Reference', 'reference'],
    ['Days', 'days'],
    ['Credit line', 'creditLine'],
    ['Terms', 'terms'],
    ...(withValues
      ? ([
          ['Insured for', 'value'],
          ['Contact', 'contact'],
        ] as const)
      : []),
  ];
  return [columns.map(([heading]) => heading), ...rows.map((row) => columns.map(([, field]) => row[field]))];
}

/** The list as CSV (RFC 4180, with a byte order mark so that a spreadsheet reads accents), safe to open in one. */
export function toLoanCsv(rows: readonly LoanListRow[], withValues: boolean): string {
  return `\uFEFF${csvFrom(loanListTable(rows, withValues))}`;
}
