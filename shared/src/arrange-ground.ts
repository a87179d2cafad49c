/** What an arrangement finds on its wall or floor: the room there is, what is kept clear, and the pieces as boxes. */
import type { Box, Extent } from '@enfilade/arrangement/boxes';
import type { HangPiece } from '@enfilade/arrangement/hang-task';
import type { StandingThing } from '@enfilade/arrangement/mass-task';
import type { LabD65 } from '@enfilade/colour/lab';
import { REACH_MM } from '@enfilade/practice/cautions';
import { planFromWall, type RoomShape, WALL_SIDES, wallLengthOf } from '@enfilade/space/room';
import { outerBoxOf } from './aligning.ts';
import type { ArrangeKind, HangEngineTask } from './arrange-task.ts';
import type { Judgements } from './judgements.ts';
import type { PieceId, SurfaceId } from './schema.ts';
import { digestOf, toCanonicalText } from './sign-off.ts';
import { BEFORE_IT_MM } from './whereabouts.ts';

/** Feet and brooms; a salon starts higher, 24 in. Common practice, no source. */
const ABOVE_FLOOR_MM = 250;
const SALON_ABOVE_FLOOR_MM = 600;
/** 6 in from corners. Common practice, no source. */
const FROM_CORNER_MM = 150;
const FROM_CEILING_MM = 100;
/** What a doorway needs in front of it to be gone through: 48 in. Common practice; local codes decide. */
const BEFORE_A_DOOR_MM = 1220;

/** Pieces that may be rearranged, and those that stay where a person has pinned them. */
export function freeOf(judgements: Judgements, pieceIds: readonly PieceId[]): PieceId[] {
  return pieceIds.filter((pieceId) => !judgements.isPinned(pieceId));
}

/** Of a wall: where pieces may be, and what is there that does not go. Null where it is none. */
export function wallGround(
  judgements: Judgements,
  surface: SurfaceId,
  kind: ArrangeKind,
  going: ReadonlySet<PieceId>,
): { readonly extent: Extent; readonly keepClear: readonly Box[] } | null {
  const wall = judgements.where.wallOf(surface);
  if (wall === null) return null;
  const floor = Math.max(wall.floorAt(0), wall.floorAt(wall.lengthMm));
  const tallest = Math.max(0, ...[...going].map((id) => judgements.sizeOf(id)?.heightMm ?? 0));
  const salon = kind === 'salon' || kind === 'double';
  const low = floor + (salon ? SALON_ABOVE_FLOOR_MM : ABOVE_FLOOR_MM);
  const topMm = wall.heightMm - FROM_CEILING_MM;
  const moving = withLoads(judgements, going);
  const others = judgements
    .elevationOf(surface)
    .filter(({ pieceId, standOffMm }) => !moving.has(pieceId) && standOffMm <= BEFORE_IT_MM)
    .map((seen) => boxOf(outerBoxOf(seen, seen.turnDegrees)));
  return {
    extent: {
      leftMm: FROM_CORNER_MM,
      rightMm: wall.lengthMm - FROM_CORNER_MM,
      // A piece nearly as high as the wall hangs as low as it must.
      bottomMm: Math.max(floor + 50, Math.min(low, topMm - tallest)),
      topMm,
    },
    keepClear: [...judgements.keepClearOn(surface, moving).map(boxOf), ...others],
  };
}

/** A wall with pieces to be hung on it, as every hang's engine takes it. */
export function wallTask(
  judgements: Judgements,
  asked: { readonly surface: SurfaceId; readonly kind: ArrangeKind; readonly gapMm: number },
  pieceIds: readonly PieceId[],
): HangEngineTask | null {
  const ground = wallGround(judgements, asked.surface, asked.kind, new Set(pieceIds));
  if (ground === null) return null;
  return {
    surface: ground.extent,
    keepClear: ground.keepClear,
    pieces: pieceIds.map((pieceId) => hangPieceOf(judgements, pieceId, asked.surface)),
    gapMm: asked.gapMm,
    centreLineMm: judgements.setting('centreLineMm'),
    reachMm: REACH_MM,
  };
}

