/** The orders a deck can be read in, and finding in it. Pure. */
import type { Paint } from '@enfilade/shared/schema';

export const DECK_ORDERS = ['darkest first', 'by name', 'on walls first', 'as in the deck'] as const;
export type DeckOrder = (typeof DECK_ORDERS)[number];

interface Ordered {
  readonly id: string;
  readonly paint: Pick<Paint, 'name' | 'order'>;
  readonly lrv: { readonly lrv: number };
  readonly surfaces: readonly string[];
}

/** A copy in that order; ties as in the deck. */
export function inOrder<E extends Ordered>(entries: readonly E[], order: DeckOrder): E[] {
  const inDeck = (a: E, b: E): number => (`${a.paint.order} ${a.id}` < `${b.paint.order} ${b.id}` ? -1 : 1);
  const by: Record<DeckOrder, (a: E, b: E) => number> = {
    'darkest first': (a, b) => a.lrv.lrv - b.lrv.lrv,
    'by name': (a, b) => a.paint.name.localeCompare(b.paint.name, 'en'),
    'on walls first': (a, b) => Number(b.surfaces.length > 0) - Number(a.surfaces.length > 0),
    'as in the deck': () => 0,
  };
  return [...entries].sort((a, b) => by[order](a, b) || inDeck(a, b));
}

/** Whether every word typed is in the paint's name, code or sheen. */
export function matching({ name, code, sheen }: Pick<Paint, 'name' | 'code' | 'sheen'>, typed: string): boolean {
  const text = `${name} ${code ?? ''} ${sheen ?? ''}`.toLowerCase();
  return typed
    .toLowerCase()
    .split(/\s+/)
    .every((word) => text.includes(word));
}
