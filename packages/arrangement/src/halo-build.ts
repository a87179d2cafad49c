import type { Extent } from './boxes.ts';
import { type Ground, groundOf, type Thing, tooNear, wantedMm } from './halo-ground.ts';
import { alignmentMm } from './straightness.ts';

/** What standing straight costs, in mean sizes: less lets columns show, more tears holes. */
const STRAIGHT = 0.3;

export interface BuildTask {
  readonly surface: Extent;
  readonly focal: Thing;
  readonly clear: readonly Thing[];
  /** In the order they are to be placed. */
  readonly pieces: readonly Thing[];
  readonly across: number;
  readonly leanDegrees: number;
  /** How far the outline may bulge and dent, 0 … 1. */
  readonly wander: number;
  readonly reachMm: number;
  /** 1: the wanted gaps; 0: the least ones. */
  readonly level: number;
  /** What standing straight costs, in mean sizes; a salon's frames may stand straight. */
  readonly straight?: number;
  /** Told after each piece; false stops. */
  readonly goOn: () => boolean;
}

export interface Built {
  readonly ground: Ground;
  readonly placed: Thing[];
  readonly unplaced: Thing[];
}

/**
 * Pieces put one after the other at the place nearest to the focal work that breaks no rule. A place touching another
 * thing at the wanted gap lies on the border of their no-fit rectangle, so only points on those borders are tried:
 * the nearest to the focal work, a random one, and the crossings with neighbours' borders (for rectangles the no-fit
 * polygon is again a rectangle). With `all`, gives up at the first piece that finds no room.
 */