function hangPieceOf(judgements: Judgements, pieceId: PieceId, surface: SurfaceId): HangPiece {
  const size = judgements.sizeOf(pieceId);
  const weightKg = judgements.weightOf(pieceId);
  const at = judgements.where.placeOf(pieceId);
  const pinned = judgements.isPinned(pieceId) && at !== null && at[0] === surface;
  const box = { widthMm: size?.widthMm ?? 1, heightMm: size?.heightMm ?? 1 };
  return {
    ...(pinned ? outerBoxOf(box, at[4] / 100) : box),
    depthMm: (size?.depthMm ?? 0) + (pinned ? at[3] : 0),
    ...(weightKg === null ? {} : { weightKg }),
    ...(pinned ? { pinnedAt: { xMm: at[1], yMm: at[2] } } : {}),
  };
}

/** As it stands; a depth that is not recorded is taken to be its width, which errs on the side of room. */
export function standingThing(judgements: Judgements, pieceId: PieceId): StandingThing {
  const size = judgements.sizeOf(pieceId);
  const widthMm = size?.widthMm || 1;
  return { widthMm, heightMm: size?.heightMm || 1, depthMm: size?.depthMm || widthMm };
}

/** The mean of what is seen of a piece, by share; null where its picture says nothing yet. */
export function meanColourOf(judgements: Judgements, pieceId: PieceId): LabD65 | null {
  const body = judgements.pictureOf(pieceId)?.body ?? [];
  const whole = body.reduce((sum, { share }) => sum + share, 0);
  if (whole === 0) return null;
  const mean = (of: (lab: LabD65) => number) => body.reduce((sum, { lab, share }) => sum + of(lab) * share, 0) / whole;
  return { L: mean(({ L }) => L), a: mean(({ a }) => a), b: mean(({ b }) => b) };
}

/** Of a floor in plan: the room inside its walls, what stands there, and the ways through its doors. */
export function floorGround(
  judgements: Judgements,
  roomId: string,
  going: ReadonlySet<PieceId>,
): { readonly extent: Extent; readonly keepClear: readonly Box[] } | null {
  const floor = `${roomId}:floor`;
  const room = judgements.where.roomOf(floor);
  if (room === null) return null;
  const moving = withLoads(judgements, going);
  const standing = judgements.where
    .planOf(floor)
    .filter(({ pieceId, held }) => held === undefined && !moving.has(pieceId))
    .map((seen) => boxOf(outerBoxOf(seen, seen.turnDegrees)));
  return {
    extent: { leftMm: 0, rightMm: room.widthMm, bottomMm: 0, topMm: room.depthMm },
    keepClear: [...standing, ...waysOf(judgements, roomId, room)],
  };
}

function waysOf(judgements: Judgements, roomId: string, room: RoomShape): Box[] {
  return WALL_SIDES.flatMap((side) =>
    judgements.openingsOn(`${roomId}:${side}`).flatMap(({ opening, xMm, widthMm }): Box[] => {
      if (opening.kind !== 'doorway' || xMm > wallLengthOf(room, side)) return [];
      const a = planFromWall(room, side, xMm - widthMm / 2, 0);
      const b = planFromWall(room, side, xMm + widthMm / 2, BEFORE_A_DOOR_MM);
      return [
        {
          xMm: (a.xMm + b.xMm) / 2,
          yMm: (a.yMm + b.yMm) / 2,
          widthMm: Math.abs(a.xMm - b.xMm),
          heightMm: Math.abs(a.yMm - b.yMm),
        },
      ];
    }),
  );
}

export function withLoads(judgements: Judgements, pieceIds: Iterable<PieceId>): Set<PieceId> {
  const all = new Set<PieceId>();
  for (const pieceId of pieceIds) {
    all.add(pieceId);
    for (const load of judgements.where.loadOf(pieceId)) all.add(load);
  }
  return all;
}

function boxOf({ xMm, yMm, widthMm, heightMm }: Box): Box {
  return { xMm, yMm, widthMm, heightMm };
}

/** One word for what answers depend on: the pool with its sizes, and what it finds. Settings are no part of it. */
export function groundDigest(parts: object): string {
  return digestOf(toCanonicalText(parts)).slice(0, 24);
}
