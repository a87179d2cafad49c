import type { Ground, Thing } from './halo-ground.ts';

/** 1 when two things that face each other stand exactly on one axis, falling to 0 at a third of the smaller. */
export function straightness(piece: Thing, x: number, y: number, other: Thing): number {
  const [dx, dy] = [Math.abs(x - other.x), Math.abs(y - other.y)];
  const facesUp = dx < piece.halfWidth + other.halfWidth;
  const off = facesUp
    ? dx / Math.min(piece.halfWidth, other.halfWidth)
    : dy / Math.min(piece.halfHeight, other.halfHeight);
  return Math.max(0, 1 - off * 1.5);
}

/** What it costs to stand straight over, under or beside a neighbour: columns and rows look meant, and are not. */
export function alignmentMm(
  ground: Ground,
  piece: Thing,
  x: number,
  y: number,
  costMm: number,
  sizeMm: number,
): number {
  let cost = 0;
  ground.some(x, y, piece.halfWidth + sizeMm, piece.halfHeight + sizeMm, (other) => {
    if (other.kind === 'piece') cost += straightness(piece, x, y, other) * costMm;
    return false;
  });
  return cost;
}
