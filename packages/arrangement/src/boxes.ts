/** Upright rectangles on a surface: centre and sizes in mm, y up. */

export interface Box {
  readonly xMm: number;
  readonly yMm: number;
  readonly widthMm: number;
  readonly heightMm: number;
}

/** Where things may be: a surface, or the part of it inside a margin (mm). */
export interface Extent {
  readonly leftMm: number;
  readonly rightMm: number;
  readonly bottomMm: number;
  readonly topMm: number;
}

/** Rounding in sums of decimals must not turn touching into overlapping. */
export const TOUCH_MM = 1e-6;

/** The gap across two boxes (mm); negative where they share some of their width. */
export function acrossGapMm(a: Box, b: Box): number {
  return Math.abs(a.xMm - b.xMm) - (a.widthMm + b.widthMm) / 2;
}

/** The gap up and down between two boxes (mm); negative where they share some of their height. */
export function upGapMm(a: Box, b: Box): number {
  return Math.abs(a.yMm - b.yMm) - (a.heightMm + b.heightMm) / 2;
}

/** Whether two boxes come nearer than a clearance (mm) both across and up; touching at exactly the clearance is clear. */
export function overlaps(a: Box, b: Box, clearMm = 0): boolean {
  return acrossGapMm(a, b) < clearMm - TOUCH_MM && upGapMm(a, b) < clearMm - TOUCH_MM;
}

/** Whether a box lies wholly within an extent; touching its edge is inside. */
export function inside(box: Box, extent: Extent): boolean {
  const { leftMm, rightMm, bottomMm, topMm } = extentOf(box);
  return (
    leftMm >= extent.leftMm - TOUCH_MM &&
    rightMm <= extent.rightMm + TOUCH_MM &&
    bottomMm >= extent.bottomMm - TOUCH_MM &&
    topMm <= extent.topMm + TOUCH_MM
  );
}

/** The four edges of a box (mm). */
export function extentOf(box: Box): Extent {
  return {
    leftMm: box.xMm - box.widthMm / 2,
    rightMm: box.xMm + box.widthMm / 2,
    bottomMm: box.yMm - box.heightMm / 2,
    topMm: box.yMm + box.heightMm / 2,
  };
}

/** The smallest box round all of them (mm); none for no boxes. */
export function boundsOf(boxes: readonly Box[]): Box | undefined {
  if (boxes.length === 0) return undefined;
  let [left, right, bottom, top] = [Infinity, -Infinity, Infinity, -Infinity];
  for (const box of boxes) {
    left = Math.min(left, box.xMm - box.widthMm / 2);
    right = Math.max(right, box.xMm + box.widthMm / 2);
    bottom = Math.min(bottom, box.yMm - box.heightMm / 2);
    top = Math.max(top, box.yMm + box.heightMm / 2);
  }
  return { xMm: (left + right) / 2, yMm: (bottom + top) / 2, widthMm: right - left, heightMm: top - bottom };
}

/** A box and the same box seen in a mirror standing at x = 0. */
export function mirrored<B extends Box>(box: B): B {
  return { ...box, xMm: -box.xMm };
}
