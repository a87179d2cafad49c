/** What lies along the foot: the unplaced on their rail, the deck of paints for a wall, or candidates to try. */
import type { SurfaceId } from '@enfilade/shared/schema';
import { paintTrial, Store, trial, useStore } from '../selection.ts';
import type { HaloTask } from '../workers/halo-task.ts';

export type Foot =
  | { readonly kind: 'rail' }
  | { readonly kind: 'deck'; readonly surface: SurfaceId }
  | { readonly kind: 'candidates'; readonly task: HaloTask };

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

export function openCandidates(task: HaloTask): void {
  trial.set(null);
  paintTrial.set(null);
  foot.set({ kind: 'candidates', task });
}

/** Back to the rail; whatever was being tried goes back. */
export function closeFoot(): void {
  trial.set(null);
  paintTrial.set(null);
  foot.set(RAIL);
}
