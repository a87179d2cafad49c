import { acrossGapMm, type Box, type Extent, upGapMm } from './boxes.ts';

/** How far to what is nearest on one side, and what that is: an index into the others, or the edge of the surface. */
export interface SideGap {
  readonly mm: number;
  readonly to: number | 'edge';
}

export interface NeighbourGaps {
  readonly left: SideGap;
  readonly right: SideGap;
  readonly above: SideGap;
  readonly below: SideGap;
}

/**
 * The gap (mm) on each side of a box to the nearest thing that faces it, else to the edge of the surface. A thing
 * faces the box on a side when it shares some of the box's height (left, right) or width (above, below). A thing that
 * covers part of the box shows on the side where it could leave soonest, as a negative gap. One pass over the others,
 * quick enough for every pointer move.
 */
export function gapsOf(box: Box, others: readonly Box[], surface: Extent): NeighbourGaps {
  const sides = {
    left: { mm: box.xMm - box.widthMm / 2 - surface.leftMm, to: 'edge' as number | 'edge' },
    right: { mm: surface.rightMm - box.xMm - box.widthMm / 2, to: 'edge' as number | 'edge' },
    above: { mm: surface.topMm - box.yMm - box.heightMm / 2, to: 'edge' as number | 'edge' },
    below: { mm: box.yMm - box.heightMm / 2 - surface.bottomMm, to: 'edge' as number | 'edge' },
  };
  others.forEach((other, index) => {
    const across = acrossGapMm(box, other);
    const up = upGapMm(box, other);
    if (across >= 0 && up >= 0) return; // only corners look at each other
    const sideways = up < 0 && (across >= 0 || across >= up);
    const side = sideways
      ? sides[other.xMm > box.xMm ? 'right' : 'left']
      : sides[other.yMm > box.yMm ? 'above' : 'below'];
    const mm = sideways ? across : up;
    if (mm < side.mm) {
      side.mm = mm;
      side.to = index;
    }
  });
  return sides;
}
