/** One thing beside another that stands or lies: on the floor, the layout floor, or a carrier's level. */
import { besideOf } from '@enfilade/arrangement/beside';
import type { Box } from '@enfilade/arrangement/boxes';
import type { WallSide } from '@enfilade/space/room';
import { outerBoxOf } from './aligning.ts';
import { floorGround, standingThing } from './arrange-ground.ts';
import { type About, apart, type BesidePlace, boxOf, type NoPlace } from './beside-found.ts';
import { TURN_OF_BACK } from './in-openings.ts';
import {
  carrierOf,
  carrierOn,
  LAYOUT_FLOOR,
  type PieceId,
  type Place,
  type SurfaceId,
  surfaceParts,
} from './schema.ts';

/** Between things stood on a floor or laid out, and those on one level (mm, own rule). */
const FLOOR_GAP_MM = 120;
const LEVEL_GAP_MM = 20;
/** The layout floor has no edges: so far out nobody lays anything (mm). */
const NO_EDGE_MM = 1e6;

/** On the floor, its back to the wall, beside what hangs there. */
export function beforeWall(about: About, surface: SurfaceId, side: WallSide, gapMm: number): BesidePlace | NoPlace {
  const { judgements, anchor, pieceId } = about;
  const seen = judgements.elevationOf(surface).find((one) => one.pieceId === anchor);
  const spot = seen === undefined ? null : judgements.where.planSpotOf(surface, seen.xMm, 0);
  if (seen === undefined || spot === null) return { why: 'The wall is gone' };
  const size = standingThing(judgements, pieceId);
  return inPlan(about, `${surfaceParts(surface)?.roomId}:floor`, {
    anchor: { ...spot, widthMm: outerBoxOf(seen, seen.turnDegrees).widthMm },
    depthMm: 0,
    turn: TURN_OF_BACK[side] * 100,
    offsetsMm: [-size.depthMm / 2],
    gapMm,
  });
}

/** Their backs in one line, else their middles. */
export function onFloor(about: About, at: Place): BesidePlace | NoPlace {
  const under = standingThing(about.judgements, about.anchor);
  const own = standingThing(about.judgements, about.pieceId);
  return inPlan(about, at[0], {
    anchor: { xMm: at[1], yMm: at[2], widthMm: under.widthMm },
    depthMm: under.depthMm,
    turn: at[4],
    offsetsMm: [(under.depthMm - own.depthMm) / 2, 0],
    gapMm: FLOOR_GAP_MM,
  });
}

interface PlanAnchor {
  readonly anchor: { readonly xMm: number; readonly yMm: number; readonly widthMm: number };
  readonly depthMm: number;
  readonly turn: number;
  readonly offsetsMm: readonly number[];
  readonly gapMm: number;
}

function inPlan({ judgements, pieceId }: About, floor: SurfaceId, to: PlanAnchor): BesidePlace | NoPlace {
  const size = standingThing(judgements, pieceId);
  const ground = floorGround(judgements, surfaceParts(floor)?.roomId ?? '', new Set([pieceId]));
  if (ground === null) return { why: 'The room is gone' };
  const own = { widthMm: size.widthMm, heightMm: size.depthMm };
  const found = besideOf({
    anchor: to.anchor,
    turnDegrees: to.turn / 100,
    own,
    offsetsMm: to.offsetsMm,
    gapMm: to.gapMm,
    obstacles: ground.keepClear.map((box) => ({ ...box, gapMm: FLOOR_GAP_MM })),
    surface: ground.extent,
  });
  if (found === undefined) return { why: 'There is no room for it on this floor' };
  const under = outerBoxOf({ ...to.anchor, heightMm: to.depthMm }, to.turn / 100);
  const box = outerBoxOf({ ...found, ...own }, to.turn / 100);
  return { place: [floor, found.xMm, found.yMm, 0, to.turn], side: found.side, gapMm: apart(under, box) };
}

export function onLayout({ judgements, pieceId, anchor }: About, at: Place): BesidePlace | NoPlace {
  const size = judgements.sizeOf(pieceId);
  const plan = judgements.where.planOf(LAYOUT_FLOOR);
  const seen = plan.find((one) => one.pieceId === anchor);
  if (size === null || seen === undefined) return { why: 'It is no longer on the layout floor' };
  const box = outerBoxOf(seen, seen.turnDegrees);
  const found = besideOf({
    anchor: box,
    turnDegrees: 0,
    own: size,
    offsetsMm: [0],
    gapMm: FLOOR_GAP_MM,
    obstacles: plan
      .filter((one) => one.pieceId !== pieceId)
      .map((one) => ({ ...boxOf(outerBoxOf(one, one.turnDegrees)), gapMm: FLOOR_GAP_MM })),
    surface: { leftMm: -NO_EDGE_MM, rightMm: NO_EDGE_MM, bottomMm: -NO_EDGE_MM, topMm: NO_EDGE_MM },
  });
  if (found === undefined) return { why: 'There is no room for it on the layout floor' };
  const own = { ...found, widthMm: size.widthMm, heightMm: size.heightMm };
  return { place: [at[0], found.xMm, found.yMm, 0, 0], side: found.side, gapMm: apart(box, own) };
}

/** On the level the other stands on, their backs in one line. */
export function onLevel(
  about: About,
  at: Place,
  on: { readonly pieceId: PieceId; readonly level: number },
): BesidePlace | NoPlace {
  const { judgements, anchor, pieceId } = about;
  const under = standingThing(judgements, on.pieceId);
  const own = standingThing(judgements, pieceId);
  const name = judgements.nameOf(on.pieceId);
  const heights = judgements.where.levelsOf(on.pieceId);
  const height = heights[on.level] ?? under.heightMm;
  const clearMm = Math.min(...heights.filter((other) => other > height)) - height;
  if (own.heightMm > clearMm) return { why: `It is too tall for this level of ${name}` };
  const boxOnLevel = (id: PieceId): Box | null => {
    const there = judgements.where.placeOf(id);
    if (there === null || carrierOf(there[0])?.level !== on.level) return null;
    const { widthMm, depthMm } = standingThing(judgements, id);
    return outerBoxOf({ xMm: there[1], yMm: there[2], widthMm, heightMm: depthMm }, there[4] / 100);
  };
  const box = boxOnLevel(anchor) as Box;
  const others = [...judgements.where.directlyOn(on.pieceId)].flatMap((id) =>
    id === pieceId ? [] : (boxOnLevel(id) ?? []),
  );
  const found = besideOf({
    anchor: box,
    turnDegrees: 0,
    own: { widthMm: own.widthMm, heightMm: own.depthMm },
    offsetsMm: [(box.heightMm - own.depthMm) / 2, 0],
    gapMm: LEVEL_GAP_MM,
    obstacles: others.map((other) => ({ ...other, gapMm: LEVEL_GAP_MM })),
    surface: { leftMm: 0, rightMm: under.widthMm, bottomMm: 0, topMm: under.depthMm },
  });
  if (found === undefined) return { why: `There is no room for it on this level of ${name}` };
  const place: Place = [carrierOn(on.pieceId, on.level), found.xMm, found.yMm, at[3], 0];
  const its = { ...found, widthMm: own.widthMm, heightMm: own.depthMm };
  return { place, side: found.side, gapMm: apart(box, its) };
}
