/** What lies along the foot: the unplaced on their rail, the deck of paints for a wall, or candidates to try. */
import type { ArrangeWish } from '@enfilade/shared/arrange-task';
import type { SurfaceId } from '@enfilade/shared/schema';
import { paintTrial, Store, trial, useStore } from '../selection.ts';

export type Foot =
  | { readonly kind: 'rail' }
  | { readonly kind: 'deck'; readonly surface: SurfaceId }
  | { readonly kind: 'candidates'; readonly asked: ArrangeAsked };

/** Ways asked for: mine, or somebody else's I look at too. */
export interface ArrangeAsked {
  readonly wish: ArrangeWish;
  readonly round: number;
  /** Digests of what was shown before. */
  readonly shown: readonly string[];
  /** Begun by somebody else: what one tries is seen by them too. */
  readonly together: boolean;
}

const RAIL: Foot = { kind: 'rail' };
const foot = new Store<Foot>(RAIL);

export function useFoot(): Foot {
  return useStore(foot);
}

export function openDeck(surface: SurfaceId): void {
  trial.set(null);
  paintTrial.set(null);
  foot.set({ kind: 'deck', surface });
}

export function openCandidates(wish: ArrangeWish): void {
  openTogether({ wish, round: 1, shown: [], together: false });
}

/** The ways somebody else looks at, as they see them. */
export function openTogether(asked: ArrangeAsked): void {
  trial.set(null);
  paintTrial.set(null);
  foot.set({ kind: 'candidates', asked });
}

/** Back to the rail; whatever was being tried goes back. */
export function closeFoot(): void {
  trial.set(null);
  paintTrial.set(null);
  foot.set(RAIL);
}
