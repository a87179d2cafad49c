/** One line of what waits. */
import type { ObjectId, PaintId, PieceId, SurfaceId, VignetteId } from './schema.ts';
import type { Role } from './seats.ts';
import type { ProposalId, RemarkAbout, RemarkId } from './talk.ts';

export type WaitingKind =
  | 'clash'
  | 'loan'
  | 'sign-off'
  | 'question'
  | 'proposal'
  | 'sample'
  | 'size'
  | 'picture'
  | 'caution';

/** Where a line leads. */
export type WaitingTarget =
  | { readonly kind: 'vignette'; readonly vignetteId: VignetteId; readonly surface: SurfaceId | null }
  | { readonly kind: 'pieces'; readonly pieceIds: readonly PieceId[] }
  | { readonly kind: 'remark'; readonly remarkId: RemarkId; readonly about: RemarkAbout }
  | { readonly kind: 'proposal'; readonly proposalId: ProposalId }
  | { readonly kind: 'paint'; readonly paintId: PaintId }
  | { readonly kind: 'loans' }
  | { readonly kind: 'cautions' };

export interface WaitingLine {
  /** The same on every screen while the line stands. */
  readonly id: string;
  readonly kind: WaitingKind;
  readonly title: string;
  readonly detail: string;
  /** Roles and persons it waits for; a question waits for a person, most others for whoever holds the role. */
  readonly roles: readonly Role[];
  readonly persons: readonly { readonly id: string; readonly name: string }[];
  /** ISO date, or null where no day is set. */
  readonly byDay: string | null;
  readonly goes: WaitingTarget;
  /** A lent record that fell away: what breaks with it, and what could stand in, is told of it. */
  readonly lost?: ObjectId;
}
