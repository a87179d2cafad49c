import type { Box, Extent } from './boxes.ts';
import { buildHalo } from './halo-build.ts';
import type { Thing } from './halo-ground.ts';
import { relaxHalo } from './halo-relax.ts';
import { focalOf, hangGroundOf, surfaceFor } from './hang-ground.ts';
import type { Places } from './hang-line.ts';
import { clearRuns, standingOn } from './hang-rows.ts';
import type { HangTask } from './hang-task.ts';
import { seeded } from './seeded.ts';

/** What frames on a salon wall leave empty, about. */
const FILL = 0.7;
const PASSES = 20;

/**
 * Everything packed at the least gap round the focal work, which hangs on the centre line as near the middle as it
 * may: larger pieces nearer to it. Undefined when stopped.
 */
export function massedSalon(task: HangTask, goOn: () => boolean): Places | undefined {
  const { pieces, gapMm } = task;
  const random = seeded(task.seed);
  const ground = hangGroundOf(task);
  if (ground.free.length === 0) return ground.places;
  const focal = focalOf(task);
  if (ground.places[focal] === null) ground.put(focal, middleOf(task), task.centreLineMm);
  const at = ground.places[focal];
  if (!at) return ground.places;
  const area = (i: number) => pieces[i]!.widthMm * pieces[i]!.heightMm;
  // Sorted before the dice are thrown, so that the order given changes nothing.
  const rest = ground.free
    .filter((i) => i !== focal)
    .sort((a, b) => area(b) - area(a) || pieces[b]!.widthMm - pieces[a]!.widthMm || a - b);
  const thing = (box: Box, kind: Thing['kind'], index: number): Thing => {
    const half = { halfWidth: box.widthMm / 2, halfHeight: box.heightMm / 2 };
    return { x: box.xMm, y: box.yMm, ...half, kind, leastMm: gapMm, ease: 1, index, spent: 0 };
  };
  const ordered = rest
    .map((index) => {
      const { widthMm, heightMm } = pieces[index]!;
      const rank = widthMm * heightMm * Math.exp((random() - 0.5) * 0.6);
      return { rank, thing: thing({ xMm: 0, yMm: 0, widthMm, heightMm }, 'piece', index) };
    })
    .sort((a, b) => b.rank - a.rank)
    .map((one) => one.thing);
  const focalThing = thing({ ...pieces[focal]!, ...at }, 'focal', -1);
  const clear = standingOn(task)
    .filter((box) => box.xMm !== at.xMm || box.yMm !== at.yMm)
    .map((box) => thing(box, 'clear', -1));
  const needed = rest.reduce((sum, i) => sum + (pieces[i]!.widthMm + gapMm) * (pieces[i]!.heightMm + gapMm), 0) / FILL;
  const surface = stretchFor(task, focal, at.xMm, needed);
  const height = Math.min(
    surface.topMm - surface.bottomMm,
    2 * Math.min(surface.topMm - at.yMm, at.yMm - surface.bottomMm),
  );
  const across = Math.min(4, Math.max(0.8, needed / height ** 2));
  const reachMm = Infinity;
  const built = buildHalo(
    {
      surface,
      focal: focalThing,
      clear,
      pieces: ordered,
      across,
      leanDegrees: Number.NaN,
      wander: 0.03,
      reachMm,
      level: 0,
      straight: 0,
      goOn,
    },
    random,
    false,
  );
  if (built === undefined) return undefined;
  relaxHalo(built.placed, focalThing, clear, surface, {
    passes: PASSES,
    level: 0,
    limitMm: 6 * gapMm,
    sight: 4,
    reachMm,
    goOn: () => true,
  });
  // A heavy piece that came to hang above reach comes down to the nearest room left by the others.
  const low = (piece: Thing) => piece.y + piece.halfHeight <= surfaceFor(task, pieces[piece.index]!).topMm;
  for (const piece of built.placed.filter(low)) ground.put(piece.index, piece.x, piece.y, 1);
  for (const piece of built.placed.filter((one) => !low(one))) ground.put(piece.index, piece.x, piece.y);
  for (const piece of built.unplaced) ground.put(piece.index, at.xMm, at.yMm);
  return ground.places;
}

/** The stretch of wall the focal work hangs in, from floor to top, where it has room for all; else the whole surface. */
function stretchFor(task: HangTask, focal: number, xMm: number, areaMm2: number): Extent {
  const { surface, centreLineMm } = task;
  const half = task.pieces[focal]!.heightMm / 2;
  const run = clearRuns(task, centreLineMm - half, centreLineMm + half).find(
    (one) => one.fromMm < xMm && one.toMm > xMm,
  );
  const room = run === undefined ? 0 : (run.toMm - run.fromMm) * (surface.topMm - surface.bottomMm);
  return run !== undefined && room > 1.15 * areaMm2 ? { ...surface, leftMm: run.fromMm, rightMm: run.toMm } : surface;
}

/** The middle of the widest stretch clear at eye height, or of the wall where that is clear. */
export function middleOf(task: HangTask): number {
  const { heightMm } = task.pieces[focalOf(task)]!;
  const middle = (task.surface.leftMm + task.surface.rightMm) / 2;
  const runs = clearRuns(task, task.centreLineMm - heightMm / 2, task.centreLineMm + heightMm / 2);
  const widest = runs.reduce((best, run) => (run.toMm - run.fromMm > best.toMm - best.fromMm ? run : best), {
    fromMm: middle,
    toMm: middle,
  });
  return (widest.fromMm + widest.toMm) / 2;
}
