/** From a typed gap to the move that makes it. Pure; mm in the surface's own frame, y up. */

export type Side = 'left' | 'right' | 'above' | 'below';

/** The way a box must go so that the gap on one side becomes the wanted one. */
export function moveForGap(
  side: Side,
  gapMm: number,
  wantedMm: number,
): { readonly dxMm: number; readonly dyMm: number } {
  const more = wantedMm - gapMm;
  switch (side) {
    case 'left':
      return { dxMm: more, dyMm: 0 };
    case 'right':
      return { dxMm: 0 - more, dyMm: 0 };
    case 'below':
      return { dxMm: 0, dyMm: more };
    case 'above':
      return { dxMm: 0, dyMm: 0 - more };
  }
}

/** Pieces moved together so that the middle of what they span comes to `middleMm` (x); their own gaps stay. */
export function centredMoveOf(
  boxes: readonly { readonly xMm: number; readonly widthMm: number }[],
  middleMm: number,
): number {
  if (boxes.length === 0) return 0;
  const left = Math.min(...boxes.map(({ xMm, widthMm }) => xMm - widthMm / 2));
  const right = Math.max(...boxes.map(({ xMm, widthMm }) => xMm + widthMm / 2));
  return middleMm - (left + right) / 2;
}
