import { hangGroundOf } from './hang-ground.ts';
import type { Places } from './hang-line.ts';
import type { HangTask } from './hang-task.ts';
import { middleOf } from './salon-massed.ts';

/** So many times the next largest: the rest can only go round it (own rule). */
const DOMINATES = 3;

/** The piece that has its place first: the focal one where one is named, else one that is far larger than all others. */
function dominantOf({ pieces, focal }: HangTask): number | undefined {
  if (focal !== undefined) return pieces[focal]?.pinnedAt ? undefined : focal;
  const area = (i: number) => pieces[i]!.widthMm * pieces[i]!.heightMm;
  const free = pieces.flatMap((piece, i) => (piece.pinnedAt ? [] : [i]));
  const [first, second] = free.sort((a, b) => area(b) - area(a) || a - b);
  if (first === undefined || second === undefined) return undefined;
  return area(first) >= DOMINATES * area(second) ? first : undefined;
}

/** A way in which what dominates hangs first, in the middle of the widest clear stretch, and the others with it. */
export function withDominant(way: (task: HangTask) => Places): (task: HangTask) => Places {
  return (task) => {
    const first = dominantOf(task);
    if (first === undefined) return way(task);
    const ground = hangGroundOf(task);
    if (!ground.put(first, middleOf({ ...task, focal: first }), task.centreLineMm)) return way(task);
    const pinnedAt = ground.places[first]!;
    return way({ ...task, pieces: task.pieces.map((piece, i) => (i === first ? { ...piece, pinnedAt } : piece)) });
  };
}
