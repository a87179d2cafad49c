import { type Box, type Extent, inside } from './boxes.ts';
import { boxOf, type Thing, tooNear, wantedMm } from './halo-ground.ts';
import { facingGaps, spreadOf } from './measures.ts';

/**
 * Lets placed pieces settle until the gaps on either side of each are what both neighbours would like, keeping the
 * evenest state passed. Each step is of whole mm and is taken only if it breaks no rule, so it can stop at any time.
 * Changes the things' x and y.
 */
export function relaxHalo(
  placed: readonly Thing[],
  focal: Thing,
  clear: readonly Thing[],
  surface: Extent,
  options: {
    readonly passes: number;
    readonly level: number;
    /** Gaps beyond are not counted in the evenness. */
    readonly limitMm: number;
    /** How many wanted gaps away a neighbour still counts. */
    readonly sight: number;
    /** No step takes a top above. */
    readonly reachMm: number;
    readonly goOn: () => boolean;
  },
): void {
  const facers = [...placed, focal];
  const all = [...facers, ...clear];
  const mayStand = (piece: Thing, x: number, y: number) => {
    const box: Box = { xMm: x, yMm: y, widthMm: 2 * piece.halfWidth, heightMm: 2 * piece.halfHeight };
    return (
      (y <= piece.y || y + piece.halfHeight <= options.reachMm) &&
      inside(box, surface) &&
      all.every((other) => other === piece || !tooNear(piece, x, y, other, other.leastMm))
    );
  };
  const cvNow = () => spreadOf(facingGaps(facers.map(boxOf), options.limitMm, placed.length)).cv;
  let best = { cv: cvNow(), at: placed.map(({ x, y }) => ({ x, y })) };
  for (let pass = 0; pass < options.passes && options.goOn(); pass++) {
    let moved = 0;
    for (const piece of placed) {
      const { left, right, above, below } = facingOf(piece, facers, options.level);
      const dx = Math.round(0.6 * towardMm(left, right, options.sight));
      const dy = Math.round(0.6 * towardMm(below, above, options.sight));
      if (dx === 0 && dy === 0) continue;
      const steps = [
        [dx, dy],
        [dx, 0],
        [0, dy],
        [Math.trunc(dx / 2), Math.trunc(dy / 2)],
      ] as const;
      const step = steps.find(([x, y]) => (x !== 0 || y !== 0) && mayStand(piece, piece.x + x, piece.y + y));
      if (step === undefined) continue;
      piece.x += step[0];
      piece.y += step[1];
      moved += Math.abs(step[0]) + Math.abs(step[1]);
    }
    if (pass % 3 === 2 || moved === 0) {
      const cv = cvNow();
      if (cv < best.cv) best = { cv, at: placed.map(({ x, y }) => ({ x, y })) };
    }
    if (moved <= 0.5 * placed.length) break;
  }
  best.at.forEach(({ x, y }, i) => {
    placed[i]!.x = x;
    placed[i]!.y = y;
  });
}

interface Side {
  gap: number;
  wanted: number;
}

function facingOf(piece: Thing, others: readonly Thing[], level: number) {
  const side = (): Side => ({ gap: Infinity, wanted: 0 });
  const sides = { left: side(), right: side(), above: side(), below: side() };
  for (const other of others) {
    if (other === piece) continue;
    const across = Math.abs(other.x - piece.x) - piece.halfWidth - other.halfWidth;
    const up = Math.abs(other.y - piece.y) - piece.halfHeight - other.halfHeight;
    if (across >= 0 === up >= 0) continue;
    const faced =
      across >= 0 ? (other.x > piece.x ? sides.right : sides.left) : other.y > piece.y ? sides.above : sides.below;
    const gap = Math.max(across, up);
    if (gap >= faced.gap) continue;
    faced.gap = gap;
    faced.wanted = wantedMm(piece, other, level);
  }
  return sides;
}

/** How far to go from the lower side to the upper: to share the room as wanted, or to the wanted gap of the only neighbour. */
function towardMm(lower: Side, upper: Side, sight: number): number {
  const lowerNear = lower.gap < sight * lower.wanted;
  const upperNear = upper.gap < sight * upper.wanted;
  if (lowerNear && upperNear) {
    const share = lower.wanted / (lower.wanted + upper.wanted || 1);
    return (lower.gap + upper.gap) * share - lower.gap;
  }
  if (lowerNear) return lower.wanted - lower.gap;
  if (upperNear) return upper.gap - upper.wanted;
  return 0;
}
