/** Paperwork that the server makes, by name: `GET /seat/<id>/paper/<name>`. */
import type { ShowDocuments } from '@enfilade/shared/documents';
import { elevationSheetsOf } from '@enfilade/shared/elevation-sheet';
import type { Judgements } from '@enfilade/shared/judgements';
import { loanListSheetsOf } from '@enfilade/shared/loan-list-sheet';
import { newestOf } from '@enfilade/shared/print-stamps';
import type { Refusal, Version } from '@enfilade/shared/protocol';
import { mayRead, type Person } from '@enfilade/shared/seats';
import { digestOf } from '@enfilade/shared/sign-off';
import type { Stamp } from '@enfilade/shared/title-block';
import type * as Y from 'yjs';
import { toPdf } from './sheet-pdf.ts';
import { raiseVersion } from './versions.ts';

export interface PaperRequest {
  readonly person: Person;
  readonly query: URLSearchParams;
  readonly documents: ShowDocuments;
  readonly judgements: Judgements;
  /** Writes the record document, durably. */
  readonly record: (change: (doc: Y.Doc) => void) => Promise<void>;
}

export type PaperAnswer =
  | { readonly status: 200; readonly type: string; readonly fileName: string; readonly body: Buffer }
  | { readonly status: 400 | 404; readonly refusal: Refusal };

export const PAPERS: Readonly<Record<string, (request: PaperRequest) => Promise<PaperAnswer>>> = {
  'elevation.pdf': elevation,
  'loan-list.pdf': loanList,
};

/** A wall's elevation and hanging schedule. Printing raises the version, unless these very facts have one already. */
async function elevation(request: PaperRequest): Promise<PaperAnswer> {
  const surface = request.query.get('surface');
  if (surface === null) return refused(400, 'Which wall is to be printed is missing.', 'surface');
  const draft = elevationSheetsOf(request.judgements, surface, { version: 0, at: '', by: '' });
  if (draft.length === 0) return refused(404, `There is no wall '${surface.slice(0, 80)}' in this show.`, 'surface');
  const stamp = await stampOf(request, `elevation ${surface}`, digestOf(JSON.stringify(draft)));
  const sheets = elevationSheetsOf(request.judgements, surface, stamp);
  const title = sheets[0]?.title ?? surface;
  const name = `${title
    .replace(/, sheet.*$/, '')
    .replace(/[^a-z0-9]+/gi, '-')
    .toLowerCase()}-v${stamp.version}.pdf`;
  return { status: 200, type: 'application/pdf', fileName: name, body: await toPdf(sheets, { title }) };
}

/** A lender's loan list; with insurance values for those alone who may read them. */
async function loanList(request: PaperRequest): Promise<PaperAnswer> {
  const lender = request.query.get('lender');
  if (lender === null) return refused(400, 'Which lender’s list is to be printed is missing.', 'lender');
  // The digest stands in the record, which everybody reads: values are no part of what it is of, or they could be guessed from it.
  const draft = loanListSheetsOf(request.judgements, lender, false, { version: 0, at: '', by: '' });
  if (draft.length === 0) return refused(404, `Nobody called '${lender.slice(0, 80)}' lends to this show.`, 'lender');
  const stamp = await stampOf(request, `loan list ${lender}`, digestOf(JSON.stringify(draft)));
  const sheets = loanListSheetsOf(request.judgements, lender, mayRead(request.person.role, 'private'), stamp);
  const name = `loan-list-${lender.replace(/[^a-z0-9]+/gi, '-').toLowerCase()}-v${stamp.version}.pdf`;
  return {
    status: 200,
    type: 'application/pdf',
    fileName: name,
    body: await toPdf(sheets, { title: `Loan list, ${lender}` }),
  };
}

async function stampOf(request: PaperRequest, what: string, digest: string): Promise<Stamp> {
  // A viewer looks; a version is raised by those who work on the show.
  if (request.person.role === 'viewer') {
    const newest = newestOf(request.documents.all('versions').values(), what);
    return newest?.digest === digest
      ? stampFrom(newest)
      : { version: 0, at: momentText(new Date().toISOString()), by: '' };
  }
  return stampFrom((await raiseVersion(request.record, { what, digest, by: request.person.name })).version);
}

function stampFrom({ number, at, by }: Version): Stamp {
  return { version: number, at: momentText(at), by };
}

/** "25 November 2026, 14:02 UTC": the moment in words, the same on every machine. */
function momentText(iso: string): string {
  const date = new Date(iso);
  const day = date.toLocaleDateString('en-GB', { day: 'numeric', month: 'long', year: 'numeric', timeZone: 'UTC' });
  return `${day}, ${iso.slice(11, 16)} UTC`;
}

function refused(status: 400 | 404, what: string, where: string): PaperAnswer {
  return { status, refusal: { what, where } };
}
