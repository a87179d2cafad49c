/** What is asked and found where one thing is brought beside another, on a wall as in plan. */
import { acrossGapMm, type Box, upGapMm } from '@enfilade/arrangement/boxes';
import type { Judgements } from './judgements.ts';
import type { PieceId, Place } from './schema.ts';

export interface BesidePlace {
  readonly place: Place;
  /** As faced; null where it is only the nearest place that is free, for there is no room beside it. */
  readonly side: 'left' | 'right' | null;
  /** From the one to the other, edge to edge (mm). */
  readonly gapMm: number;
}

/** Why a thing cannot come beside another at all, as a sentence without its stop. */
export interface NoPlace {
  readonly why: string;
}

export interface About {
  readonly judgements: Judgements;
  readonly anchor: PieceId;
  readonly pieceId: PieceId;
}

/** Between two boxes, edge to edge (mm); 0 where they touch. */
export function apart(a: Box, b: Box): number {
  return Math.round(Math.hypot(Math.max(0, acrossGapMm(a, b)), Math.max(0, upGapMm(a, b))));
}

export function boxOf({ xMm, yMm, widthMm, heightMm }: Box): Box {
  return { xMm, yMm, widthMm, heightMm };
}
