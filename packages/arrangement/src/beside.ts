import { type Box, type Extent, inside, overlaps } from './boxes.ts';
import { nearestFree, type Obstacle, type Spot } from './nearest-free.ts';

export interface BesideTask {
  /** What it is to be beside: its centre, its width as faced, and how it is turned (degrees clockwise, y up). */
  readonly anchor: { readonly xMm: number; readonly yMm: number; readonly widthMm: number };
  readonly turnDegrees: number;
  /** What is to come there, turned alike: across as faced, and up (on a wall) or deep (on a floor). */
  readonly own: { readonly widthMm: number; readonly heightMm: number };
  /** How far from the anchor's centre its own may lie, up or back, the best first. */
  readonly offsetsMm: readonly number[];
  readonly gapMm: number;
  /** All it may not cover, the anchor too, each with the gap to be left to it. */
  readonly obstacles: readonly Obstacle[];
  readonly surface: Extent;
}

export interface Beside extends Spot {
  /** The side as faced; null where there is no room on either and it is only the nearest place that is free. */
  readonly side: 'left' | 'right' | null;
}

/** Where the gaps asked for find no room anywhere, this share of them is tried (own rule). */
const CLOSER = 0.25;

/**
 * The place beside a thing (whole mm, the centre): at the gap, at the first offset that is free on a side, and where it is
 * free on both, towards the middle of the surface. Else the free place nearest to there; undefined where there is none.
 */
export function besideOf(task: BesideTask): Beside | undefined {
  const { anchor, own, offsetsMm, obstacles, surface, turnDegrees, gapMm } = task;
  const turn = (turnDegrees * Math.PI) / 180;
  const [c, s] = [Math.cos(turn), Math.sin(turn)];
  const [cw, sw] = [Math.abs(c), Math.abs(s)];
  const box = { widthMm: own.widthMm * cw + own.heightMm * sw, heightMm: own.widthMm * sw + own.heightMm * cw };
  // Never nearer than asked once it is in whole mm.
  const along = Math.ceil((anchor.widthMm + own.widthMm) / 2 + gapMm);
  const middleMm = (surface.leftMm + surface.rightMm) / 2;
  const spotAt = (dx: number, dy: number): Box => ({
    ...box,
    xMm: awayFrom(anchor.xMm, dx * c + dy * s),
    yMm: awayFrom(anchor.yMm, -dx * s + dy * c),
  });
  const free = (at: Box, share: number) =>
    inside(at, surface) && !obstacles.some((other) => overlaps(at, other, other.gapMm * share));
  for (const offset of offsetsMm) {
    const sides = (['right', 'left'] as const).map((side) => ({
      side,
      at: spotAt(side === 'right' ? along : -along, offset),
    }));
    sides.sort((a, b) => Math.abs(a.at.xMm - middleMm) - Math.abs(b.at.xMm - middleMm));
    const found = sides.find(({ at }) => free(at, 1));
    if (found !== undefined) return { xMm: found.at.xMm, yMm: found.at.yMm, side: found.side };
  }
  const wanted = { ...box, xMm: anchor.xMm, yMm: spotAt(0, offsetsMm[0] ?? 0).yMm };
  for (const share of [1, CLOSER]) {
    const spot = nearestFree(
      wanted,
      obstacles.map((other) => ({ ...other, gapMm: other.gapMm * share })),
      surface,
    );
    if (spot !== undefined) return { ...spot, side: null };
  }
  return undefined;
}

/** Whole mm, and never nearer to where it starts. */
function awayFrom(fromMm: number, byMm: number): number {
  return byMm < 0 ? Math.floor(fromMm + byMm + 1e-7) : Math.ceil(fromMm + byMm - 1e-7);
}
