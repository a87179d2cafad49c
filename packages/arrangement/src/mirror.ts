import type { Box, Extent } from './boxes.ts';
import type { Spot } from './nearest-free.ts';

/**
 * Whether a surface is the one of two mirror twins that is turned round before it is arranged, so that both have one
 * answer: the first of the boxes, in order, that does not stand in the middle stands right of it.
 */
export function facesLeft(surface: Extent, boxes: readonly Box[]): boolean {
  for (const { xMm } of boxes) {
    const [fromLeft, fromRight] = [xMm - surface.leftMm, surface.rightMm - xMm].map((mm) => Math.round(mm * 1e3));
    if (fromLeft !== fromRight) return fromLeft! > fromRight!;
  }
  return false;
}

/** The surface as seen in a mirror standing at x = 0. */
export function mirroredExtent(surface: Extent): Extent {
  return { ...surface, leftMm: -surface.rightMm, rightMm: -surface.leftMm };
}

/** Places as seen in a mirror standing at x = 0; what has none keeps none. */
export function mirroredSpots(spots: readonly (Spot | null)[]): (Spot | null)[] {
  return spots.map((at) => at && { xMm: 0 - at.xMm, yMm: at.yMm });
}
