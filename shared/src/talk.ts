/** The facts of the `talk` document: proposals, remarks, and what each person has read of them. */
import type { Json, PaintId, PieceId, SampleId, SurfaceId, VignetteId } from './schema.ts';
import type { Role } from './seats.ts';

export type ProposalId = string;
export type RemarkId = string;

/** Whose word it is and when, as they stood at that moment. */
export interface Word {
  readonly by: string;
  readonly name: string;
  readonly role: Role;
  /** ISO 8601. */
  readonly at: string;
}

/** How a proposal ended. Its moves stay where they are, for the record. */
export interface ProposalOutcome extends Word {
  readonly outcome: 'taken' | 'taken in part' | 'declined' | 'withdrawn';
  readonly why: string;
}

/** An alternative to the hang, laid over it. Table root. */
export interface Proposal extends Word {
  readonly title: string;
  readonly reason: string;
  readonly outcome?: ProposalOutcome | null;
  readonly removed?: boolean;
}

/**
 * One fact of the hang as a proposal has it, with what the hang said when it was first touched. Without `to` the
 * proposal takes the fact away; without `from` there was none. Atomic root, keyed `proposalId|root|key`.
 */
export interface ProposedFact {
  readonly to?: Json;
  readonly from?: Json;
  /** A person has chosen to leave the hang as it is here. */
  readonly left?: boolean;
}

/** What a remark is tied to; it goes where that goes. A spot is mm in its surface's own frame. */
export type RemarkAbout =
  | { readonly kind: 'piece'; readonly pieceId: PieceId }
  | { readonly kind: 'vignette'; readonly vignetteId: VignetteId }
  | { readonly kind: 'wall'; readonly surface: SurfaceId }
  | { readonly kind: 'spot'; readonly surface: SurfaceId; readonly xMm: number; readonly yMm: number }
  | { readonly kind: 'paint'; readonly paintId: PaintId }
  | { readonly kind: 'proposal'; readonly proposalId: ProposalId };

/** Of whom an answer is asked, and by what day (ISO date). */
export interface Asked {
  readonly personId: string;
  readonly name: string;
  readonly byDay?: string;
}

/** A written comment, or an answer to one. Table root. */
export interface Remark extends Word {
  readonly about: RemarkAbout;
  readonly text: string;
  /** The remark it answers. */
  readonly of?: RemarkId;
  readonly asked?: Asked | null;
  readonly settled?: Word | null;
  readonly removed?: boolean;
}

/**
 * One person's word on a physical sample of a paint. Atomic root, one key for each light a person saw it under and one
 * for their approval; in `talk`, so that the artist and the conservator can speak for themselves.
 */
export interface SampleWord extends Word {
  readonly sampleId: SampleId;
  readonly said: 'seen' | 'approved';
  /** The light it was seen under, as written: 'daylight', 'gallery lamps'. */
  readonly under?: string;
}

export const COLLECTION_SAID = ['yes', 'maybe', 'no'] as const;
export type CollectionSaid = (typeof COLLECTION_SAID)[number];

/** One person's word on a thing of the collection. Atomic root, one key a person and a thing. */
export interface CollectionWord extends Word {
  /** The thing's number as written. */
  readonly number: string;
  readonly said: CollectionSaid;
}

/** One way to arrange a pool that somebody does not want to see again. Atomic root, keyed `ground/digest`. */
export interface DeclinedWord extends Word {
  /** What it was called. */
  readonly way: string;
}

/** A suggestion that somebody declined. It stays away from everybody as long as the checklist is made of the same records. */
export interface DeclinedSuggestion extends Word {
  /** SHA-256 of the checklist's record ids, as they stood. */
  readonly pool: string;
}
