import { type Box, type Extent, TOUCH_MM } from './boxes.ts';
import type { Obstacle } from './nearest-free.ts';

/** A thing on the ground while a halo is made. Pieces move; the focal work and what is kept clear don't. */
export interface Thing {
  x: number;
  y: number;
  readonly halfWidth: number;
  readonly halfHeight: number;
  readonly kind: 'focal' | 'clear' | 'piece';
  /** The least gap anything must leave to this. */
  readonly leastMm: number;
  /** The gap this would like, over the least one. */
  readonly ease: number;
  /** By piece; −1 for the others. */
  readonly index: number;
  /** How often its borders were searched in vain since they last gave a place. */
  spent: number;
}

export interface Ground {
  readonly things: Thing[];
  readonly add: (thing: Thing) => void;
  /** Every thing that may lie within the rectangle, at least once each; stops at the first that answers true. */
  readonly some: (
    x: number,
    y: number,
    halfWidth: number,
    halfHeight: number,
    is: (thing: Thing) => boolean,
  ) => boolean;
}

/** An empty ground whose things are found by square cells (mm). */
export function groundOf(surface: Extent, cellMm: number): Ground {
  const columns = Math.max(1, Math.min(64, Math.ceil((surface.rightMm - surface.leftMm) / cellMm)));
  const rows = Math.max(1, Math.min(64, Math.ceil((surface.topMm - surface.bottomMm) / cellMm)));
  const perX = columns / Math.max(1, surface.rightMm - surface.leftMm);
  const perY = rows / Math.max(1, surface.topMm - surface.bottomMm);
  const columnOf = (x: number) => Math.min(columns - 1, Math.max(0, Math.floor((x - surface.leftMm) * perX)));
  const rowOf = (y: number) => Math.min(rows - 1, Math.max(0, Math.floor((y - surface.bottomMm) * perY)));
  const cells: Thing[][] = Array.from({ length: columns * rows }, () => []);
  const things: Thing[] = [];
  return {
    things,
    add(thing) {
      things.push(thing);
      const last = columnOf(thing.x + thing.halfWidth);
      const top = rowOf(thing.y + thing.halfHeight);
      for (let row = rowOf(thing.y - thing.halfHeight); row <= top; row++)
        for (let column = columnOf(thing.x - thing.halfWidth); column <= last; column++)
          cells[row * columns + column]!.push(thing);
    },
    some(x, y, halfWidth, halfHeight, is) {
      const last = columnOf(x + halfWidth);
      const top = rowOf(y + halfHeight);
      for (let row = rowOf(y - halfHeight); row <= top; row++)
        for (let column = columnOf(x - halfWidth); column <= last; column++)
          for (const thing of cells[row * columns + column]!) if (is(thing)) return true;
      return false;
    },
  };
}

/** Whether a piece standing at (x, y) comes nearer to a thing than the gap, both across and up. */
export function tooNear(piece: Thing, x: number, y: number, other: Thing, gapMm: number): boolean {
  return (
    Math.abs(x - other.x) - piece.halfWidth - other.halfWidth < gapMm - TOUCH_MM &&
    Math.abs(y - other.y) - piece.halfHeight - other.halfHeight < gapMm - TOUCH_MM
  );
}

/** The gap a piece would like to leave to a thing: from the least at level 0 to both their ease at level 1. */
export function wantedMm(piece: Thing, other: Thing, level: number): number {
  if (other.kind === 'clear') return other.leastMm;
  return other.leastMm * (1 + level * ((piece.ease + other.ease) / 2 - 1));
}

export function boxOf(thing: Thing): Box {
  return { xMm: thing.x, yMm: thing.y, widthMm: 2 * thing.halfWidth, heightMm: 2 * thing.halfHeight };
}

/** The thing as it stands, with its least gap. */
export function obstacleOf(thing: Thing): Obstacle {
  return { ...boxOf(thing), gapMm: thing.leastMm };
}
