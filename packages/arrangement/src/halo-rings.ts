import type { Extent } from './boxes.ts';
import type { Thing } from './halo-ground.ts';
import { type Arc, arcsOf, type Cell, curveOf, type Point, spaced, walked } from './ring-arcs.ts';

/** Powers of the rings' superellipse, rounder first: straight sides read as columns. */
const BOWED = [3, 4, 6, 10];
/** More rings than these read as a grid. */
const MOST_RINGS = 4;

interface Ring {
  readonly arc: Arc;
  readonly cell: Cell;
  readonly holds: number;
}

export interface RingTask {
  readonly surface: Extent;
  readonly focal: Thing;
  readonly clear: readonly Thing[];
  readonly pieces: readonly Thing[];
  readonly reachMm: number;
  /** The gap to aim at, over the least one. */
  readonly ease: number;
}

/** Whether pieces are so alike in size that an even hang of them is a ring, and a packing of them shows columns. */
export function nearlyEqual(pieces: readonly Thing[]): boolean {
  const spread = (values: readonly number[]) => {
    const mean = values.reduce((sum, value) => sum + value, 0) / values.length;
    return Math.sqrt(values.reduce((sum, value) => sum + (value - mean) ** 2, 0) / values.length) / mean;
  };
  return (
    pieces.length > 1 && spread(pieces.map((p) => p.halfWidth)) < 0.2 && spread(pieces.map((p) => p.halfHeight)) < 0.2
  );
}

/**
 * Places for nearly equal pieces on bowed rings round the focal work, equally far along each ring and as dense on
 * every ring: as few rings as hold them all. What stands in the way cuts rings into arcs. Centres in mm by piece,
 * undefined where four rings do not hold them; the caller rounds them and checks the gaps.
 */
export function ringPlaces(task: RingTask, random: () => number): readonly Point[] | undefined {
  const { pieces, ease } = task;
  for (let rings = 1; rings <= MOST_RINGS; rings++)
    for (const tighter of [ease, (ease + 1) / 2, 1]) {
      const arcs = ringsOf(task, rings, tighter);
      const held = arcs.reduce((sum, { holds }) => sum + holds, 0);
      if (held >= pieces.length) return placesOn(arcs, pieces.length, random);
    }
  return undefined;
}

/** So many rings, the innermost bowed out as far as it stays whole. */
function ringsOf(task: RingTask, rings: number, ease: number): Ring[] {
  const { focal, pieces } = task;
  const halfWidth = Math.max(...pieces.map((piece) => piece.halfWidth));
  const halfHeight = Math.max(...pieces.map((piece) => piece.halfHeight));
  const gap = Math.max(1, (pieces[0]?.leastMm ?? 0) * ease);
  const cell = { width: 2 * halfWidth + gap + 1, height: 2 * halfHeight + gap + 1 };
  const a = focal.halfWidth + halfWidth + Math.max(1, focal.leastMm * ease);
  const b = focal.halfHeight + halfHeight + Math.max(1, focal.leastMm * ease);
  const bowed = BOWED.map((power) =>
    Array.from({ length: rings }, (_, ring) => {
      const out = 2 ** (1 / power);
      const curve = curveOf(focal, a * out + ring * cell.width, b * out + ring * cell.height, power);
      return arcsOf(curve, (point) => free(task, point, halfWidth, halfHeight)).map((arc) => {
        return { arc, cell, holds: walked(arc, 1, cell).length };
      });
    }),
  );
  return (bowed.find(([first]) => first?.[0]?.arc.closed) ?? bowed[0]!).flat();
}

function placesOn(arcs: readonly Ring[], pieces: number, random: () => number): Point[] {
  const counts = shares(
    arcs.map(({ holds }) => holds),
    pieces,
  );
  const places: Point[] = [];
  arcs.forEach(({ arc, cell }, i) => {
    const tries = places.length === 0 ? [random() < 0.5 ? 0 : 0.5] : Array.from({ length: 12 }, () => random());
    const options = tries.map((phase) => spaced(arc, counts[i]!, cell, phase));
    const worth = options.map((option) => columnsOf(option, places, cell));
    places.push(...options[worth.indexOf(Math.min(...worth))]!);
  });
  return places;
}

function free({ surface, clear, reachMm }: RingTask, { x, y }: Point, halfWidth: number, halfHeight: number): boolean {
  const top = Math.min(surface.topMm, reachMm);
  if (x - halfWidth < surface.leftMm + 1 || x + halfWidth > surface.rightMm - 1) return false;
  if (y - halfHeight < surface.bottomMm + 1 || y + halfHeight > top - 1) return false;
  return clear.every(
    (other) =>
      Math.abs(x - other.x) - halfWidth - other.halfWidth > other.leastMm + 1 ||
      Math.abs(y - other.y) - halfHeight - other.halfHeight > other.leastMm + 1,
  );
}

/** The whole shared out in proportion, by largest remainder, to none more than it holds. */
function shares(holds: readonly number[], whole: number): number[] {
  const sum = holds.reduce((total, hold) => total + hold, 0);
  const counts = holds.map((hold) => Math.floor((hold * whole) / sum));
  const order = holds
    .map((hold, i) => ({ i, rest: (hold * whole) / sum - counts[i]! }))
    .sort((p, q) => q.rest - p.rest);
  let left = whole - counts.reduce((total, count) => total + count, 0);
  for (const { i } of order) if (left-- > 0) counts[i]!++;
  return counts;
}

/** How much of a ring stands straight over or beside the rings before it. */
function columnsOf(ring: readonly Point[], before: readonly Point[], cell: Cell): number {
  let cost = 0;
  for (const p of ring)
    for (const q of before) {
      const [across, up] = [Math.abs(p.x - q.x) / cell.width, Math.abs(p.y - q.y) / cell.height];
      if (Math.max(across, up) < 2) cost += Math.max(0, 1 - 3 * Math.min(across, up));
    }
  return cost;
}
