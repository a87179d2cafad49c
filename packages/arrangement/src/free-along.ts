import type { Box } from './boxes.ts';
import { nearestFree } from './nearest-free.ts';

interface AlongTask {
  /** What is to be hung, wanted at this centre (mm). */
  readonly wanted: Box;
  readonly surfaceWidthMm: number;
  /** What hangs there: the gap is kept to each. */
  readonly others: readonly Box[];
  /** Openings, and fixtures with their margins: not covered. */
  readonly keepClear: readonly Box[];
  readonly gapMm: number;
}

/** Where the gap asked for finds no room, smaller shares of it are tried (own rule). */
const SHARES = [1, 0.5, 0.25, 0.1] as const;

/**
 * The x (whole mm, the box's centre) nearest to the wanted one at which it hangs on its own height free of everything;
 * undefined where the surface has no such place. RangeError on a negative gap.
 */
export function freeAlong({ wanted, surfaceWidthMm, others, keepClear, gapMm }: AlongTask): number | undefined {
  if (!(gapMm >= 0)) throw new RangeError(`gapMm is ${gapMm}; it must be 0 or more`);
  const yMm = Math.round(wanted.yMm);
  const heightMm = Math.ceil(wanted.heightMm / 2) * 2;
  // A lane exactly as high as the box: it may move along it, not up or down.
  const lane = { leftMm: 0, rightMm: surfaceWidthMm, bottomMm: yMm - heightMm / 2, topMm: yMm + heightMm / 2 };
  for (const share of SHARES) {
    const obstacles = [
      ...others.map((box) => ({ ...box, gapMm: gapMm * share })),
      ...keepClear.map((box) => ({ ...box, gapMm: 0 })),
    ];
    const spot = nearestFree({ ...wanted, yMm, heightMm }, obstacles, lane);
    if (spot !== undefined) return spot.xMm;
  }
  return undefined;
}
