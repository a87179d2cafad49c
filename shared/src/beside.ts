/** Where a thing comes to be when it is brought beside another: on its wall, its floor, or the level it stands on. */
import { besideOf } from '@enfilade/arrangement/beside';
import { gapsOf } from '@enfilade/arrangement/neighbour-gaps';
import { WALL_SIDES } from '@enfilade/space/room';
import { outerBoxOf } from './aligning.ts';
import { standsByShape } from './arrange-carrier.ts';

import { wallGround } from './arrange-ground.ts';
import { type About, apart, type BesidePlace, boxOf, type NoPlace } from './beside-found.ts';
import { beforeWall, onFloor, onLayout, onLevel } from './beside-in-plan.ts';
import type { Judgements } from './judgements.ts';
import { carrierOf, LAYOUT_FLOOR, type PieceId, type SurfaceId, surfaceParts } from './schema.ts';
import { isWallSide } from './surface-names.ts';
import { BEFORE_IT_MM } from './whereabouts.ts';

export type { BesidePlace, NoPlace } from './beside-found.ts';

/** Null where the anchor is in no place itself. `facing`: the wall one looks at, where it could be on more than one. */
export function placeBeside(
  judgements: Judgements,
  anchor: PieceId,
  pieceId: PieceId,
  facing: SurfaceId | null,
): BesidePlace | NoPlace | null {
  const at = judgements.where.placeOf(anchor);
  if (at === null || judgements.sizeOf(pieceId) === null) return null;
  const [on] = at;
  const carrier = carrierOf(on);
  const side = surfaceParts(on)?.side;
  if (on.startsWith('opening:') || side === 'ceiling')
    return { why: `${judgements.nameOf(anchor)} hangs free: there is nothing beside it to hang or stand on` };
  const hangs = !standsByShape(judgements, pieceId) && judgements.where.levelsOf(pieceId).length === 0;
  const about: About = { judgements, anchor, pieceId };
  if (on === LAYOUT_FLOOR) return onLayout(about, at);
  if (side !== undefined && isWallSide(side))
    return hangs ? onWall(about, on) : beforeWall(about, on, side, usualGapOn(judgements, on));
  if (hangs) {
    const wall = wallBehind(judgements, anchor, facing);
    if (wall !== null) return onWall(about, wall);
  }
  return carrier === null ? onFloor(about, at) : onLevel(about, at, carrier);
}

/** The gap most things on a wall leave to their nearest neighbour, no more than the show's own; that one where they are few. */
export function usualGapOn(judgements: Judgements, surface: SurfaceId): number {
  const setting = judgements.setting('gapMm');
  const nowhere = { leftMm: -Infinity, rightMm: Infinity, bottomMm: -Infinity, topMm: Infinity };
  const boxes = judgements
    .elevationOf(surface)
    .filter((seen) => seen.direct)
    .map((seen) => outerBoxOf(seen, seen.turnDegrees));
  if (boxes.length < 3) return setting;
  const nearest = boxes.flatMap((box, i) => {
    const gaps = gapsOf(
      box,
      boxes.filter((_, k) => k !== i),
      nowhere,
    );
    const mm = Math.min(gaps.left.mm, gaps.right.mm, gaps.above.mm, gaps.below.mm);
    return mm >= 0 && mm < Infinity ? [mm] : [];
  });
  nearest.sort((a, b) => a - b);
  return Math.min(setting, Math.round(nearest[nearest.length >> 1] ?? setting));
}

function onWall({ judgements, anchor, pieceId }: About, surface: SurfaceId): BesidePlace | NoPlace {
  const wall = judgements.where.wallOf(surface);
  const size = judgements.sizeOf(pieceId);
  const seen = judgements.elevationOf(surface).find((one) => one.pieceId === anchor);
  if (wall === null || size === null || seen === undefined) return { why: 'The wall is gone' };
  const gapMm = usualGapOn(judgements, surface);
  const box = outerBoxOf(seen, seen.turnDegrees);
  const others = judgements
    .elevationOf(surface)
    .filter((one) => one.pieceId !== pieceId && one.standOffMm <= BEFORE_IT_MM)
    .map((one) => ({ ...boxOf(outerBoxOf(one, one.turnDegrees)), gapMm }));
  const clear = judgements.keepClearOn(surface).map((one) => ({ ...boxOf(one), gapMm: 0 }));
  // Hung: one centre line, else one foot. What stands before the wall has the show's centre line beside it.
  const offsetsMm = seen.direct
    ? [0, (size.heightMm - box.heightMm) / 2]
    : [judgements.setting('centreLineMm') - seen.yMm];
  const asked = { anchor: box, turnDegrees: 0, own: size, offsetsMm, gapMm, obstacles: [...others, ...clear] };
  const bottomMm = Math.max(wall.floorAt(0), wall.floorAt(wall.lengthMm));
  const whole = { leftMm: 0, rightMm: wall.lengthMm, bottomMm, topMm: wall.heightMm };
  const onIt = besideOf({ ...asked, surface: whole });
  // Not beside it, then at least where works are hung: neither by the floor nor in a corner.
  const among = wallGround(judgements, surface, 'salon', new Set([pieceId]))?.extent ?? whole;
  const found = onIt?.side == null ? (besideOf({ ...asked, surface: among }) ?? onIt) : onIt;
  if (found === undefined) return { why: 'There is no room for it on this wall' };
  const own = { ...found, widthMm: size.widthMm, heightMm: size.heightMm };
  return { place: [surface, found.xMm, found.yMm, 0, 0], side: found.side, gapMm: apart(box, own) };
}

/** The wall a standing thing is seen before: the one that is faced, else the one it is nearest to. */
function wallBehind(judgements: Judgements, anchor: PieceId, facing: SurfaceId | null): SurfaceId | null {
  const on = judgements.where.surfaceOf(anchor);
  const roomId = on === null ? undefined : surfaceParts(on)?.roomId;
  if (roomId === undefined) return null;
  const walls = WALL_SIDES.flatMap((side) => {
    const surface = `${roomId}:${side}`;
    const seen = judgements.elevationOf(surface).find(({ pieceId }) => pieceId === anchor);
    return seen === undefined ? [] : [{ surface, awayMm: surface === facing ? -1 : seen.standOffMm }];
  });
  return walls.sort((a, b) => a.awayMm - b.awayMm)[0]?.surface ?? null;
}
