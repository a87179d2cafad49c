/** What this person asks of a paint, work by work: said on the opened card, answered in the deck. */
import type { Wish } from '@enfilade/colour/rank-wishes';
import type { DeskWork } from '@enfilade/shared/colour-desk';
import type { WorkWish } from '@enfilade/shared/paint-wishes';
import { Store } from '../selection.ts';

/** By the id of the work on the desk. */
export const wishes = new Store<ReadonlyMap<string, WorkWish>>(new Map());

/** The same again takes it back. */
export function wishFor(work: DeskWork, wish: Wish): void {
  const next = new Map(wishes.get());
  if (next.get(work.id)?.wish === wish) next.delete(work.id);
  else next.set(work.id, { work, wish });
  wishes.set(next);
}

export function wishForAll(works: readonly DeskWork[], wish: Wish): void {
  const next = new Map(wishes.get());
  for (const work of works) if (!next.has(work.id)) next.set(work.id, { work, wish });
  wishes.set(next);
}

export function forgetWishes(): void {
  wishes.set(new Map());
}
