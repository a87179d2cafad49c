import { type Box, boundsOf, type Extent, extentOf, inside, overlaps } from './boxes.ts';
import type { Issue } from './issues.ts';

/** What is brought to one height (tops, centres, feet) or one upright (lefts, middles, rights). */
export type AlignedBy = 'tops' | 'centres' | 'feet' | 'lefts' | 'middles' | 'rights';

export interface Aligned {
  /** Centres by box, whole mm, so that an edge may be off by half a millimetre. */
  readonly places: readonly { readonly xMm: number; readonly yMm: number }[];
  /** The height or upright they stand at now (mm). */
  readonly atMm: number;
  /** What it would bring about, the places notwithstanding: two over each other, one off the surface. */
  readonly issues: readonly Issue[];
}

/**
 * Boxes brought to one height or one upright: to `toMm`, else tops to the highest top, feet to the lowest foot, centres
 * to the middle of their outline, and so across. Only that one coordinate changes. Common practice.
 */
export function align(
  boxes: readonly Box[],
  by: AlignedBy,
  options: { readonly toMm?: number; readonly surface?: Extent } = {},
): Aligned {
  const bounds = boundsOf(boxes);
  if (bounds === undefined) return { places: [], atMm: options.toMm ?? 0, issues: [] };
  const atMm = options.toMm ?? edgeOf(bounds, by);
  const upright = by === 'lefts' || by === 'middles' || by === 'rights';
  const moved = boxes.map((box): Box => {
    const off = atMm - edgeOf(box, by);
    return upright ? { ...box, xMm: Math.round(box.xMm + off) } : { ...box, yMm: Math.round(box.yMm + off) };
  });
  return {
    places: moved.map(({ xMm, yMm }) => ({ xMm, yMm })),
    atMm,
    issues: placementIssues(moved, options.surface),
  };
}

/** What stands over another or leaves the surface, by index: 'pieces[2]', what, and the other or its centre (mm). */
export function placementIssues(boxes: readonly Box[], surface?: Extent): readonly Issue[] {
  const issues: Issue[] = [];
  boxes.forEach((box, i) => {
    const where = `pieces[${i}]`;
    if (surface !== undefined && !inside(box, surface))
      issues.push({ where, what: 'leaves the surface', value: `${box.xMm}, ${box.yMm}` });
    for (let j = 0; j < i; j++)
      if (overlaps(box, boxes[j]!)) issues.push({ where, what: 'stands over another', value: `pieces[${j}]` });
  });
  return issues;
}

function edgeOf(box: Box, by: AlignedBy): number {
  const { leftMm, rightMm, bottomMm, topMm } = extentOf(box);
  switch (by) {
    case 'tops':
      return topMm;
    case 'feet':
      return bottomMm;
    case 'lefts':
      return leftMm;
    case 'rights':
      return rightMm;
    case 'centres':
      return box.yMm;
    case 'middles':
      return box.xMm;
  }
}
