/** From a selection and a wall to the task the engine arranges. */
import type { Box } from '@enfilade/arrangement/boxes';
import { REACH_MM } from '@enfilade/practice/cautions';
import { outerBoxOf } from '@enfilade/shared/aligning';
import type { Judgements } from '@enfilade/shared/judgements';
import type { PieceId, Place, SurfaceId } from '@enfilade/shared/schema';
import type { HaloTask } from '../workers/halo-task.ts';

/** Nothing is offered nearer to the floor than this: feet and brooms. Common practice, no source. */
const ABOVE_FLOOR_MM = 250;

export interface HaloWish {
  readonly wall: SurfaceId;
  readonly focal: PieceId;
  readonly pieceIds: readonly PieceId[];
  readonly gapMm: number;
  readonly looseness: number;
}

/** Null when the wall or a size is gone. The focal work stays where it hangs, else takes the middle of the wall. */
export function haloTaskOf(judgements: Judgements, wish: HaloWish): HaloTask | null {
  const wall = judgements.where.wallOf(wish.wall);
  const focalSize = judgements.sizeOf(wish.focal);
  if (wall === null || focalSize === null) return null;
  const at = judgements.where.placeOf(wish.focal);
  const focalPlace: Place =
    at !== null && at[0] === wish.wall
      ? at
      : [wish.wall, Math.round(wall.lengthMm / 2), judgements.setting('centreLineMm'), 0, 0];
  const turn = focalPlace[4] / 100;
  const focal = outerBoxOf({ xMm: focalPlace[1], yMm: focalPlace[2], ...sizeBox(focalSize) }, turn);
  const going = new Set([wish.focal, ...wish.pieceIds]);
  const others = judgements
    .elevationOf(wish.wall)
    .filter(({ pieceId }) => !going.has(pieceId))
    .map((seen): Box => outerBoxOf(seen, seen.turnDegrees));
  const floor = Math.max(wall.floorAt(0), wall.floorAt(wall.lengthMm));
  return {
    wall: wish.wall,
    focal: wish.focal,
    focalPlace,
    pieceIds: wish.pieceIds,
    engine: {
      surface: {
        leftMm: wish.gapMm,
        rightMm: wall.lengthMm - wish.gapMm,
        bottomMm: floor + ABOVE_FLOOR_MM,
        topMm: wall.heightMm - wish.gapMm,
      },
      focal: { xMm: focal.xMm, yMm: focal.yMm, widthMm: focal.widthMm, heightMm: focal.heightMm },
      pieces: wish.pieceIds.map((pieceId) => sizeBox(judgements.sizeOf(pieceId))),
      keepClear: [...judgements.keepClearOn(wish.wall), ...others].map(({ xMm, yMm, widthMm, heightMm }) => ({
        xMm,
        yMm,
        widthMm,
        heightMm,
      })),
      gapMm: wish.gapMm,
      looseness: wish.looseness,
      reachMm: REACH_MM,
    },
  };
}

function sizeBox(size: { readonly widthMm: number; readonly heightMm: number } | null) {
  return { widthMm: size?.widthMm ?? 1, heightMm: size?.heightMm ?? 1 };
}
