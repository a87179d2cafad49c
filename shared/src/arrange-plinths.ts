/** Plinths, each with what stands on it, grouped on a room's floor; things without a plinth go on one that is bare. */
import { floorGround, freeOf, groundDigest, standingThing, withLoads } from './arrange-ground.ts';
import type { ArrangeWish, PlinthsAsked } from './arrange-task.ts';
import type { Judgements } from './judgements.ts';
import { carrierOn, type PieceId, type Place, surfaceParts } from './schema.ts';

/** Kept free round what stands on a plinth. Common practice, no source. */
const PLINTH_EDGE_MM = 25;
/** A carrier wider than this is furniture, not a plinth (own rule). */
const PLINTH_UP_TO_MM = 900;

/** Carriers small enough to be called plinths. */
export function plinthsAmong(judgements: Judgements, pieceIds: readonly PieceId[]): PieceId[] {
  return pieceIds.filter((pieceId) => {
    const size = judgements.sizeOf(pieceId);
    const levels = judgements.where.levelsOf(pieceId).length;
    return size !== null && levels > 0 && size.widthMm <= PLINTH_UP_TO_MM && size.heightMm > size.widthMm / 2;
  });
}

/** Which bare plinth each thing is put on: the largest thing on the lowest; and who finds none. */
function onPlinths(judgements: Judgements, plinths: readonly PieceId[], things: readonly PieceId[]) {
  const bare = plinths.filter((id) => judgements.where.directlyOn(id).size === 0);
  const loads: [PieceId, Place][] = [];
  const without: PieceId[] = [];
  const bySize = [...things].sort((a, b) => bulk(b) - bulk(a) || (a < b ? -1 : 1));
  for (const id of bySize) {
    const thing = standingThing(judgements, id);
    const index = bare.findIndex((plinth) => {
      const { widthMm, depthMm } = standingThing(judgements, plinth);
      return thing.widthMm + 2 * PLINTH_EDGE_MM <= widthMm && thing.depthMm + 2 * PLINTH_EDGE_MM <= depthMm;
    });
    const [plinth] = index < 0 ? [] : bare.splice(index, 1);
    if (plinth === undefined) {
      without.push(id);
      continue;
    }
    const { widthMm, depthMm } = standingThing(judgements, plinth);
    loads.push([id, [carrierOn(plinth, 0), Math.round(widthMm / 2), Math.round(depthMm / 2), 0, 0]]);
  }
  return { loads, without };

  function bulk(id: PieceId): number {
    const { widthMm, depthMm, heightMm } = standingThing(judgements, id);
    return widthMm * depthMm * heightMm;
  }
}

/** On the floor of the room the wish's surface is of. What finds no plinth of its own stands by itself. */
export function plinthsTask(judgements: Judgements, wish: ArrangeWish): PlinthsAsked | null {
  const roomId = surfaceParts(wish.surface)?.roomId;
  if (roomId === undefined) return null;
  const free = freeOf(judgements, wish.pieceIds);
  const plinths = plinthsAmong(judgements, free);
  const carried = withLoads(judgements, plinths);
  const { loads, without } = onPlinths(
    judgements,
    plinths,
    free.filter((id) => !carried.has(id)),
  );
  const pieceIds = [...plinths, ...without];
  const ground = floorGround(judgements, roomId, new Set([...pieceIds, ...loads.map(([id]) => id)]));
  if (ground === null) return null;
  const heights = pieceIds.map((id) => {
    const { heightMm } = standingThing(judgements, id);
    const top = judgements.where.levelsOf(id)[0] ?? heightMm;
    const own = [...judgements.where.directlyOn(id)].map((load) => top + standingThing(judgements, load).heightMm);
    const put = loads
      .filter(([, at]) => at[0] === carrierOn(id, 0))
      .map(([load]) => top + standingThing(judgements, load).heightMm);
    return Math.max(heightMm, ...own, ...put);
  });
  const engine: PlinthsAsked['engine'] = {
    floor: ground.extent,
    plinths: pieceIds.map((id, index) => ({ ...standingThing(judgements, id), heightMm: heights[index] as number })),
    keepClear: ground.keepClear,
    gapMm: wish.gapMm,
  };
  return {
    kind: 'plinths',
    wish,
    ground: groundDigest({ roomId, engine: { ...engine, gapMm: 0 }, pieceIds: [...pieceIds].sort(), loads }),
    pieceIds,
    loads,
    engine,
  };
}
