import { type Box, type Extent, inside, overlaps } from './boxes.ts';

/** Something to stay away from, and by how much (mm). */
export interface Obstacle extends Box {
  readonly gapMm: number;
}

export interface Spot {
  readonly xMm: number;
  readonly yMm: number;
}

/**
 * The place nearest to where a box (mm) is wanted that lies inside a surface and keeps every obstacle's gap, in whole
 * mm; undefined when there is none within `withinMm`. Exact but for the rounding: the nearest place outside a set of
 * upright rectangles lies on one's side or where two sides cross, so only those are tried.
 */
export function nearestFree(
  wanted: Box,
  obstacles: readonly Obstacle[],
  surface: Extent,
  withinMm = Infinity,
): Spot | undefined {
  const { widthMm, heightMm } = wanted;
  const [left, right] = [Math.ceil(surface.leftMm + widthMm / 2), Math.floor(surface.rightMm - widthMm / 2)];
  const [bottom, top] = [Math.ceil(surface.bottomMm + heightMm / 2), Math.floor(surface.topMm - heightMm / 2)];
  if (left > right || bottom > top) return undefined;
  const start = { xMm: within(Math.round(wanted.xMm), left, right), yMm: within(Math.round(wanted.yMm), bottom, top) };
  const farthest = Math.min(withinMm, surface.rightMm - surface.leftMm + surface.topMm - surface.bottomMm);
  let reach = (widthMm + heightMm) / 2;
  for (;;) {
    const spot = nearestWithin(wanted, start, obstacles, surface, Math.min(reach, farthest));
    if (spot !== undefined || reach >= farthest) return spot;
    reach *= 2;
  }
}

function nearestWithin(wanted: Box, start: Spot, obstacles: readonly Obstacle[], surface: Extent, reach: number) {
  const { widthMm, heightMm } = wanted;
  const near: { readonly obstacle: Obstacle; readonly xs: readonly number[]; readonly ys: readonly number[] }[] = [];
  for (const obstacle of obstacles) {
    const ex = (obstacle.widthMm + widthMm) / 2 + obstacle.gapMm;
    const ey = (obstacle.heightMm + heightMm) / 2 + obstacle.gapMm;
    if (Math.abs(obstacle.xMm - start.xMm) > ex + reach || Math.abs(obstacle.yMm - start.yMm) > ey + reach) continue;
    near.push({ obstacle, xs: outward(obstacle.xMm, ex), ys: outward(obstacle.yMm, ey) });
  }
  const free = (xMm: number, yMm: number) => {
    const box = { xMm, yMm, widthMm, heightMm };
    return inside(box, surface) && near.every(({ obstacle }) => !overlaps(box, obstacle, obstacle.gapMm));
  };
  if (free(start.xMm, start.yMm)) return start;
  let best: Spot | undefined;
  let least = reach * reach;
  const consider = (xMm: number, yMm: number) => {
    const away = (xMm - start.xMm) ** 2 + (yMm - start.yMm) ** 2;
    if (away > least || (away === least && best !== undefined) || !free(xMm, yMm)) return;
    best = { xMm, yMm };
    least = away;
  };
  for (const { xs, ys } of near) {
    for (const x of xs) consider(x, start.yMm);
    for (const y of ys) consider(start.xMm, y);
  }
  for (const { xs } of near)
    for (const x of xs) {
      if ((x - start.xMm) ** 2 >= least) continue;
      for (const other of near) for (const y of other.ys) consider(x, y);
    }
  return best;
}

/** Both sides, in whole mm and never nearer than asked. */
function outward(at: number, by: number): readonly number[] {
  return [Math.floor(at - by + 1e-7), Math.ceil(at + by - 1e-7)];
}

function within(value: number, low: number, high: number): number {
  return Math.min(high, Math.max(low, value));
}
