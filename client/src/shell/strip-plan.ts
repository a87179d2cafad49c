/** Where each room's plan stands in the strip: a row, on the axis of the doorways they share. Pure; lengths in mm. */
import type { Opening, Room, RoomId } from '@enfilade/shared/schema';
import { type HeadFaces, WALL_SIDES, type WallSide } from '@enfilade/space/room';

export interface StripRoom {
  readonly roomId: RoomId;
  readonly room: Room;
  /** Of its head left corner, y downward. */
  readonly leftMm: number;
  readonly topMm: number;
}

export interface StripPlan {
  readonly rooms: readonly StripRoom[];
  readonly widthMm: number;
  readonly heightMm: number;
}

export interface StripSpan {
  readonly xMm: number;
  readonly yMm: number;
  readonly widthMm: number;
  readonly heightMm: number;
}

/** Rooms in their order, heads up, `betweenMm` apart; a shared doorway in facing walls is drawn straight through. */
export function stripPlanOf(
  rooms: ReadonlyMap<RoomId, Room>,
  openings: Iterable<Opening>,
  betweenMm: number,
): StripPlan {
  const shared = [...openings].filter(({ sides }) => sides.length === 2);
  const row = [...rooms].sort(([idA, a], [idB, b]) => a.order - b.order || (idA < idB ? -1 : 1));
  const placed: StripRoom[] = [];
  let leftMm = 0;
  for (const [index, [roomId, room]] of row.entries()) {
    const before = placed[index - 1];
    let topMm = before === undefined ? 0 : before.topMm + before.room.depthMm - room.depthMm;
    const doorway = before === undefined ? undefined : shared.find((opening) => joins(opening, before.roomId, roomId));
    if (before !== undefined && doorway !== undefined) {
      const [from, to] = sidesOf(doorway, before.roomId);
      // Along a right wall x runs from the head down; along a left wall from the foot up.
      const yFrom = from.xMm + doorway.widthMm / 2;
      const yTo = room.depthMm - to.xMm - doorway.widthMm / 2;
      topMm = before.topMm + yFrom - yTo;
    }
    placed.push({ roomId, room, leftMm, topMm });
    leftMm += room.widthMm + betweenMm;
  }
  const top = Math.min(0, ...placed.map((room) => room.topMm));
  const rowed = placed.map((room) => ({ ...room, topMm: room.topMm - top }));
  return {
    rooms: rowed,
    widthMm: Math.max(0, leftMm - betweenMm),
    heightMm: Math.max(0, ...rowed.map(({ topMm, room }) => topMm + room.depthMm)),
  };
}

function sidesOf(opening: Opening, firstRoom: RoomId) {
  const [a, b] = opening.sides as [Opening['sides'][number], Opening['sides'][number]];
  return a.surface.startsWith(`${firstRoom}:`) ? ([a, b] as const) : ([b, a] as const);
}

function joins(opening: Opening, left: RoomId, right: RoomId): boolean {
  const [from, to] = sidesOf(opening, left);
  return from.surface === `${left}:right` && to.surface === `${right}:left`;
}

/** The part of a wall from x, so wide, drawn `thickMm` thick inside the plan (mm in the strip, y downward). */
export function wallSpanOf(at: StripRoom, side: WallSide, xMm: number, widthMm: number, thickMm: number): StripSpan {
  const { leftMm, topMm, room } = at;
  switch (side) {
    case 'head':
      return { xMm: leftMm + xMm, yMm: topMm, widthMm, heightMm: thickMm };
    case 'foot':
      return {
        xMm: leftMm + room.widthMm - xMm - widthMm,
        yMm: topMm + room.depthMm - thickMm,
        widthMm,
        heightMm: thickMm,
      };
    case 'left':
      return { xMm: leftMm, yMm: topMm + room.depthMm - xMm - widthMm, widthMm: thickMm, heightMm: widthMm };
    case 'right':
      return { xMm: leftMm + room.widthMm - thickMm, yMm: topMm + xMm, widthMm: thickMm, heightMm: widthMm };
  }
}

/** A room in the strip, px. */
export function boxOf(at: StripRoom, pxPerMm: number) {
  return {
    x: at.leftMm * pxPerMm,
    y: at.topMm * pxPerMm,
    w: at.room.widthMm * pxPerMm,
    d: at.room.depthMm * pxPerMm,
  };
}

/** Degrees clockwise from straight up to north, when heads are drawn up. */
export function northDegreesOf(headFaces: HeadFaces): number {
  return { north: 0, east: 270, south: 180, west: 90 }[headFaces];
}

export const STRIP_SIDES: readonly WallSide[] = WALL_SIDES;
