/** What handlers of acts and of paper are given, and what they answer with. */
import type { ShowDocuments } from '@enfilade/shared/documents';
import type { DocumentName, Person } from '@enfilade/shared/seats';
import type { Answer } from './answers.ts';
import type { Images } from './images.ts';
import type { Kept } from './kept.ts';
import type { Seats } from './seats.ts';
import type { Session } from './session.ts';

export interface Desk {
  /** Who asks, as the server knows them. */
  readonly person: Person;
  /** What is committed; read it, write through `session.act`. A person's power over each document is the handler's to ask. */
  readonly documents: ShowDocuments;
  readonly sessions: ReadonlyMap<DocumentName, Session>;
  readonly images: Images;
  /** States of the hang and frozen lists, under their digests. */
  readonly kept: Kept;
  readonly seats: Seats;
  /** The seat they ask from. */
  readonly seatId: string;
}

/** `POST /seat/<id>/acts/<name>`, a JSON body of at most 64 KB. */
export type ActHandler = (desk: Desk & { readonly body: unknown }) => Promise<Answer>;

/** `GET /seat/<id>/paper/<name>?…` */
export type PaperHandler = (desk: Desk & { readonly parameters: URLSearchParams }) => Promise<Answer>;
