import type { Box, Extent } from './boxes.ts';
import type { HangPiece, HangTask } from './hang-task.ts';
import { nearestFree, type Obstacle, type Spot } from './nearest-free.ts';

/** 25 lb, from where one hook is no longer taken to be enough. Common practice, no source. */
const HEAVY_KG = 11.3;

/** A wall being hung: pinned pieces and what is kept clear stand already; nothing is ever put where it breaks a rule. */
export interface HangGround {
  readonly places: (Spot | null)[];
  /** Those not pinned, by index. */
  readonly free: readonly number[];
  /** Puts a piece at the nearest place to where it is wanted, no farther than `withinMm`; false where there is none. */
  readonly put: (piece: number, xMm: number, yMm: number, withinMm?: number) => boolean;
}

export function hangGroundOf(task: HangTask): HangGround {
  const { pieces, gapMm } = task;
  const obstacles: Obstacle[] = task.keepClear.map((box) => ({ ...box, gapMm }));
  const places = pieces.map((piece) => piece.pinnedAt ?? null);
  for (const piece of pieces) if (piece.pinnedAt) obstacles.push(obstacleOf(piece, piece.pinnedAt, gapMm));
  return {
    places,
    free: pieces.flatMap((piece, i) => (piece.pinnedAt ? [] : [i])),
    put(piece, xMm, yMm, withinMm = Infinity) {
      const size = pieces[piece]!;
      const wanted: Box = { xMm, yMm, widthMm: size.widthMm, heightMm: size.heightMm };
      const spot = nearestFree(wanted, obstacles, surfaceFor(task, size), withinMm);
      if (spot === undefined) return false;
      places[piece] = spot;
      obstacles.push(obstacleOf(size, spot, gapMm));
      return true;
    },
  };
}

/** Where a piece may be: a heavy one only below reach, unless that is waived. */
export function surfaceFor(task: HangTask, piece: HangPiece): Extent {
  const heavy = (piece.weightKg ?? 0) >= (task.heavyKg ?? HEAVY_KG);
  if (!heavy || task.heavyMayHangHigh === true || task.reachMm === undefined) return task.surface;
  return { ...task.surface, topMm: Math.min(task.surface.topMm, task.reachMm) };
}

/** The piece the others are hung round: the one named, else the largest not pinned, else the largest. */
export function focalOf(task: HangTask): number {
  if (task.focal !== undefined) return task.focal;
  const sizes = task.pieces.map((piece) => piece.widthMm * piece.heightMm * (piece.pinnedAt ? 1e-6 : 1));
  return sizes.indexOf(Math.max(...sizes));
}

/** RangeError naming what cannot be worked with. */
export function checkHang(task: HangTask): void {
  task.pieces.forEach((piece, i) => {
    for (const what of ['widthMm', 'heightMm'] as const)
      if (!(piece[what] > 0 && piece[what] < Infinity))
        throw new RangeError(`pieces[${i}].${what} is ${piece[what]}; it must be above 0`);
  });
  if (!(task.gapMm >= 0)) throw new RangeError(`gapMm is ${task.gapMm}; it must be 0 or more`);
  if (task.focal !== undefined && task.pieces[task.focal] === undefined)
    throw new RangeError(`focal is ${task.focal}; there are ${task.pieces.length} pieces`);
}

function obstacleOf(size: HangPiece, at: Spot, gapMm: number): Obstacle {
  return { ...at, widthMm: size.widthMm, heightMm: size.heightMm, gapMm };
}
