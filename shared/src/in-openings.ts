/**
 * What fills or hangs in a doorway or window. Its place is [`opening:id`, x, y, lift, turn]: x to its centre from the
 * opening's left edge as seen from its first side, y up from its sill, turn clockwise as seen from the first side; lift
 * how far it stands out of the wall's middle towards the first side. It is seen in the elevation of both sides, from the
 * second mirrored, and in the plan of both rooms. Its front is to the first side, as that of what it carries; which of
 * its faces a thing without a front shows is not recorded.
 */
import { planFromWall, type RoomShape, type WallSide } from '@enfilade/space/room';
import type { InRoom } from './overhead.ts';
import type { Opening, Place, SurfaceId } from './schema.ts';

/** As faced on a wall: centre (mm) and turn clockwise (degrees). */
export interface OnFace {
  readonly xMm: number;
  readonly yMm: number;
  readonly turnDegrees: number;
}

/** A thing in an opening as one of its sides is faced; null for a surface it is not in. */
export function onFaceOf(opening: Opening, surface: SurfaceId, [, x, y, , turn]: Place): OnFace | null {
  const index = opening.sides.findIndex((side) => side.surface === surface);
  const side = opening.sides[index];
  if (side === undefined) return null;
  const first = index === 0;
  const mirrored = (((first ? turn : -turn) % 36_000) + 36_000) % 36_000;
  return {
    xMm: side.xMm + (first ? x : opening.widthMm - x),
    yMm: opening.sillMm + y,
    turnDegrees: mirrored / 100,
  };
}

/** The place in an opening of what is held at (x, y) of one of its walls; null where it is not in that wall. */
export function placeIn(
  openingId: string,
  opening: Opening,
  surface: SurfaceId,
  xMm: number,
  yMm: number,
  turnCentidegrees = 0,
): Place | null {
  const index = opening.sides.findIndex((side) => side.surface === surface);
  const side = opening.sides[index];
  if (side === undefined) return null;
  const first = index === 0;
  const x = first ? xMm - side.xMm : opening.widthMm - (xMm - side.xMm);
  return [
    `opening:${openingId}`,
    Math.round(x),
    Math.round(yMm - opening.sillMm),
    0,
    first ? turnCentidegrees : -turnCentidegrees,
  ];
}

/** A thing of this height in an opening, in the plan of the room one of its sides belongs to. */
export function inPlanOf(
  opening: Opening,
  surface: SurfaceId,
  room: RoomShape,
  side: WallSide,
  at: Place,
  heightMm: number,
): InRoom | null {
  const face = onFaceOf(opening, surface, at);
  if (face === null) return null;
  const first = opening.sides[0]?.surface === surface;
  const spot = planFromWall(room, side, face.xMm, first ? at[3] : 0 - at[3]);
  return { ...spot, turnDegrees: (TURN_OF_BACK[side] + (first ? 0 : 180)) % 360, baseMm: face.yMm - heightMm / 2 };
}

/** A thing whose back is to this wall has this turn (degrees clockwise from above; 0 faces the foot wall). */
export const TURN_OF_BACK: Record<WallSide, number> = { head: 0, right: 90, foot: 180, left: 270 };
