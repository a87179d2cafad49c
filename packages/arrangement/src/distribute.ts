import { type Box, type Extent, extentOf } from './boxes.ts';
import type { Issue } from './issues.ts';

export type Distribution =
  /** The first and the last stay, the rest share the room between. */
  | { readonly kind: 'fixed ends' }
  /** One gap (mm); the group keeps its middle, or what of it lets all stay on the surface. */
  | { readonly kind: 'fixed gap'; readonly gapMm: number }
  /** One gap between neighbours and at both ends of the surface. */
  | { readonly kind: 'fill' };

export interface Distributed {
  /** Centres by box in the order given, whole mm, so that gaps may differ by 1 mm; none where they do not fit. */
  readonly places: readonly { readonly xMm: number; readonly yMm: number }[];
  /** The gap between neighbours before rounding (mm). */
  readonly gapMm: number;
  readonly issues: readonly Issue[];
}

/**
 * Boxes given equal gaps across or up, in the order they stand in now; only that coordinate changes. Where they do not
 * fit there are no places and an issue says by how much (mm). `surface` is needed to fill it, and otherwise keeps the
 * group on it. RangeError for a negative gap, or for filling without a surface. Common practice.
 */
export function distribute(
  boxes: readonly Box[],
  axis: 'across' | 'up',
  how: Distribution,
  surface?: Extent,
): Distributed {
  if (how.kind === 'fixed gap' && !(how.gapMm >= 0))
    throw new RangeError(`gapMm is ${how.gapMm}; it must be 0 or more`);
  if (how.kind === 'fill' && surface === undefined) throw new RangeError('surface is undefined; filling needs one');
  if (boxes.length === 0) return { places: [], gapMm: 0, issues: [] };
  const across = axis === 'across';
  const spans = boxes.map((box) => spanOf(extentOf(box), across));
  const order = boxes.map((_, i) => i).sort((a, b) => middleOf(spans[a]!) - middleOf(spans[b]!) || a - b);
  const sizes = order.map((i) => spans[i]!.high - spans[i]!.low);
  const sum = sizes.reduce((total, size) => total + size, 0);
  const edges = surface === undefined ? undefined : spanOf(surface, across);
  const [first, last] = [spans[order[0]!]!, spans[order[order.length - 1]!]!];
  const gaps = boxes.length - 1;
  let gapMm = 0;
  let low = first.low;
  if (how.kind === 'fixed gap') {
    gapMm = how.gapMm;
    const length = sum + gaps * gapMm;
    if (edges !== undefined && length > edges.high - edges.low)
      return none(gapMm, 'longer than the surface, by so many mm', length - (edges.high - edges.low));
    low = (Math.min(...spans.map((s) => s.low)) + Math.max(...spans.map((s) => s.high)) - length) / 2;
    if (edges !== undefined) low = Math.min(Math.max(low, edges.low), edges.high - length);
  } else if (how.kind === 'fill') {
    gapMm = (edges!.high - edges!.low - sum) / (boxes.length + 1);
    if (gapMm < 0) return none(gapMm, 'longer together than the surface, by so many mm', -gapMm * (boxes.length + 1));
    low = edges!.low + gapMm;
  } else if (gaps > 0) {
    gapMm = (last.high - first.low - sum) / gaps;
    if (gapMm < 0) return none(gapMm, 'longer together than the room between the ends, by so many mm', -gapMm * gaps);
  }
  const centres: number[] = [];
  order.forEach((i, turn) => {
    const size = sizes[turn]!;
    const centre = Math.round(low + size / 2);
    const [lowest, highest] = edges
      ? [Math.ceil(edges.low + size / 2), Math.floor(edges.high - size / 2)]
      : [-Infinity, Infinity];
    centres[i] = how.kind === 'fixed ends' ? centre : Math.min(highest, Math.max(lowest, centre));
    low += size + gapMm;
  });
  const moved = boxes.map((box, i) => (across ? { ...box, xMm: centres[i]! } : { ...box, yMm: centres[i]! }));
  return {
    places: moved.map(({ xMm, yMm }) => ({ xMm, yMm })),
    gapMm,
    issues: [],
  };
}

function none(gapMm: number, what: string, value: number): Distributed {
  return { places: [], gapMm, issues: [{ where: 'pieces', what, value }] };
}

interface Span {
  readonly low: number;
  readonly high: number;
}

function spanOf({ leftMm, rightMm, bottomMm, topMm }: Extent, across: boolean): Span {
  return across ? { low: leftMm, high: rightMm } : { low: bottomMm, high: topMm };
}

function middleOf({ low, high }: Span): number {
  return (low + high) / 2;
}
