/** From a wish and the documents to the task the engines work on. Pure: nothing is written and nothing tried. */
import { nearestFree } from '@enfilade/arrangement/nearest-free';
import { REACH_MM } from '@enfilade/practice/cautions';
import { outerBoxOf } from './aligning.ts';
import { carrierTask } from './arrange-carrier.ts';
import { freeOf, groundDigest, meanColourOf, standingThing, wallGround, wallTask } from './arrange-ground.ts';
import { plinthsTask } from './arrange-plinths.ts';
import type {
  ArrangeTask,
  ArrangeWish,
  HaloAsked,
  HangAsked,
  HangEngineTask,
  MassAsked,
  MassLevel,
  NotPossible,
} from './arrange-task.ts';
import type { Judgements } from './judgements.ts';
import { carrierOf, type PieceId, type Place, type SurfaceId } from './schema.ts';

/** Kept free along a level's edges, glass to edge. Common practice, no source. */
const LEVEL_EDGE_MM = 25;
/** How high what stands behind may be raised so that it is seen. Own rule. */
const RISER_MM = 120;

/** The task, or in a sentence why there is none: something it is about has gone. */
export function arrangeTask(judgements: Judgements, wish: ArrangeWish): ArrangeTask | NotPossible {
  switch (wish.kind) {
    case 'halo':
      return haloTask(judgements, wish) ?? { why: 'The wall or the focal work is gone.' };
    case 'massed':
      return massTask(judgements, wish) ?? { why: 'What they were to stand on is gone.' };
    case 'carrier':
      return carrierTask(judgements, wish) ?? { why: 'The carrier or its wall is gone.' };
    case 'plinths':
      return plinthsTask(judgements, wish) ?? { why: 'The room is gone.' };
    default:
      return hangTask(judgements, wish, wish.kind) ?? { why: 'The wall is gone.' };
  }
}

/**
 * The focal work stays where it hangs, else takes the place nearest to the middle of the wall that is clear. Pinned ones
 * stay and are kept clear of.
 */
function haloTask(judgements: Judgements, wish: ArrangeWish): HaloAsked | null {
  const { focal, surface, gapMm } = wish;
  const size = focal === undefined ? null : judgements.sizeOf(focal);
  if (focal === undefined || size === null) return null;
  const pieceIds = freeOf(judgements, wish.pieceIds).filter((pieceId) => pieceId !== focal);
  const asked = wallTask(judgements, wish, [...pieceIds, focal]);
  const ground = wallGround(judgements, surface, 'halo', new Set([...pieceIds, focal]));
  if (asked === null || ground === null) return null;
  const at = judgements.where.placeOf(focal);
  const focalPlace = at !== null && at[0] === surface ? at : middleOf(asked, surface, size);
  const box = outerBoxOf({ widthMm: size.widthMm, heightMm: size.heightMm }, focalPlace[4] / 100);
  const spot = { xMm: focalPlace[1], yMm: focalPlace[2] };
  const pieces = asked.pieces.slice(0, -1);
  const last = asked.pieces.at(-1);
  return {
    kind: 'halo',
    wish,
    ground: groundDigest({
      surface,
      ground,
      pieceIds: [...pieceIds].sort(),
      pieces: sortedBy(pieceIds, pieces),
      focal,
      spot,
    }),
    pieceIds,
    focal,
    focalPlace,
    engine: {
      surface: asked.surface,
      focal: { ...spot, ...box },
      pieces: pieces.map(({ widthMm, heightMm }) => ({ widthMm, heightMm })),
      keepClear: asked.keepClear,
      gapMm,
      looseness: wish.looseness ?? 0.5,
      reachMm: REACH_MM,
    },
    wall: { ...asked, pieces: [...pieces, { ...last, ...box, pinnedAt: spot }] },
    colours: [...pieceIds, focal].map((pieceId) => meanColourOf(judgements, pieceId)),
  };
}