export function buildHalo(task: BuildTask, random: () => number, all: boolean): Built | undefined {
  const { surface, focal, level } = task;
  const sizes = task.pieces.map((piece) => piece.halfWidth + piece.halfHeight + piece.leastMm);
  const mean = sizes.reduce((sum, size) => sum + size, 0) / Math.max(1, sizes.length);
  let farthest = 0;
  const ground = groundOf(surface, 1.5 * mean);
  for (const thing of [focal, ...task.clear]) ground.add({ ...thing, spent: 0 });
  const placed: Thing[] = [];
  const unplaced: Thing[] = [];
  const reachOut = maxWantedMm(task);
  const stretch = Math.sqrt(task.across);
  const lean = (task.leanDegrees * Math.PI) / 180;
  for (const piece of task.pieces) {
    const [left, right] = [Math.ceil(surface.leftMm + piece.halfWidth), Math.floor(surface.rightMm - piece.halfWidth)];
    const low = Math.ceil(surface.bottomMm + piece.halfHeight);
    let high = Math.floor(Math.min(surface.topMm, task.reachMm) - piece.halfHeight);
    const phase = Number.isNaN(lean) ? random() * 2 * Math.PI : lean + Math.PI + (random() - 0.5) * 1.2;
    let best = Infinity;
    let at: { x: number; y: number } | undefined;
    let tried = 0;
    let fitted = 0;
    const costOf = (x: number, y: number) => {
      const across = Math.max(0, Math.abs(x - focal.x) - focal.halfWidth) / stretch;
      const up = Math.max(0, Math.abs(y - focal.y) - focal.halfHeight) * stretch;
      const away = Math.sqrt(across * across + up * up);
      if (away * (1 - task.wander) >= best) return Infinity;
      const tooHigh = Math.max(0, y + piece.halfHeight - task.reachMm);
      // cos of the angle to the phase, without the angle
      const [dx, dy] = [x - focal.x, y - focal.y];
      const length = Math.sqrt(dx * dx + dy * dy) || 1;
      const toward = (dx * Math.cos(phase) + dy * Math.sin(phase)) / length;
      return away * (1 + task.wander * toward) + 10 * tooHigh;
    };
    const fits = (x: number, y: number) =>
      !ground.some(x, y, piece.halfWidth + reachOut, piece.halfHeight + reachOut, (other) =>
        tooNear(piece, x, y, other, wantedMm(piece, other, level)),
      );
    const consider = (rawX: number, rawY: number) => {
      const x = Math.min(right, Math.max(left, rawX));
      const y = Math.min(high, Math.max(low, rawY));
      const cost = costOf(x, y);
      if (cost >= best) return;
      tried++;
      if (!fits(x, y)) return;
      fitted++;
      const whole =
        cost + (task.straight === 0 ? 0 : alignmentMm(ground, piece, x, y, mean * (task.straight ?? STRAIGHT), mean));
      if (whole >= best) return;
      best = whole;
      at = { x, y };
    };
    const search = (patience: number) => {
      for (let i = ground.things.length - 1; i >= 0; i--) {
        const other = ground.things[i]!;
        if (other.spent > patience) continue;
        const ex = other.halfWidth + piece.halfWidth + wantedMm(piece, other, level);
        const ey = other.halfHeight + piece.halfHeight + wantedMm(piece, other, level);
        const across = Math.max(0, Math.abs(other.x - focal.x) - focal.halfWidth - ex) / stretch;
        const up = Math.max(0, Math.abs(other.y - focal.y) - focal.halfHeight - ey) * stretch;
        if (Math.sqrt(across * across + up * up) * (1 - task.wander) >= best) continue;
        tried = 0;
        fitted = 0;
        const nearestY = Math.round(Math.min(other.y + ey, Math.max(other.y - ey, focal.y)));
        const nearestX = Math.round(Math.min(other.x + ex, Math.max(other.x - ex, focal.x)));
        for (const side of [-1, 1]) {
          const x = outward(other.x, side * ex);
          const y = outward(other.y, side * ey);
          consider(x, nearestY);
          consider(nearestX, y);
          for (let again = 0; again < 2; again++) {
            consider(x, Math.round(other.y + (random() * 2 - 1) * ey));
            consider(Math.round(other.x + (random() * 2 - 1) * ex), y);
          }
          ground.some(x, other.y, piece.halfWidth + reachOut, ey + piece.halfHeight + reachOut, (third) => {
            const tx = third.halfWidth + piece.halfWidth + wantedMm(piece, third, level);
            const ty = third.halfHeight + piece.halfHeight + wantedMm(piece, third, level);
            if (third !== other && Math.abs(x - third.x) <= tx) {
              consider(x, outward(third.y, ty));
              consider(x, outward(third.y, -ty));
            }
            return false;
          });
        }
        if (fitted > 0) other.spent = 0;
        else if (tried >= 8) other.spent++;
      }
    };
    const place = () => {
      if (left > right || low > high) return;
      search(2);
      // Passing over borders searched in vain is quick, but may miss the only near place and settle for a stray one.
      if (best > farthest + mean) search(Infinity);
    };
    place();
    if (at === undefined && task.reachMm < surface.topMm) {
      high = Math.floor(surface.topMm - piece.halfHeight);
      place();
    }
    if (at !== undefined) farthest = Math.max(farthest, best);
    if (at === undefined) {
      if (all) return undefined;
      unplaced.push(piece);
    } else {
      const standing = { ...piece, ...at, spent: 0 };
      ground.add(standing);
      placed.push(standing);
    }
    if (!task.goOn()) return undefined;
  }
  return { ground, placed, unplaced };
}

/** Whole mm, never nearer than asked. */
function outward(from: number, by: number): number {
  return by > 0 ? Math.ceil(from + by - 1e-7) : Math.floor(from + by + 1e-7);
}

function maxWantedMm(task: BuildTask): number {
  let most = 0;
  for (const piece of task.pieces)
    for (const other of [task.focal, ...task.clear, piece]) most = Math.max(most, wantedMm(piece, other, task.level));
  const easiest = task.pieces.reduce((ease, piece) => Math.max(ease, piece.ease), 1);
  const least = task.pieces[0]?.leastMm ?? 0;
  return Math.max(most, least * (1 + task.level * (easiest - 1)));
}
