/** Wall, furniture and load as one: what goes on a carrier, beside it on the floor, and on the wall above it. */
import { planFromWall, type RoomShape, type WallSide, wallFromPlan } from '@enfilade/space/room';
import { groundDigest, standingThing, wallTask, withLoads } from './arrange-ground.ts';
import type { ArrangeWish, CarrierAsked } from './arrange-task.ts';
import { TURN_OF_BACK } from './in-openings.ts';
import type { Judgements } from './judgements.ts';
import { carrierOf, type PieceId, type Place, surfaceParts } from './schema.ts';
import { isWallSide } from './surface-names.ts';

/** Things shallower than this hang, as do those shallower than a share of their width and height: a deep frame. Own rule. */
const STANDS_FROM_MM = 60;
const FLAT_SHARE = 0.15;

/** Whether it stands rather than hangs, by its shape. */
export function standsByShape(judgements: Judgements, pieceId: PieceId): boolean {
  const size = judgements.sizeOf(pieceId);
  if (size === null || size.depthMm < STANDS_FROM_MM) return false;
  return size.depthMm >= FLAT_SHARE * Math.min(size.widthMm, size.heightMm);
}

/** What takes more than this share of a carrier's width, or stands higher than itself, stands beside it (own rule). */
const TOO_WIDE = 0.6;

/** What each of some pieces would be in a composition round a carrier. */
export function partsAround(judgements: Judgements, carrier: PieceId, pieceIds: readonly PieceId[]) {
  const under = standingThing(judgements, carrier);
  const parts = { on: [] as PieceId[], around: [] as PieceId[], above: [] as PieceId[] };
  for (const pieceId of pieceIds) {
    if (pieceId === carrier) continue;
    const thing = standingThing(judgements, pieceId);
    if (!standsByShape(judgements, pieceId)) parts.above.push(pieceId);
    else if (thing.depthMm > under.depthMm || thing.widthMm > TOO_WIDE * under.widthMm) parts.around.push(pieceId);
    else parts.on.push(pieceId);
  }
  return parts;
}

export function carrierTask(judgements: Judgements, wish: ArrangeWish): CarrierAsked | null {
  const { carrier, surface } = wish;
  const wall = judgements.where.wallOf(surface);
  const room = judgements.where.roomOf(surface);
  const side = surfaceParts(surface)?.side;
  if (carrier === undefined || wall === null || room === null || side === undefined || !isWallSide(side)) return null;
  const size = standingThing(judgements, carrier);
  const topMm = judgements.where.levelsOf(carrier)[0] ?? size.heightMm;
  const stand = standOf(judgements, { carrier, surface, side, room, depthMm: size.depthMm, heightMm: size.heightMm });
  // What stands on its top already is part of the whole.
  const onTop = [...judgements.where.directlyOn(carrier)].filter(
    (id) => carrierOf(judgements.where.placeOf(id)?.[0] ?? '')?.level === 0,
  );
  const onTopNow = new Set(onTop);
  // What stands on its lower levels stays there.
  const below = new Set(judgements.where.loadOf(carrier).filter((id) => !onTopNow.has(id)));
  const asked = [...new Set([...wish.pieceIds, ...onTop.sort()])].filter(
    (id) => !judgements.isPinned(id) && !below.has(id),
  );
  const parts = partsAround(judgements, carrier, asked);
  const going = [...parts.on, ...parts.around, ...parts.above];
  const hung = wallTask(judgements, wish, [
    ...parts.above,
    ...parts.around,
    ...parts.on,
    ...withLoads(judgements, [carrier]),
  ]);
  if (hung === null) return null;
  const engine: CarrierAsked['engine'] = {
    surface: hung.surface,
    floorMm: stand.footMm,
    carrier: { ...size, heightMm: topMm, xMm: stand.xMm },
    on: parts.on.map((id) => standingThing(judgements, id)),
    around: stand.hangs ? [] : parts.around.map((id) => standingThing(judgements, id)),
    above: hung.pieces.slice(0, parts.above.length),
    keepClear: hung.keepClear,
    gapMm: wish.gapMm,
    centreLineMm: hung.centreLineMm,
    riserMm: 0,
  };
  return {
    kind: 'carrier',
    wish,
    ground: groundDigest({ surface, carrier, engine: { ...engine, gapMm: 0 }, going: [...going].sort() }),
    carrier,
    carrierPlace: stand.place,
    ...parts,
    around: stand.hangs ? [] : parts.around,
    room,
    side,
    engine,
  };
}

interface Standing {
  readonly place: Place;
  /** Along the wall. */
  readonly xMm: number;
  /** Its foot, above the reference plane. */
  readonly footMm: number;
  /** It hangs there, as a shelf. */
  readonly hangs: boolean;
}

/** Where the carrier is, when it hangs on this wall or stands with its back to it; else in its middle, back to the wall. */
function standOf(
  judgements: Judgements,
  about: { carrier: PieceId; surface: string; side: WallSide; room: RoomShape; depthMm: number; heightMm: number },
): Standing {
  const { carrier, surface, side, room } = about;
  const wall = judgements.where.wallOf(surface);
  const floor = `${surfaceParts(surface)?.roomId}:floor`;
  const at = judgements.where.placeOf(carrier);
  if (at !== null && at[0] === surface)
    return { place: at, xMm: at[1], footMm: at[2] - about.heightMm / 2, hangs: true };
  const turn = TURN_OF_BACK[side] * 100;
  if (at !== null && at[0] === floor && at[4] === turn) {
    const { xMm, standOffMm } = wallFromPlan(room, side, at[1], at[2]);
    if (standOffMm <= about.depthMm) return { place: at, xMm, footMm: wall?.floorAt(xMm) ?? 0, hangs: false };
  }
  const xMm = (wall?.lengthMm ?? 0) / 2;
  const spot = planFromWall(room, side, xMm, about.depthMm / 2);
  const place: Place = [floor, Math.round(spot.xMm), Math.round(spot.yMm), 0, turn];
  return { place, xMm, footMm: wall?.floorAt(xMm) ?? 0, hangs: false };
}
