/** Which wall or floor several selected pieces are about, and which of them are to be hung. */
import type { Judgements } from '@enfilade/shared/judgements';
import { carrierOf, LAYOUT_FLOOR, type PieceId, type SurfaceId, surfaceParts } from '@enfilade/shared/schema';
import type { View } from '../view-address.ts';

/** The faced wall; else the one wall all that hang of them share; else null. */
export function wallFor(judgements: Judgements, pieceIds: readonly PieceId[], view: View): SurfaceId | null {
  if (view.sheet === 'wall') return judgements.where.wallOf(view.surface) === null ? null : view.surface;
  const walls = new Set(
    pieceIds.flatMap((pieceId) => {
      const on = judgements.where.placeOf(pieceId)?.[0];
      return on === undefined || judgements.where.wallOf(on) === null ? [] : [on];
    }),
  );
  return walls.size === 1 ? ([...walls][0] ?? null) : null;
}

/** The room one is in; else the one all that are placed share; else null. */
export function roomFor(judgements: Judgements, pieceIds: readonly PieceId[], view: View): string | null {
  if (view.sheet === 'room') return view.roomId;
  if (view.sheet === 'wall') return surfaceParts(view.surface)?.roomId ?? null;
  const rooms = new Set(
    pieceIds.flatMap((pieceId) => surfaceParts(judgements.where.surfaceOf(pieceId) ?? '')?.roomId ?? []),
  );
  return rooms.size === 1 ? ([...rooms][0] ?? null) : null;
}

/** Where they may be lined up: that wall, or the layout floor where that is faced; null where there is none. */
export function levelFor(judgements: Judgements, pieceIds: readonly PieceId[], view: View): SurfaceId | null {
  return view.sheet === 'layout' ? LAYOUT_FLOOR : wallFor(judgements, pieceIds, view);
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

/** The piece that measures most; the first of equals, null for none. */
export function largestOf(pieceIds: readonly PieceId[], measure: (pieceId: PieceId) => number): PieceId | null {
  let [best, most] = [null as PieceId | null, -1];
  for (const pieceId of pieceIds) {
    const size = measure(pieceId);
    if (size > most) [best, most] = [pieceId, size];
  }
  return best;
}
