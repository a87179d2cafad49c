import type { Box, Extent } from './boxes.ts';

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
  return nearestTogether([wanted], obstacles, surface, withinMm);
}

/** The same of several that move as one: the first's place, the others as far from it as they are wanted. */
export function nearestTogether(
  wanted: readonly Box[],
  obstacles: readonly Obstacle[],
  surface: Extent,
  withinMm = Infinity,
): Spot | undefined {
  const [first] = wanted;
  if (first === undefined) throw new RangeError('nothing is wanted anywhere');
  let [left, right, bottom, top] = [-Infinity, Infinity, -Infinity, Infinity];
  const barred: Barred[] = [];
  for (const { xMm, yMm, widthMm, heightMm } of wanted) {
    const [dx, dy] = [xMm - first.xMm, yMm - first.yMm];
    left = Math.max(left, Math.ceil(surface.leftMm + widthMm / 2 - dx));
    right = Math.min(right, Math.floor(surface.rightMm - widthMm / 2 - dx));
    bottom = Math.max(bottom, Math.ceil(surface.bottomMm + heightMm / 2 - dy));
    top = Math.min(top, Math.floor(surface.topMm - heightMm / 2 - dy));
    for (const obstacle of obstacles) {
      const ex = (obstacle.widthMm + widthMm) / 2 + obstacle.gapMm;
      const ey = (obstacle.heightMm + heightMm) / 2 + obstacle.gapMm;
      barred.push({ xs: outward(obstacle.xMm - dx, ex), ys: outward(obstacle.yMm - dy, ey) });
    }
  }
  if (left > right || bottom > top) return undefined;
  const start = { xMm: within(Math.round(first.xMm), left, right), yMm: within(Math.round(first.yMm), bottom, top) };
  const farthest = Math.min(withinMm, surface.rightMm - surface.leftMm + surface.topMm - surface.bottomMm);
  let reach = (first.widthMm + first.heightMm) / 2;
  for (;;) {
    const spot = nearestWithin(start, barred, { xs: [left, right], ys: [bottom, top] }, Math.min(reach, farthest));
    if (spot !== undefined || reach >= farthest) return spot;
    reach *= 2;
  }
}

/** Where a centre may not be: strictly between both pairs, whole mm. */
interface Barred {
  readonly xs: readonly [number, number];
  readonly ys: readonly [number, number];
}

function nearestWithin(start: Spot, barred: readonly Barred[], room: Barred, reach: number): Spot | undefined {
  const { xMm: atX, yMm: atY } = start;
  const near = barred.filter(
    ({ xs, ys }) => xs[0] < atX + reach && xs[1] > atX - reach && ys[0] < atY + reach && ys[1] > atY - reach,
  );
  const free = (x: number, y: number) => {
    if (x < room.xs[0] || x > room.xs[1] || y < room.ys[0] || y > room.ys[1]) return false;
    for (const { xs, ys } of near) if (x > xs[0] && x < xs[1] && y > ys[0] && y < ys[1]) return false;
    return true;
  };
  if (free(atX, atY)) return start;
  let best: Spot | undefined;
  let least = reach * reach;
  const consider = (xMm: number, yMm: number) => {
    const away = (xMm - atX) ** 2 + (yMm - atY) ** 2;
    if (away > least || (away === least && best !== undefined) || !free(xMm, yMm)) return;
    best = { xMm, yMm };
    least = away;
  };
  for (const { xs, ys } of near) {
    for (const x of xs) consider(x, atY);
    for (const y of ys) consider(atX, y);
  }
  for (const { xs } of near)
    for (const x of xs) {
      if ((x - atX) ** 2 >= least) continue;
      for (const other of near) for (const y of other.ys) consider(x, y);
    }
  return best;
}

/** Both sides, in whole mm and never nearer than asked. */
function outward(at: number, by: number): readonly [number, number] {
  return [Math.floor(at - by + 1e-7), Math.ceil(at + by - 1e-7)];
}

function within(value: number, low: number, high: number): number {
  return Math.min(high, Math.max(low, value));
}
