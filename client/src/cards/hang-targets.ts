/** Which wall several selected pieces are about, and the boxes they are there. */
import type { Box } from '@enfilade/arrangement/boxes';
import type { Judgements } from '@enfilade/shared/judgements';
import { carrierOf, type PieceId, type SurfaceId } from '@enfilade/shared/schema';
import type { View } from '../view-address.ts';
import { outerBoxOf } from './gap-moves.ts';

/** The faced wall; else the one wall all that hang of them share; else null. */
export function wallFor(judgements: Judgements, pieceIds: readonly PieceId[], view: View): SurfaceId | null {
  if (view.sheet === 'wall') return view.surface;
  const walls = new Set(
    pieceIds.flatMap((pieceId) => {
      const on = judgements.where.placeOf(pieceId)?.[0];
      return on === undefined || judgements.where.wallOf(on) === null ? [] : [on];
    }),
  );
  return walls.size === 1 ? ([...walls][0] ?? null) : null;
}

/** Pieces that may be hung: a load stays on its carrier, and a carrier that stands is no thing to hang. */
export function hangable(judgements: Judgements, pieceIds: readonly PieceId[]): PieceId[] {
  return pieceIds.filter((pieceId) => {
    const at = judgements.where.placeOf(pieceId);
    return at === null || carrierOf(at[0]) === null;
  });
}

/** Left to right as they hang on the wall, then those that do not hang there yet, as they were taken. */
export function leftToRight(judgements: Judgements, pieceIds: readonly PieceId[], wall: SurfaceId): PieceId[] {
  const x = (pieceId: PieceId): number => {
    const at = judgements.where.placeOf(pieceId);
    return at !== null && at[0] === wall ? at[1] : Number.POSITIVE_INFINITY;
  };
  return [...pieceIds].sort((a, b) => (x(a) === x(b) ? 0 : x(a) - x(b)));
}

/** The upright box of a piece on its wall; null where it is not on it. */
export function boxOn(judgements: Judgements, pieceId: PieceId, wall: SurfaceId): Box | null {
  const at = judgements.where.placeOf(pieceId);
  const size = judgements.sizeOf(pieceId);
  if (at === null || size === null || at[0] !== wall) return null;
  return outerBoxOf({ xMm: at[1], yMm: at[2], widthMm: size.widthMm, heightMm: size.heightMm }, at[4] / 100);
}

/** The piece that measures most; the first of equals, null for none. */
export function largestOf(pieceIds: readonly PieceId[], measure: (pieceId: PieceId) => number): PieceId | null {
  let [best, most] = [null as PieceId | null, -1];
  for (const pieceId of pieceIds) {
    const size = measure(pieceId);
    if (size > most) [best, most] = [pieceId, size];
  }
  return best;
}
