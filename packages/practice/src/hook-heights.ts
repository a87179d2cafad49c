/** Where the hooks go. Heights are from the level plane, x along the wall from its left corner as faced; all in mm. */

/**
 * Height of the hook: centre + height / 2 − drop, the drop being from the top edge to where the hardware bears, under
 * tension. Source: a museum's own hanging guide, as read.
 */
export function hookHeightOf(piece: {
  readonly centreMm: number;
  readonly heightMm: number;
  readonly dropMm: number;
}): number {
  return piece.centreMm + piece.heightMm / 2 - piece.dropMm;
}

/**
 * Positions of the hooks along the wall, left to right, the outer ones `spacingMm` apart about the centre and the rest
 * evenly between. Without a spacing each hook takes the middle of its equal share of the width (two: the quarter
 * points), which is common practice, no source, and to be measured. None for 0 hooks. RangeError where hooks is no
 * whole number of 0 or more.
 */
export function hooksOf(piece: {
  readonly centreXmm: number;
  readonly widthMm: number;
  readonly hooks: number;
  readonly spacingMm?: number;
}): readonly number[] {
  const { centreXmm, widthMm, hooks } = piece;
  if (!Number.isInteger(hooks) || hooks < 0) {
    throw new RangeError(`hooks is ${hooks}; it must be a whole number of 0 or more`);
  }
  if (hooks === 0) return [];
  if (hooks === 1) return [centreXmm];
  const spacingMm = piece.spacingMm ?? widthMm * (1 - 1 / hooks);
  return Array.from({ length: hooks }, (_, i) => centreXmm - spacingMm / 2 + (spacingMm * i) / (hooks - 1));
}

/**
 * A hook's height as a preparator measures it: above the laser line (negative below it) and above the floor straight
 * beneath. Floors slope, so the floor's level is that under this very hook. Common practice, no source.
 */
export function heightsOf(hook: { readonly hookMm: number; readonly laserMm: number; readonly floorMm: number }): {
  readonly fromLaserMm: number;
  readonly fromFloorMm: number;
} {
  return { fromLaserMm: hook.hookMm - hook.laserMm, fromFloorMm: hook.hookMm - hook.floorMm };
}
