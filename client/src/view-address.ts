/** Which page is on screen, kept in the address so that it can be sent, reloaded and gone back from. */
import type { PaintId, RoomId, SurfaceId } from '@enfilade/shared/schema';
import type { ProposalId } from '@enfilade/shared/talk';
import { useSyncExternalStore } from 'react';
import { type CollectionView, collectionAddress, collectionViewFrom } from './collection/collection-address.ts';
import { type LikenessWish, wishFrom, wishText } from './likenesses/wish.ts';

export type View =
  | { readonly sheet: 'room'; readonly roomId: RoomId }
  | { readonly sheet: 'wall'; readonly surface: SurfaceId }
  | { readonly sheet: 'layout' }
  /** Asked from the collection, what is brought in goes there. */
  | { readonly sheet: 'bring-in'; readonly into?: 'collection' }
  | { readonly sheet: 'take-out' }
  | { readonly sheet: 'colour' }
  /** The deck, open at one of its paints or not. */
  | { readonly sheet: 'deck'; readonly paintId: PaintId | null }
  | { readonly sheet: 'samples' }
  | { readonly sheet: 'measure'; readonly roomId: RoomId | null }
  /** The list as it stands; as a version froze it; or two of them compared, the earlier first (null: as it stands). */
  | { readonly sheet: 'vignettes'; readonly version?: number; readonly against?: number | null }
  | { readonly sheet: 'proposals' }
  | { readonly sheet: 'remarks' }
  | { readonly sheet: 'waiting' }
  | { readonly sheet: 'history' }
  | { readonly sheet: 'seats' }
  | { readonly sheet: 'loans' }
  /** By what to look, among which, and whether it was asked: two people at one address see the same sets. */
  | { readonly sheet: 'likenesses'; readonly wish?: LikenessWish }
  | { readonly sheet: 'cautions' }
  | ({ readonly sheet: 'collection' } & CollectionView)
  /** One thing brought in by hand, as from a phone. */
  | { readonly sheet: 'one-thing' }
  | { readonly sheet: 'paint-schedule' }
  | { readonly sheet: 'paper'; readonly surface: SurfaceId | null };

/** What is laid over the hang on the stage: nothing, a proposal, or a state kept earlier. */
export type Laid =
  | { readonly kind: 'hang' }
  | { readonly kind: 'proposal'; readonly id: ProposalId }
  | { readonly kind: 'state'; readonly id: string };

export const THE_HANG: Laid = { kind: 'hang' };

/** The pages that show a layer as well as they show the hang; what one does there is done in it. */
const LAID_SHEETS: readonly string[] = ['room', 'wall', 'layout', 'colour', 'likenesses'];

/** The layer an address names before its view: `#in/<proposal>/wall/…`, `#as/<state>/wall/…`. */
export function laidFrom(address: string): Laid {
  const [word, id] = address.replace(/^#/, '').split('/');
  if (word === 'in' && id) return { kind: 'proposal', id };
  if (word === 'as' && id) return { kind: 'state', id };
  return THE_HANG;
}

/** The address of a view. Where a layer is shown it stays in the layer one is in, unless another is named. */
export function toAddress(view: View, laid: Laid = laidFrom(globalThis.location?.hash ?? '')): string {
  const address = addressOf(view);
  if (laid.kind === 'hang' || !LAID_SHEETS.includes(view.sheet)) return `#${address}`;
  return `#${laid.kind === 'proposal' ? 'in' : 'as'}/${laid.id}/${address}`;
}

function addressOf(view: View): string {
  switch (view.sheet) {
    case 'room':
      return `room/${view.roomId}`;
    case 'wall':
      return `wall/${view.surface}`;
    case 'measure':
      return view.roomId === null ? 'measure' : `measure/${view.roomId}`;
    case 'paper':
      return view.surface === null ? 'paper' : `paper/${view.surface}`;
    case 'bring-in':
      return view.into === undefined ? view.sheet : `${view.sheet}/${view.into}`;
    case 'likenesses':
      return view.wish === undefined ? view.sheet : `${view.sheet}/${wishText(view.wish)}`;
    case 'deck':
      return view.paintId === null ? 'deck' : `deck/${view.paintId}`;
    case 'vignettes': {
      const { sheet, version, against } = view;
      if (version === undefined) return sheet;
      return against === undefined ? `${sheet}/${version}` : `${sheet}/${version}/against/${against ?? 'now'}`;
    }
    case 'collection': {
      const part = collectionAddress(view);
      return part === '' ? view.sheet : `${view.sheet}/${part}`;
    }
    default:
      return view.sheet;
  }
}

const PLAIN = [
  'layout',
  'take-out',
  'colour',
  'samples',
  'proposals',
  'remarks',
  'waiting',
  'history',
  'seats',
  'loans',
  'cautions',
  'one-thing',
  'paint-schedule',
] as const;

/** The view an address names, or null when it names none (the first room is shown then). */
export function viewFrom(address: string): View | null {
  const parts = address.replace(/^#/, '').split('/');
  const [sheet, ...rest] = laidFrom(address).kind === 'hang' ? parts : parts.slice(2);
  const about = rest.join('/');
  if (sheet === 'room' && about) return { sheet, roomId: about };
  if (sheet === 'wall' && about) return { sheet, surface: about };
  if (sheet === 'measure') return { sheet, roomId: about || null };
  if (sheet === 'paper') return { sheet, surface: about || null };
  if (sheet === 'bring-in') return about === 'collection' ? { sheet, into: about } : { sheet };
  if (sheet === 'deck') return { sheet, paintId: about || null };
  if (sheet === 'collection') return { sheet, ...collectionViewFrom(about) };
  if (sheet === 'vignettes') return vignettesFrom(about);
  if (sheet === 'likenesses') {
    const wish = wishFrom(about);
    return wish === null ? { sheet } : { sheet, wish };
  }
  const plain = PLAIN.find((name) => name === sheet);
  if (plain !== undefined) return { sheet: plain };
  return null;
}

function vignettesFrom(about: string): View {
  const [, version, against] = /^(\d{1,9})(?:\/against\/(\d{1,9}|now))?$/.exec(about) ?? [];
  if (version === undefined) return { sheet: 'vignettes' };
  const frozen = { sheet: 'vignettes', version: Number(version) } as const;
  return against === undefined ? frozen : { ...frozen, against: against === 'now' ? null : Number(against) };
}

export function go(view: View, laid?: Laid): void {
  location.hash = laid === undefined ? toAddress(view) : toAddress(view, laid);
}

export function useAddress(): string {
  return useSyncExternalStore(
    (tell) => {
      addEventListener('hashchange', tell);
      return () => removeEventListener('hashchange', tell);
    },
    () => location.hash,
  );
}
