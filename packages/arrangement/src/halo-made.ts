import type { Box } from './boxes.ts';
import { buildHalo } from './halo-build.ts';
import { cloudOf } from './halo-cloud.ts';
import { NEIGHBOURS } from './halo-described.ts';
import { obstacleOf, type Thing } from './halo-ground.ts';
import { relaxHalo } from './halo-relax.ts';
import { nearlyEqual, type RingTask, ringPlaces } from './halo-rings.ts';
import type { HaloCandidate, HaloTask } from './halo-task.ts';
import { nearestFree, type Obstacle } from './nearest-free.ts';
import { seeded } from './seeded.ts';

/** From the wanted gaps to the least ones, until everything finds room. */
const LEVELS = [1, 0.6, 0.3, 0];
const PASSES = 30;
/** From here on a halo is let loose instead of packed. */
const LOOSE = 0.4;

export interface MadeHalo {
  readonly places: HaloCandidate['places'];
  readonly stopped: boolean;
}

/**
 * Where the pieces go. Even and of one size: rings. Loose, or leaning to a side: a cloud. Even and of many sizes, or
 * where neither finds room: packed one against the other and let settle.
 */
export function madeHalo(task: HaloTask): MadeHalo {
  const random = seeded(task.seed);
  const roominess = task.roominess ?? 1.4;
  const clear = task.keepClear.map((box) => thingOf(box, 'clear', task.gapMm, 1, -1));
  const focalEase = roominess * (1 + 0.3 * task.looseness);
  const focal = thingOf(task.focal, 'focal', task.focalGapMm ?? task.gapMm, focalEase, -1);
  const ordered = task.pieces
    .map((size, index) => {
      const ease = roominess * (1 + (0.3 + task.looseness * 1.3) * (random() - 0.3));
      const thing = thingOf({ xMm: 0, yMm: 0, ...size }, 'piece', task.gapMm, Math.max(1, ease), index);
      return { thing, rank: size.widthMm * size.heightMm * Math.exp((random() - 0.5) * 1.2) };
    })
    .sort((a, b) => b.rank - a.rank)
    .map(({ thing }) => thing);
  let stopped = false;
  let done = 0;
  const of = ordered.length + PASSES;
  const goOn = () => {
    done = Math.min(done + 1, of);
    if (task.progress?.(done, of) === false) stopped = true;
    return !stopped;
  };
  const across = task.across ?? 1.2;
  const reachMm = reachOf(task);
  const common = { surface: task.surface, focal, clear, pieces: ordered, across, reachMm, goOn };
  const leanDegrees = task.leanDegrees ?? Number.NaN;
  const free = task.looseness >= LOOSE || task.leanDegrees !== undefined;
  const alike = nearlyEqual(ordered);
  const settle = (placed: readonly Thing[], level: number, passes: number) => {
    const [limitMm, sight] = [NEIGHBOURS * task.gapMm, 5 - 2.5 * task.looseness];
    relaxHalo(placed, focal, clear, task.surface, { passes, level, limitMm, sight, reachMm, goOn });
  };
  const found = () => {
    if (alike && !free && across > 0.8 && across < 1.6) {
      const ring = rings({ ...common, ease: roominess }, random);
      if (ring !== undefined || stopped) return ring;
    }
    for (const level of free || alike ? LEVELS : []) {
      if (!mayFit(task, ordered, level)) continue;
      done = 0;
      const cloud = cloudOf({ ...common, leanDegrees, looseness: task.looseness, level }, random);
      if (cloud !== undefined && !free) settle(cloud, level, cloud.length > 150 ? PASSES / 3 : PASSES);
      if (cloud !== undefined || stopped) return cloud;
    }
    const wander = 0.04 + 0.22 * task.looseness + (task.leanDegrees === undefined ? 0 : 0.25);
    for (const level of LEVELS) {
      if (level > 0 && !mayFit(task, ordered, level)) continue;
      done = 0;
      const built = buildHalo({ ...common, leanDegrees, wander, level }, random, level > 0);
      if (built !== undefined && !stopped) {
        settle(built.placed, level, PASSES);
        return built.placed;
      }
      if (stopped) return undefined;
    }
    return undefined;
  };
  const placed = found();
  const places: ({ xMm: number; yMm: number } | null)[] = task.pieces.map(() => null);
  if (!stopped) for (const piece of placed ?? []) places[piece.index] = { xMm: piece.x, yMm: piece.y };
  return { places, stopped };
}

/** Pieces on rings, in whole mm; undefined where rounding or a narrow place leaves one less than its gap. */
function rings(task: RingTask & { readonly goOn: () => boolean }, random: () => number): Thing[] | undefined {
  const aims = ringPlaces(task, random);
  if (aims === undefined) return undefined;
  const obstacles: Obstacle[] = [task.focal, ...task.clear].map(obstacleOf);
  const placed: Thing[] = [];
  for (const [i, piece] of task.pieces.entries()) {
    const size = { widthMm: 2 * piece.halfWidth, heightMm: 2 * piece.halfHeight };
    const aim = aims[i]!;
    const nearby = size.widthMm + size.heightMm;
    const spot = nearestFree({ xMm: aim.x, yMm: aim.y, ...size }, obstacles, task.surface, nearby);
    if (spot === undefined || !task.goOn()) return undefined;
    placed.push({ ...piece, x: spot.xMm, y: spot.yMm });
    obstacles.push(obstacleOf(placed[i]!));
  }
  return placed;
}

/** Up to where tops should stay; no bound where the focal work itself leaves none of them room above it within reach. */
function reachOf({ focal, focalGapMm, gapMm, pieces, reachMm }: HaloTask): number {
  const least = Math.min(...pieces.map(({ heightMm }) => heightMm));
  const needed = focal.yMm + focal.heightMm / 2 + (focalGapMm ?? gapMm) + least;
  return reachMm === undefined || needed > reachMm ? Infinity : reachMm;
}

/** Whether the pieces and the gaps they would like can find room at all, by area alone. */
function mayFit(task: HaloTask, pieces: readonly Thing[], level: number): boolean {
  const { surface } = task;
  const free = (surface.rightMm - surface.leftMm) * (surface.topMm - surface.bottomMm);
  const needed = pieces.reduce((sum, { halfWidth, halfHeight, leastMm, ease }) => {
    const gap = leastMm * (1 + level * (ease - 1));
    return sum + (2 * halfWidth + gap) * (2 * halfHeight + gap);
  }, task.focal.widthMm * task.focal.heightMm);
  return needed <= free;
}

function thingOf(box: Box, kind: Thing['kind'], leastMm: number, ease: number, index: number): Thing {
  const [halfWidth, halfHeight] = [box.widthMm / 2, box.heightMm / 2];
  return { x: box.xMm, y: box.yMm, halfWidth, halfHeight, kind, leastMm, ease, index, spent: 0 };
}
