/** Doorways and windows: one thing in one wall, or shared by two rooms with a place of its own on either side. */
import type { Issue } from './issues.ts';
import type { RoomShape, WallSide } from './room.ts';
import { floorLevelAlong, WALL_SIDES, wallLengthOf } from './room.ts';

export interface OpeningSide {
  /** `${roomId}:foot|right|head|left` */
  readonly surface: string;
  /** Left edge from the wall's left corner as faced. */
  readonly xMm: number;
}

export interface Opening {
  readonly id: string;
  readonly kind: 'doorway' | 'window';
  readonly widthMm: number;
  readonly heightMm: number;
  /** Lower edge above the level plane. */
  readonly sillMm: number;
  readonly sides: readonly OpeningSide[];
}

/** A rectangle on a wall, placed by its centre as pieces are (mm). */
export interface WallBox {
  readonly id: string;
  readonly kind: string;
  readonly xMm: number;
  readonly yMm: number;
  readonly widthMm: number;
  readonly heightMm: number;
}

/**
 * The openings of a surface as boxes (mm, centre, y up). Where the room is given, a doorway without a sill reaches down
 * to the floor under it, which may lie below the level plane.
 */
export function openingsOn(surface: string, openings: readonly Opening[], shape?: RoomShape): readonly WallBox[] {
  return openings.flatMap((opening) =>
    opening.sides
      .filter((side) => side.surface === surface)
      .map(({ xMm }) => {
        const top = opening.sillMm + opening.heightMm;
        const foot = footOf(opening, surface, xMm, shape);
        return {
          id: opening.id,
          kind: opening.kind,
          xMm: xMm + opening.widthMm / 2,
          yMm: (top + foot) / 2,
          widthMm: opening.widthMm,
          heightMm: top - foot,
        };
      }),
  );
}

/** The side of an opening one sees into from a surface, or null where it leads nowhere we know. */
export function otherSideOf(opening: Opening, surface: string): OpeningSide | null {
  if (!opening.sides.some((side) => side.surface === surface)) return null;
  return opening.sides.find((side) => side.surface !== surface) ?? null;
}

/** What cannot be true of the openings as typed: outside a wall, overlapping, both sides in one room, and the like. */
export function openingIssuesOf(
  openings: readonly Opening[],
  shapeOf: (roomId: string) => RoomShape | undefined,
): readonly Issue[] {
  const issues: Issue[] = [];
  for (const [i, opening] of openings.entries()) {
    const where = opening.id;
    const add = (what: string, value: string | number) => issues.push({ where, what, value });
    if (!(opening.widthMm > 0)) add('has no width', opening.widthMm);
    if (!(opening.heightMm > 0)) add('has no height', opening.heightMm);
    if (opening.sides.length === 0) add('is in no wall', 0);
    if (opening.sides.length > 2) add('has more than two sides', opening.sides.length);
    const rooms = opening.sides.map((side) => wallOf(side.surface)?.roomId ?? side.surface);
    const twice = rooms.find((room, n) => rooms.indexOf(room) !== n);
    if (twice !== undefined) add('has two sides in one room', twice);
    for (const side of opening.sides) {
      const wall = wallOf(side.surface);
      const shape = wall ? shapeOf(wall.roomId) : undefined;
      if (!wall || !shape) {
        add('is in a wall that is not known', side.surface);
        continue;
      }
      const length = wallLengthOf(shape, wall.side);
      if (side.xMm < 0) add('starts before the wall', side.xMm);
      if (side.xMm + opening.widthMm > length) add('runs past the end of the wall', side.xMm + opening.widthMm);
      if (opening.sillMm + opening.heightMm > shape.heightMm) {
        add('is higher than the wall', opening.sillMm + opening.heightMm);
      }
      const floor = Math.min(
        floorLevelAlong(shape, wall.side, side.xMm),
        floorLevelAlong(shape, wall.side, side.xMm + opening.widthMm),
      );
      if (opening.sillMm < Math.min(0, floor)) add('starts below the floor', opening.sillMm);
      for (const other of openings.slice(i + 1)) {
        if (other.sides.some((its) => its.surface === side.surface && overlap(opening, side.xMm, other, its.xMm))) {
          add('overlaps another opening', other.id);
        }
      }
    }
  }
  return issues;
}

function footOf(opening: Opening, surface: string, xMm: number, shape: RoomShape | undefined): number {
  const wall = wallOf(surface);
  if (!shape || !wall || opening.kind !== 'doorway' || opening.sillMm !== 0) return opening.sillMm;
  const atLeft = floorLevelAlong(shape, wall.side, xMm);
  const atRight = floorLevelAlong(shape, wall.side, xMm + opening.widthMm);
  return Math.min(0, atLeft, atRight);
}

function overlap(a: Opening, aX: number, b: Opening, bX: number): boolean {
  const across = aX < bX + b.widthMm && bX < aX + a.widthMm;
  const up = a.sillMm < b.sillMm + b.heightMm && b.sillMm < a.sillMm + a.heightMm;
  return across && up;
}

function wallOf(surface: string): { readonly roomId: string; readonly side: WallSide } | null {
  const cut = surface.indexOf(':');
  const side = WALL_SIDES.find((name) => name === surface.slice(cut + 1));
  return cut > 0 && side ? { roomId: surface.slice(0, cut), side } : null;
}