function middleOf(wall: HangEngineTask, surface: SurfaceId, size: { widthMm: number; heightMm: number }): Place {
  const { leftMm, rightMm } = wall.surface;
  const wanted = {
    xMm: (leftMm + rightMm) / 2,
    yMm: wall.centreLineMm,
    widthMm: size.widthMm,
    heightMm: size.heightMm,
  };
  const obstacles = wall.keepClear.map((box) => ({ ...box, gapMm: wall.gapMm }));
  const { xMm, yMm } = nearestFree(wanted, obstacles, wall.surface) ?? wanted;
  return [surface, Math.round(xMm), Math.round(yMm), 0, 0];
}

function hangTask(judgements: Judgements, wish: ArrangeWish, kind: HangAsked['kind']): HangAsked | null {
  const { surface, focal } = wish;
  // What is pinned elsewhere stays there; what is pinned here stays, and the others are hung with it.
  const pieceIds = wish.pieceIds.filter(
    (id) => !judgements.isPinned(id) || judgements.where.placeOf(id)?.[0] === surface,
  );
  const wall = wallTask(judgements, wish, pieceIds);
  if (wall === null) return null;
  const index = focal === undefined ? -1 : pieceIds.indexOf(focal);
  return {
    kind,
    wish,
    ground: groundDigest({
      surface,
      extent: wall.surface,
      keepClear: wall.keepClear,
      pieceIds: [...pieceIds].sort(),
      pieces: sortedBy(pieceIds, wall.pieces),
    }),
    pieceIds,
    wall: { ...wall, ...(index < 0 ? {} : { focal: index }) },
    colours: pieceIds.map((pieceId) => meanColourOf(judgements, pieceId)),
  };
}

/** On one level or on all of a carrier's. What stands there already is massed along. */
function massTask(judgements: Judgements, wish: ArrangeWish): MassAsked | null {
  const { carrier, level: only, gapMm } = wish;
  const size = carrier === undefined ? null : judgements.sizeOf(carrier);
  if (carrier === undefined || size === null) return null;
  const heights = judgements.where.levelsOf(carrier);
  const levels = heights
    .map((heightMm, level): MassLevel & { heightMm: number } => {
      const over = Math.min(...heights.filter((other) => other > heightMm));
      return {
        level,
        heightMm,
        widthMm: size.widthMm,
        depthMm: size.depthMm || size.widthMm,
        gapMm,
        edgeMm: Math.min(LEVEL_EDGE_MM, (size.depthMm || size.widthMm) / 8),
        riserMm: RISER_MM,
        ...(over < Infinity ? { clearHeightMm: Math.max(1, over - heightMm - BOARD_MM) } : {}),
      };
    })
    .filter(({ level }) => only === undefined || level === only)
    .sort((a, b) => a.heightMm - b.heightMm)
    .map(({ heightMm: _, ...level }) => level);
  if (levels.length === 0) return null;
  const used = new Set(levels.map(({ level }) => level));
  const there = [...judgements.where.directlyOn(carrier)].filter((id) =>
    used.has(carrierOf(judgements.where.placeOf(id)?.[0] ?? '')?.level ?? -1),
  );
  const pieceIds = [...new Set([...wish.pieceIds.filter((id) => id !== carrier), ...there.sort()])];
  const things = pieceIds.map((pieceId) => standingThing(judgements, pieceId));
  return {
    kind: 'massed',
    wish,
    ground: groundDigest({
      carrier,
      size: [size.widthMm, size.depthMm, ...heights],
      pieceIds: [...pieceIds].sort(),
      things: sortedBy(pieceIds, things),
    }),
    carrier,
    pieceIds,
    things,
    levels,
  };
}

/** A shelf's own thickness, taken off the clear height beneath it. Own rule. */
const BOARD_MM = 30;

/** Of each piece, in order of its id: the order of a selection is no change of the pool. */
function sortedBy<T>(pieceIds: readonly PieceId[], values: readonly T[]): readonly T[] {
  return pieceIds
    .map((id, index) => ({ id, value: values[index] as T }))
    .sort((a, b) => (a.id < b.id ? -1 : 1))
    .map(({ value }) => value);
}
