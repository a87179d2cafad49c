/** The hanging schedule of a wall: what a preparator takes up the ladder, in the order it is hung. */
import { type WallSide, wallNameOf } from '@enfilade/space/room';
import { dryingOf } from './drying.ts';
import type { HookPlan } from './hook-plan.ts';
import type { Judgements } from './judgements.ts';
import { type PieceId, type SurfaceId, surfaceParts } from './schema.ts';
import type { TrueSize } from './true-size.ts';
import type { WallLabel } from './wall-labels.ts';
import type { Seen } from './whereabouts.ts';

export interface ScheduleRow {
  /** Its number on the drawing, from 1. */
  readonly number: number;
  readonly pieceId: PieceId;
  readonly objectNumber: string;
  readonly name: string;
  readonly size: TrueSize;
  readonly seen: Seen;
  readonly hooks: HookPlan;
  readonly weightKg: number | null;
  /** How wide the frame round its picture is, within its size; 0 where none is drawn. */
  readonly frameMm: number;
  /** Its label, and how high the middle of it stands above the floor; null where it has none of its own on the wall. */
  readonly label: { readonly box: WallLabel; readonly fromFloorMm: number } | null;
}

export interface WallSchedule {
  readonly surface: SurfaceId;
  readonly roomName: string;
  readonly wallName: string;
  readonly lengthMm: number;
  readonly heightMm: number;
  readonly laserMm: number;
  readonly floorLeftMm: number;
  readonly floorRightMm: number;
  readonly centreLineMm: number;
  readonly paint: string;
  /** ISO dates of its last coat and from when one may hang; null where neither is written down. */
  readonly drying: { readonly lastCoat: string; readonly earliest: string; readonly preferred: string } | null;
  /** What hangs on this wall: the largest first, then from left to right, as it is hung. */
  readonly rows: readonly ScheduleRow[];
  /** Labels, where the show has them on its walls. */
  readonly labels: readonly WallLabel[];
  /** What stands before the wall or on its shelves: drawn, not hung. */
  readonly standing: readonly { readonly name: string; readonly seen: Seen }[];
}

/** @returns null for what is no wall of the show. */
export function wallScheduleOf(judgements: Judgements, surface: SurfaceId): WallSchedule | null {
  const parts = surfaceParts(surface);
  const room = parts === null ? undefined : judgements.documents.get('rooms', parts.roomId);
  const wall = judgements.where.wallOf(surface);
  if (parts === null || room === undefined || wall === null) return null;
  const seen = judgements.elevationOf(surface);
  const hung = seen
    .filter(({ direct }) => direct)
    .sort((a, b) => b.widthMm * b.heightMm - a.widthMm * a.heightMm || a.xMm - b.xMm);
  const first = hung.slice(0, 1);
  const rest = hung.slice(1).sort((a, b) => a.xMm - a.widthMm / 2 - (b.xMm - b.widthMm / 2) || a.yMm - b.yMm);
  const labels = judgements.setting('labelsOnWalls') === true ? judgements.labelBoxesOn(surface) : [];
  const rows: ScheduleRow[] = [];
  for (const [index, piece] of [...first, ...rest].entries()) {
    const object = judgements.objectOf(piece.pieceId);
    const size = judgements.sizeOf(piece.pieceId);
    const hooks = judgements.hooksOf(piece.pieceId);
    if (object === undefined || size === null || hooks === null) continue;
    const box = labels.find(({ pieces: [of] }) => of === piece.pieceId);
    rows.push({
      number: index + 1,
      pieceId: piece.pieceId,
      objectNumber: object.number,
      name: judgements.nameOf(piece.pieceId),
      size,
      seen: piece,
      hooks,
      weightKg: judgements.weightOf(piece.pieceId),
      frameMm: judgements.drawnFrameOf(piece.pieceId)?.widthMm ?? 0,
      label: box === undefined ? null : { box, fromFloorMm: box.yMm - wall.floorAt(box.xMm) },
    });
  }
  return {
    surface,
    roomName: room.name,
    wallName: wallNameOf(room, parts.side as WallSide),
    lengthMm: wall.lengthMm,
    heightMm: wall.heightMm,
    laserMm: room.laserMm,
    floorLeftMm: wall.floorAt(0),
    floorRightMm: wall.floorAt(wall.lengthMm),
    centreLineMm: judgements.setting('centreLineMm'),
    paint: judgements.paintOf(surface)?.name ?? 'no paint chosen',
    drying: dryingOf(judgements, surface),
    rows,
    labels,
    standing: seen
      .filter(({ direct }) => !direct)
      .map((piece) => ({ name: judgements.nameOf(piece.pieceId), seen: piece })),
  };
}
