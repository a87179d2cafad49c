/** Taking an arrangement: one act, whatever it moves and whatever finds no room. */
import type { Act } from './acts.ts';
import type { Arrangement, ArrangeTask } from './arrange-task.ts';
import { KIND_WORDS } from './arrangement-words.ts';
import * as commands from './commands.ts';
import type { Judgements } from './judgements.ts';
import { carrierOf, type PieceId } from './schema.ts';

/** What found no room and is where the others go now: it would be in their way, so it is taken down. */
export function takenDown(judgements: Judgements, task: ArrangeTask, way: Arrangement): PieceId[] {
  const ons = new Set(way.places.map(([, at]) => at[0]));
  if (task.kind !== 'plinths') ons.add(task.wish.surface);
  return way.unplaced.filter((pieceId) => {
    const on = judgements.where.placeOf(pieceId)?.[0];
    return on !== undefined && (ons.has(on) || carrierOf(on)?.pieceId === task.wish.carrier);
  });
}

/** @throws RangeError where something would stand on what it carries. */
export function takeArrangement(judgements: Judgements, task: ArrangeTask, way: Arrangement): Act {
  const { documents } = judgements;
  const name = `arrange ${way.places.length} pieces: ${KIND_WORDS[task.wish.kind]}`;
  const hung = commands.place(documents, new Map(way.places), name);
  const down = takenDown(judgements, task, way);
  const moved = new Set(way.places.map(([pieceId]) => pieceId));
  const gone = down.length === 0 ? [] : commands.unplace(documents, down).changes;
  return { name, changes: [...hung.changes, ...gone.filter(({ key }) => !moved.has(key))] };
}
