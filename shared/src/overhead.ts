/**
 * What hangs from a ceiling. Its place is [`roomId:ceiling`, x, y, lift, turn]: x and y in plan, as on the floor; lift
 * the drop from the ceiling to its top; turn clockwise as faced, that is as seen from below. Unturned it looks to the
 * foot wall, as a thing on the floor does. The ceiling is level: `heightMm` above the reference plane.
 */
import { type StandingView, standingIn } from '@enfilade/space/elevation';
import type { RoomShape, WallSide } from '@enfilade/space/room';
import type { Place } from './schema.ts';

/** A thing in a room: plan position of its centre, turn clockwise from above, height of its foot (mm). */
export interface InRoom {
  readonly xMm: number;
  readonly yMm: number;
  readonly turnDegrees: number;
  readonly baseMm: number;
}

/** A thing farther than this from a wall is not drawn in its elevation (own rule). */
export const BEFORE_A_WALL_MM = 1500;

/** Where in its room a thing hangs that is `heightMm` high. */
export function hungAt(room: RoomShape, [, xMm, yMm, dropMm, turn]: Place, heightMm: number): InRoom {
  return { xMm, yMm, turnDegrees: fromBelow(turn / 100), baseMm: room.heightMm - dropMm - heightMm };
}

/** The drop from the ceiling at which the foot of a thing of this height is so far above the reference plane (mm). */
export function dropFor(room: RoomShape, baseMm: number, heightMm: number): number {
  return room.heightMm - baseMm - heightMm;
}

/** A turn clockwise from above, as it is seen from below, and the other way about (degrees, 0 to 360). */
export function fromBelow(turnDegrees: number): number {
  return (((-turnDegrees % 360) + 360) % 360) + 0;
}

/**
 * How a thing in the room is seen when a wall is faced, or null where it is too far before it to be drawn. What hangs
 * overhead is drawn from the middle of the room on, so that each is seen in at least two of the four elevations.
 */
export function seenBefore(
  room: RoomShape,
  side: WallSide,
  at: InRoom,
  size: { readonly widthMm: number; readonly heightMm: number; readonly depthMm: number },
  overhead: boolean,
): StandingView | null {
  const view = standingIn(room, side, { ...at, ...size, turnCentidegrees: at.turnDegrees * 100 });
  if (view.distanceMm <= BEFORE_A_WALL_MM) return view;
  const across = side === 'head' || side === 'foot';
  const share = across ? at.yMm / room.depthMm : at.xMm / room.widthMm;
  const near = side === 'head' || side === 'right' ? share >= 0.5 : share <= 0.5;
  return overhead && near ? view : null;
}
