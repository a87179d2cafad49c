/** What can be said of a grouping in figures. A low spread of gaps alone proves little: read it beside the largest void. */
import { acrossGapMm, type Box, boundsOf, upGapMm } from './boxes.ts';

/**
 * The gaps (mm) from each box to the nearest that faces it on its left, right, top and bottom, those up to a limit:
 * what lies farther is not a neighbour. A gap between two mutual neighbours counts from both. Boxes from `upTo` on are
 * looked at but don't look themselves (the focal work, put last).
 */
export function facingGaps(boxes: readonly Box[], limitMm: number, upTo = boxes.length): number[] {
  const gaps: number[] = [];
  for (let i = 0; i < upTo; i++) {
    const box = boxes[i]!;
    let [left, right, above, below] = [Infinity, Infinity, Infinity, Infinity];
    for (let j = 0; j < boxes.length; j++) {
      if (j === i) continue;
      const other = boxes[j]!;
      const across = acrossGapMm(box, other);
      const up = upGapMm(box, other);
      if (up < 0) {
        if (other.xMm > box.xMm) right = Math.min(right, across);
        else left = Math.min(left, across);
      }
      if (across < 0) {
        if (other.yMm > box.yMm) above = Math.min(above, up);
        else below = Math.min(below, up);
      }
    }
    for (const gap of [left, right, above, below]) if (gap < limitMm) gaps.push(Math.max(0, gap));
  }
  return gaps;
}

/** Mean and coefficient of variation (standard deviation over mean) of some lengths; 0 and 0 for none. */
export function spreadOf(lengthsMm: readonly number[]): { readonly meanMm: number; readonly cv: number } {
  if (lengthsMm.length === 0) return { meanMm: 0, cv: 0 };
  const meanMm = lengthsMm.reduce((sum, length) => sum + length, 0) / lengthsMm.length;
  const variance = lengthsMm.reduce((sum, length) => sum + (length - meanMm) ** 2, 0) / lengthsMm.length;
  return { meanMm, cv: meanMm === 0 ? 0 : Math.sqrt(variance) / meanMm };
}

/**
 * The diameter (mm) of the largest empty circle whose centre lies within the outline drawn tight round the boxes.
 * Found on a lattice of 48 steps along the longer side, so it may fall short by one step's diagonal.
 */
export function largestVoidMm(boxes: readonly Box[], alsoFilled: readonly Box[] = []): number {
  const bounds = boundsOf(boxes);
  if (bounds === undefined) return 0;
  const hull = hullOf(boxes);
  const step = Math.max(bounds.widthMm, bounds.heightMm) / 48;
  if (step === 0) return 0;
  const filled = [...boxes, ...alsoFilled];
  let most = 0;
  for (let y = bounds.yMm - bounds.heightMm / 2 + step / 2; y < bounds.yMm + bounds.heightMm / 2; y += step) {
    for (let x = bounds.xMm - bounds.widthMm / 2 + step / 2; x < bounds.xMm + bounds.widthMm / 2; x += step) {
      if (!within(hull, x, y)) continue;
      let nearest = Infinity;
      for (const box of filled) {
        const across = Math.max(0, Math.abs(x - box.xMm) - box.widthMm / 2);
        const up = Math.max(0, Math.abs(y - box.yMm) - box.heightMm / 2);
        nearest = Math.min(nearest, across * across + up * up);
        if (nearest <= most) break;
      }
      most = Math.max(most, nearest);
    }
  }
  return 2 * Math.sqrt(most);
}

/**
 * How far the weight of the boxes lies from a middle, −1 … 1 across and up: the distance of their common centre,
 * weighed by area, over half the outline's size. 0 is balanced, positive is right of it or above it.
 */
export function balanceOf(boxes: readonly Box[], middle: { readonly xMm: number; readonly yMm: number }) {
  const bounds = boundsOf(boxes);
  let [area, x, y] = [0, 0, 0];
  for (const box of boxes) {
    const weight = box.widthMm * box.heightMm;
    area += weight;
    x += weight * (box.xMm - middle.xMm);
    y += weight * (box.yMm - middle.yMm);
  }
  if (bounds === undefined || area === 0) return { x: 0, y: 0 };
  return { x: x / area / (bounds.widthMm / 2), y: y / area / (bounds.heightMm / 2) };
}

type Point = readonly [number, number];

/** The convex outline of the boxes' corners, anticlockwise (Andrew's monotone chain, 1979). */
function hullOf(boxes: readonly Box[]): readonly Point[] {
  const corners = boxes.flatMap(({ xMm, yMm, widthMm: w, heightMm: h }): Point[] => [
    [xMm - w / 2, yMm - h / 2],
    [xMm + w / 2, yMm - h / 2],
    [xMm - w / 2, yMm + h / 2],
    [xMm + w / 2, yMm + h / 2],
  ]);
  corners.sort((a, b) => a[0] - b[0] || a[1] - b[1]);
  return [...chainOf(corners), ...chainOf(corners.reverse())];
}

function chainOf(points: readonly Point[]): Point[] {
  const chain: Point[] = [];
  for (const point of points) {
    while (chain.length > 1 && turnOf(chain[chain.length - 2]!, chain[chain.length - 1]!, point) <= 0) chain.pop();
    chain.push(point);
  }
  chain.pop();
  return chain;
}

function within(hull: readonly Point[], x: number, y: number): boolean {
  return hull.every((from, i) => turnOf(from, hull[(i + 1) % hull.length]!, [x, y]) >= 0);
}

function turnOf(a: Point, b: Point, c: Point): number {
  return (b[0] - a[0]) * (c[1] - a[1]) - (b[1] - a[1]) * (c[0] - a[0]);
}
