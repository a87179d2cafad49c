/** Where something comes to lie that was placed by a key: near the middle, but not on top of what is there. */
import type { Box } from '@enfilade/arrangement/boxes';
import { freeAlong } from '@enfilade/arrangement/free-along';
import { nearestFree } from '@enfilade/arrangement/nearest-free';
import type { ScenePanel } from './panels.ts';

/** Between things laid out or stood on a floor (mm, own rule). */
const FLOOR_GAP_MM = 120;

/** The centre (mm, the panel's frame) where a box wanted at its own centre finds room; null where there is none. `gapMm`: the show's, between things hung. */
export function freeSpotOn(
  panel: ScenePanel,
  wanted: Box,
  others: readonly Box[],
  keepClear: readonly Box[],
  gapMm: number,
): { readonly xMm: number; readonly yMm: number } | null {
  if (panel.kind === 'wall') {
    const xMm = freeAlong({ wanted, surfaceWidthMm: panel.widthMm, others, keepClear, gapMm });
    return xMm === undefined ? null : { xMm, yMm: wanted.yMm };
  }
  const obstacles = others.map((box) => ({ ...box, gapMm: FLOOR_GAP_MM }));
  const surface = {
    leftMm: panel.kind === 'layout' ? -panel.widthMm : 0,
    rightMm: panel.widthMm,
    bottomMm: panel.lowestMm,
    topMm: panel.heightMm,
  };
  return nearestFree(wanted, obstacles, surface) ?? null;
}
