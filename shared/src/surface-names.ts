/** What a surface is called on screen. */

import { WALL_SIDES, type WallSide, wallNameOf } from '@enfilade/space/room';
import type { ShowDocuments } from './documents.ts';
import type { Judgements } from './judgements.ts';
import { carrierOf, LAYOUT_FLOOR, openingOf, type SurfaceId, surfaceParts } from './schema.ts';

export function isWallSide(side: string): side is WallSide {
  return (WALL_SIDES as readonly string[]).includes(side);
}

/** 'east wall', 'floor', 'ceiling', 'layout floor': without the room. */
export function shortSurfaceName(documents: ShowDocuments, surface: SurfaceId): string {
  if (surface === LAYOUT_FLOOR) return 'layout floor';
  const parts = surfaceParts(surface);
  const room = parts === null ? undefined : documents.get('rooms', parts.roomId);
  if (parts === null || room === undefined) return 'a surface that is gone';
  return isWallSide(parts.side) ? wallNameOf(room, parts.side) : parts.side;
}

/** 'Dye House, east wall'. */
export function surfaceName(documents: ShowDocuments, surface: SurfaceId): string {
  const parts = surfaceParts(surface);
  const room = parts === null ? undefined : documents.get('rooms', parts.roomId);
  const short = shortSurfaceName(documents, surface);
  return room === undefined ? capital(short) : `${room.name}, ${short}`;
}

/** What a place is on, in words: 'Dye House, east wall', 'Long bench, top', 'the doorway'. */
export function onName(judgements: Judgements, on: string): string {
  const carrier = carrierOf(on);
  if (carrier !== null) {
    const levels = judgements.where.levelsOf(carrier.pieceId).length;
    const level = carrier.level === 0 ? 'top' : `level ${carrier.level + 1}`;
    return levels > 1 || carrier.level === 0 ? `${judgements.nameOf(carrier.pieceId)}, ${level}` : level;
  }
  const opening = openingOf(on);
  if (opening !== null) return judgements.documents.get('openings', opening)?.name ?? 'an opening that is gone';
  return surfaceName(judgements.documents, on);
}

export function capital(text: string): string {
  return text.charAt(0).toUpperCase() + text.slice(1);
}
