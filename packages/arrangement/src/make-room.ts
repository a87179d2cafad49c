import { type Box, type Extent, overlaps } from './boxes.ts';
import { nearestFree, nearestTogether, type Obstacle, type Spot } from './nearest-free.ts';

/** A way past the others is taken before one that pushes them, up to so many times as far. */
const DETOUR = 1.6;

export interface RoomTask {
  readonly surface: Extent;
  /** As they hang now (mm, centres). */
  readonly boxes: readonly Box[];
  /** The one moved, by index, and where it is wanted. */
  readonly moved: number;
  readonly to: Spot;
  /** Others that go with it, by index, each as far from it as their boxes are: they push as one. */
  readonly along?: readonly number[];
  /** These never give way, by index. */
  readonly pinned: readonly number[];
  /** Openings, fixtures, label places. */
  readonly keepClear: readonly Box[];
  /** The least gap (mm) that what gives way leaves. */
  readonly gapMm: number;
}

export interface RoomMade {
  /** Centres by box, whole mm for those that moved; as they were where there is no room. */
  readonly places: readonly Spot[];
  /** Who gave way, by index, nearest first. */
  readonly gaveWay: readonly number[];
  /** No room could be made: nothing has moved. */
  readonly refused: boolean;
}

/**
 * One box moved, or several as one, and the neighbours give way: each as little as it must, the nearest first, pushing on in turn only
 * where that is clearly shorter than going round. Pinned boxes stay and so does everything not in the way; what moved
 * lies inside the surface and leaves the gap to all others. Where the wanted place is barred, the nearest free one is
 * taken. Quick enough for every pointer move of 60 boxes.
 */
export function makeRoom(task: RoomTask): RoomMade {
  const { boxes, moved, gapMm, surface } = task;
  const movers = [moved, ...(task.along ?? []).filter((i) => i !== moved)];
  if (boxes[moved] === undefined) throw new RangeError(`moved is ${moved}; there are ${boxes.length} boxes`);
  if (!(gapMm >= 0)) throw new RangeError(`gapMm is ${gapMm}; it must be 0 or more`);
  const before = boxes.map(({ xMm, yMm }) => ({ xMm, yMm }));
  const refused: RoomMade = { places: before, gaveWay: [], refused: true };
  const now: Box[] = [...boxes];
  const pinned = new Set(task.pinned.filter((i) => !movers.includes(i)));
  const fixed: Obstacle[] = task.keepClear.map((box) => ({ ...box, gapMm }));
  for (const i of pinned) fixed.push({ ...boxes[i]!, gapMm });
  const [dx, dy] = [task.to.xMm - boxes[moved]!.xMm, task.to.yMm - boxes[moved]!.yMm];
  const shifted = (i: number, x: number, y: number): Box => {
    const box = boxes[i]!;
    return { ...box, xMm: box.xMm + x, yMm: box.yMm + y };
  };
  const spot = nearestTogether(
    movers.map((i) => shifted(i, dx, dy)),
    fixed,
    surface,
  );
  if (spot === undefined) return refused;
  for (const i of movers) {
    now[i] = shifted(i, spot.xMm - boxes[moved]!.xMm, spot.yMm - boxes[moved]!.yMm);
    fixed.push({ ...now[i], gapMm });
  }
  const settled = [...movers];
  const away = (box: Box) =>
    Math.min(...movers.map((i) => (box.xMm - now[i]!.xMm) ** 2 + (box.yMm - now[i]!.yMm) ** 2));
  const waiting = new Set(boxes.map((_, i) => i).filter((i) => !movers.includes(i) && !pinned.has(i)));
  for (;;) {
    let next = -1;
    for (const i of waiting) {
      if (!settled.some((k) => overlaps(boxes[i]!, now[k]!, gapMm))) continue;
      if (next < 0 || away(boxes[i]!) < away(boxes[next]!)) next = i;
    }
    if (next < 0) break;
    waiting.delete(next);
    const to = givenWay(
      boxes[next]!,
      fixed,
      [...waiting].map((i) => ({ ...boxes[i]!, gapMm })),
      surface,
    );
    if (to === undefined) return refused;
    now[next] = { ...boxes[next]!, ...to };
    settled.push(next);
    fixed.push({ ...now[next]!, gapMm });
  }
  return { places: now.map(({ xMm, yMm }) => ({ xMm, yMm })), gaveWay: settled.slice(movers.length), refused: false };
}

function givenWay(box: Box, fixed: readonly Obstacle[], others: readonly Obstacle[], surface: Extent) {
  const pushing = nearestFree(box, fixed, surface);
  if (pushing === undefined) return undefined;
  const far = ({ xMm, yMm }: Spot) => Math.hypot(xMm - box.xMm, yMm - box.yMm);
  return nearestFree(box, [...fixed, ...others], surface, DETOUR * far(pushing) + 1) ?? pushing;
}
