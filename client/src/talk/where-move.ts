/** Where a move is to be seen, and going there. */
import { membersOf } from '@enfilade/shared/commands';
import type { ProposedMove } from '@enfilade/shared/proposal-moves';
import { LAYOUT_FLOOR, type PieceId, type RoomId, type SurfaceId, surfaceParts } from '@enfilade/shared/schema';
import { isWallSide } from '@enfilade/shared/surface-names';
import { choose } from '../selection.ts';
import { roomOfView } from '../shell/current-view.ts';
import { go, type View } from '../view-address.ts';
import type { InProposal } from './in-proposal.ts';

/** The view a surface is best seen in: a wall or ceiling faced, a floor in its room's fold-out, or the layout floor. */
export function viewOfSurface(surface: SurfaceId | undefined, firstRoom: RoomId): View {
  if (surface === LAYOUT_FLOOR) return { sheet: 'layout' };
  const parts = surface === undefined ? null : surfaceParts(surface);
  if (surface === undefined || parts === null) return { sheet: 'room', roomId: firstRoom };
  return isWallSide(parts.side) || parts.side === 'ceiling'
    ? { sheet: 'wall', surface }
    : { sheet: 'room', roomId: parts.roomId };
}

/** The surface a move is about: a wall, or where a piece is put, or where it was while it is put nowhere. */
export function surfaceOfMove(inside: InProposal, move: ProposedMove): SurfaceId | null {
  if (move.about.kind === 'wall') return move.about.surface;
  return move.about.kind === 'vignette' ? null : surfaceOfPiece(inside, move.about.pieceId);
}

function surfaceOfPiece({ hang, shown }: InProposal, pieceId: PieceId): SurfaceId | null {
  return shown.judgements.where.surfaceOf(pieceId) ?? hang.judgements.where.surfaceOf(pieceId);
}

/** Whether a view shows a surface; what stands on a floor is seen before its room's walls too. */
export function shows(view: View, surface: SurfaceId): boolean {
  if (view.sheet === 'layout' || surface === LAYOUT_FLOOR) return view.sheet === 'layout' && surface === LAYOUT_FLOOR;
  if (view.sheet === 'wall' && !surface.endsWith(':floor')) return view.surface === surface;
  return surfaceParts(surface)?.roomId === roomOfView(view);
}

/** Selects what a move is about, on the wall it is on. */
export function showMove(inside: InProposal, move: ProposedMove, view: View | null): void {
  const { about } = move;
  if (about.kind === 'wall') goWhere(about.surface, view);
  else if (about.kind === 'piece') showPieces(inside, [about.pieceId], view);
  else showPieces(inside, membersOf(inside.shown.documents, about.vignetteId), view);
}

/** Selects pieces, on the wall the first of them is on. */
export function showPieces(inside: InProposal, pieceIds: readonly PieceId[], view: View | null): void {
  const [first] = pieceIds;
  goWhere(first === undefined ? null : surfaceOfPiece(inside, first), view);
  choose(pieceIds);
}

function goWhere(surface: SurfaceId | null, view: View | null): void {
  if (surface === null || view === null || shows(view, surface)) return;
  go(viewOfSurface(surface, surfaceParts(surface)?.roomId ?? ''));
}
