/** Loans: what is agreed with each lender, how far each has come, what is due next. */
import type { Act } from './acts.ts';
import type { ShowDocuments } from './documents.ts';

import { LOAN_STATUSES, type Loan, type LoanStatus, type ObjectId, type PieceId, type Place } from './schema.ts';
import type { ShowReader } from './show-reader.ts';

/** How a loan falls away. */
export const FALLEN: readonly LoanStatus[] = ['declined', 'cancelled'];
/** From agreement signed on, a loan may be counted on. Common practice, no source. */
const COUNTED_ON: readonly LoanStatus[] = ['agreement signed', 'in transit', 'received', 'installed'];

/** One field each, so that two people correcting two terms of one loan both keep their word. */
export function correctLoan(objectId: ObjectId, fields: Partial<Omit<Loan, 'removed'>>): Act {
  const changes = Object.entries(fields).map(([field, value]) => ({
    root: 'loans' as const,
    key: `${objectId}/${field}`,
    value: value as never,
  }));
  const { status } = fields;
  return { name: status === undefined ? 'correct the loan' : `loan ${status}`, changes };
}

/** The lender agrees to where its pieces are now; where they have no place there is nothing to agree to. */
export function agreeToPlaces(reader: ShowReader, objectId: ObjectId): Act {
  const places: Record<PieceId, Place> = {};
  for (const pieceId of reader.piecesOf(objectId)) {
    const at = reader.documents.get('places', pieceId);
    if (at !== undefined) places[pieceId] = at;
  }
  const changes = [{ root: 'loans' as const, key: `${objectId}/agreedPlaces`, value: places as never }];
  return { name: 'record that the lender agrees', changes };
}

/** Whether a record is lent: it has a lender, or says that it is on loan. */
export function isLent(documents: ShowDocuments, objectId: ObjectId): boolean {
  const object = documents.get('objects', objectId);
  return object !== undefined && (object.lender !== '' || object.source === 'loan');
}

/** What is known of a record's loan; null for what is not lent. Facts of the wrong kind are as if not there. */
export function loanOf(documents: ShowDocuments, objectId: ObjectId): Loan & { readonly status: LoanStatus } {
  const loan = documents.get('loans', objectId) ?? {};
  const status = LOAN_STATUSES.find((known) => known === loan.status) ?? 'wish';
  return { ...loan, status };
}

export function isCountedOn(status: LoanStatus): boolean {
  return COUNTED_ON.includes(status);
}

export function hasFallen(status: LoanStatus): boolean {
  return FALLEN.includes(status);
}

export interface LentRecord {
  readonly objectId: ObjectId;
  readonly number: string;
  readonly title: string;
  readonly loan: Loan & { readonly status: LoanStatus };
  readonly pieces: readonly PieceId[];
  readonly placed: readonly PieceId[];
}

export interface LenderLoans {
  /** As the records name them; empty where a record is on loan and no lender is named. */
  readonly lender: string;
  readonly records: readonly LentRecord[];
}

/** Lent records by lender, lenders by name and records by number. */
export function loansByLender(reader: ShowReader): LenderLoans[] {
  const { documents } = reader;
  const found = new Map<string, LentRecord[]>();
  for (const [objectId, object] of documents.all('objects')) {
    if (!isLent(documents, objectId)) continue;
    const pieces = reader.piecesOf(objectId);
    const list = found.get(object.lender) ?? [];
    found.set(object.lender, list);
    list.push({
      objectId,
      number: object.number,
      title: object.title || object.number,
      loan: loanOf(documents, objectId),
      pieces,
      placed: pieces.filter((pieceId) => reader.where.placeOf(pieceId) !== null),
    });
  }
  return [...found]
    .map(([lender, records]) => ({
      lender,
      records: records.sort((a, b) => byNumber.compare(a.number, b.number) || (a.objectId < b.objectId ? -1 : 1)),
    }))
    .sort((a, b) => byNumber.compare(a.lender, b.lender));
}

const byNumber = new Intl.Collator('en', { numeric: true });

export interface DueStep {
  readonly what: string;
  /** ISO date; null where no day can be told. */
  readonly day: string | null;
}

/** What is due next of a loan; null when it is back, or has fallen away. */
export function dueOf(reader: ShowReader, loan: Loan & { readonly status: LoanStatus }): DueStep | null {
  const day = (...days: (string | undefined)[]): string | null =>
    days.find((one) => one !== undefined && one !== '') ?? null;
  const hang = reader.setting('hangBegins');
  switch (loan.status) {
    case 'wish':
      return { what: 'to be requested', day: day(reader.setting('agreeBy')) };
    case 'requested':
      return { what: 'the lender’s answer', day: day(reader.setting('agreeBy')) };
    case 'approved':
      return { what: 'the agreement, signed', day: day(loan.from, hang) };
    case 'agreement signed':
      return { what: 'to be fetched', day: day(loan.from, loan.arrives, hang) };
    case 'in transit':
      return { what: 'to arrive', day: day(loan.arrives, hang) };
    case 'received':
      return { what: 'to be checked and installed', day: day(hang) };
    case 'installed':
      return { what: 'to be back at the lender', day: day(loan.to, loan.leaves, reader.setting('closes')) };
    case 'returned':
    case 'declined':
    case 'cancelled':
      return null;
  }
}

/** Money as written, 'EUR 5,200' or '5 200,50 GBP'; null where no currency of three letters stands beside a sum. */
export function moneyFrom(text: string): { readonly currency: string; readonly sum: number } | null {
  const [, before, figures = '', after] =
    /^\s*(?:([A-Z]{3})\s*)?(\d[\d.,' \u00a0\u202f’]*?)\s*([A-Z]{3})?\s*$/.exec(text.slice(0, 60)) ?? [];
  const currency = before ?? after;
  if (currency === undefined || (before !== undefined && after !== undefined)) return null;
  // Two figures after the last point or comma are cents; every other mark parts thousands.
  const [, whole = figures, cents = '0'] = /^(.*)[.,](\d{2})$/.exec(figures) ?? [];
  const sum = Number(`${whole.replaceAll(/\D/g, '')}.${cents}`);
  return Number.isFinite(sum) ? { currency, sum } : null;
}

/** Values added up by currency, largest first, and how many could not be read; for those who may read them alone. */
export function totalsOf(
  documents: ShowDocuments,
  objectIds: readonly ObjectId[],
): {
  readonly sums: readonly { readonly currency: string; readonly sum: number }[];
  readonly without: number;
} {
  const sums = new Map<string, number>();
  let without = 0;
  for (const objectId of objectIds) {
    const money = moneyFrom(documents.get('values', objectId)?.value ?? '');
    if (money === null) without += 1;
    else sums.set(money.currency, (sums.get(money.currency) ?? 0) + money.sum);
  }
  return { sums: [...sums].map(([currency, sum]) => ({ currency, sum })).sort((a, b) => b.sum - a.sum), without };
}
