/** What is moved by hand, and its neighbours on the same wall or on the layout floor give way: where all come to be. */
import type { Box, Extent } from '@enfilade/arrangement/boxes';
import { makeRoom } from '@enfilade/arrangement/make-room';
import { outerBoxOf } from './aligning.ts';
import { withLoads } from './arrange-ground.ts';
import type { Judgements } from './judgements.ts';
import { LAYOUT_FLOOR, type PieceId, type Place, type SurfaceId } from './schema.ts';
import { BEFORE_IT_MM } from './whereabouts.ts';

/** The layout floor has no edges: so far out nobody lays anything (mm). */
const NO_EDGE_MM = 1e6;

/** What is so many times as large gives no way: a whole hang would follow it (own rule). */
const TOO_LARGE = 4;

/**
 * Where everything comes to be when the pieces are wanted here, all on the one surface; null where there is no room and
 * nobody gives way.
 */
export type RoomMaker = (wanted: ReadonlyMap<PieceId, Place>) => ReadonlyMap<PieceId, Place> | null;

/**
 * Reads a surface once, for a whole drag: each step is then the engine's alone. Several that are moved push as one. Pinned
 * pieces, what carries others, and what is far larger than the largest moved, stay. Null where the surface is neither a
 * wall nor the layout floor.
 */
export function roomMakerOn(
  judgements: Judgements,
  surface: SurfaceId,
  moved: readonly PieceId[],
  gapMm: number,
): RoomMaker | null {
  const sizes = new Map(
    moved.flatMap((id) => {
      const size = judgements.sizeOf(id);
      return size === null ? [] : [[id, size] as const];
    }),
  );
  const extent = extentOf(judgements, surface);
  if (sizes.size < moved.length || sizes.size === 0 || extent === null) return null;
  const going = withLoads(judgements, moved);
  const seen = (surface === LAYOUT_FLOOR ? judgements.where.planOf(surface) : judgements.elevationOf(surface)).filter(
    ({ pieceId, standOffMm }) => !going.has(pieceId) && standOffMm <= BEFORE_IT_MM,
  );
  const direct = seen.filter((one) => one.direct);
  const others = direct.map((one) => boxOf(outerBoxOf(one, one.turnDegrees)));
  const largest = TOO_LARGE * Math.max(...[...sizes.values()].map(({ widthMm, heightMm }) => widthMm * heightMm));
  const pinned = direct.flatMap(({ pieceId, widthMm, heightMm }, i) =>
    judgements.isPinned(pieceId) || widthMm * heightMm > largest || judgements.where.directlyOn(pieceId).size > 0
      ? [i]
      : [],
  );
  const standing = seen.filter((one) => !one.direct).map((one) => boxOf(outerBoxOf(one, one.turnDegrees)));
  const keepClear = [
    ...(surface === LAYOUT_FLOOR ? [] : judgements.keepClearOn(surface, going).map(boxOf)),
    ...standing,
  ];
  return (wanted) => {
    const own = [...wanted].flatMap(([pieceId, place]) => {
      const size = sizes.get(pieceId);
      if (size === undefined) return [];
      const { widthMm, heightMm } = outerBoxOf(size, place[4] / 100);
      return [{ pieceId, place, box: { widthMm, heightMm, xMm: place[1], yMm: place[2] } }];
    });
    const [first] = own;
    if (first === undefined) return null;
    const made = makeRoom({
      surface: extent,
      boxes: [...others, ...own.map(({ box }) => box)],
      moved: others.length,
      to: first.box,
      along: own.slice(1).map((_, i) => others.length + 1 + i),
      pinned,
      keepClear,
      gapMm,
    });
    if (made.refused) return null;
    const places = new Map<PieceId, Place>();
    for (const [i, { pieceId, place, box }] of own.entries()) {
      const at = made.places[others.length + i] ?? box;
      places.set(pieceId, [surface, at.xMm, at.yMm, place[3], place[4]]);
    }
    for (const i of made.gaveWay) {
      const pieceId = direct[i]?.pieceId;
      const was = pieceId === undefined ? null : judgements.where.placeOf(pieceId);
      const now = made.places[i];
      if (pieceId !== undefined && was !== null && now) places.set(pieceId, [was[0], now.xMm, now.yMm, was[3], was[4]]);
    }
    return places;
  };
}

function extentOf(judgements: Judgements, surface: SurfaceId): Extent | null {
  if (surface === LAYOUT_FLOOR)
    return { leftMm: -NO_EDGE_MM, rightMm: NO_EDGE_MM, bottomMm: -NO_EDGE_MM, topMm: NO_EDGE_MM };
  const wall = judgements.where.wallOf(surface);
  if (wall === null) return null;
  const bottomMm = Math.max(wall.floorAt(0), wall.floorAt(wall.lengthMm));
  return { leftMm: 0, rightMm: wall.lengthMm, bottomMm, topMm: wall.heightMm };
}

function boxOf({ xMm, yMm, widthMm, heightMm }: Box): Box {
  return { xMm, yMm, widthMm, heightMm };
}
