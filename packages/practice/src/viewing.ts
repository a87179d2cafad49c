/** From where a work is looked at (mm, degrees). */

/** The diagonal of a work and the distances from which it is commonly seen, 1.5 to 2 diagonals; common practice, no source. */
export function viewingDistanceOf(work: { readonly widthMm: number; readonly heightMm: number }): {
  readonly diagonalMm: number;
  readonly nearMm: number;
  readonly farMm: number;
} {
  const diagonalMm = Math.hypot(work.widthMm, work.heightMm);
  return { diagonalMm, nearMm: 1.5 * diagonalMm, farMm: 2 * diagonalMm };
}

/**
 * Distance from which a height fills a vertical field of view, H / (2 tan(θ / 2)). RangeError unless 0 < θ < 180.
 * Source: geometry; 27° is common practice, no source.
 */
export function fieldDistanceOf(heightMm: number, fieldDegrees = 27): number {
  if (!(fieldDegrees > 0 && fieldDegrees < 180)) {
    throw new RangeError(`fieldDegrees is ${fieldDegrees}; it must lie between 0 and 180`);
  }
  return heightMm / (2 * Math.tan((fieldDegrees * Math.PI) / 360));
}

/**
 * Distance from which a work wholly above the eye is seen at its greatest angle, √(a · b), a and b being its top and
 * bottom above the eye. RangeError where one of them is not above it. Source: geometry (Regiomontanus).
 */
export function highWorkDistanceOf(work: {
  readonly topAboveEyeMm: number;
  readonly bottomAboveEyeMm: number;
}): number {
  const { topAboveEyeMm, bottomAboveEyeMm } = work;
  if (!(bottomAboveEyeMm > 0)) throw new RangeError(`bottomAboveEyeMm is ${bottomAboveEyeMm}; it must be above 0`);
  if (!(topAboveEyeMm > bottomAboveEyeMm)) {
    throw new RangeError(`topAboveEyeMm is ${topAboveEyeMm}; it must be above ${bottomAboveEyeMm}`);
  }
  return Math.sqrt(topAboveEyeMm * bottomAboveEyeMm);
}
