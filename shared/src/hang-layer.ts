/** What can be laid over the hang without touching it: the moves of a proposal, or a state kept earlier. */
import type { Change, RawFacts } from './root-snapshot.ts';
import type { Json, RootName } from './schema.ts';

export interface HangLayer {
  /** The root's facts with this layer over them, or null where the layer leaves the root as it is. */
  over(root: RootName, under: RawFacts): RawFacts | null;
  /** The changes to the live documents that make these changes in the layer. @throws RangeError where it is read only. */
  changesFor(changes: readonly Change[]): Change[];
}

/** The hang's roots a layer may hold; settings are not arranged, so they stay the show's. */
export const ARRANGED_ROOTS = ['places', 'memberOf', 'paints', 'vignettes'] as const satisfies readonly RootName[];
export type ArrangedRoot = (typeof ARRANGED_ROOTS)[number];

export function isArranged(root: RootName): root is ArrangedRoot {
  return (ARRANGED_ROOTS as readonly RootName[]).includes(root);
}

/** Every arranged fact, by root and raw key: what a kept state holds. */
export type HangState = { readonly [R in ArrangedRoot]: { readonly [key: string]: Json } };

/** A whole state of the hang as it was; nothing can be changed in it. */
export function layerOfState(state: HangState): HangLayer {
  return {
    over(root) {
      if (!isArranged(root)) return null;
      const facts = new Map(Object.entries(state[root]));
      return { get: (key) => facts.get(key), entries: () => facts.entries(), observe: () => () => {} };
    },
    changesFor() {
      throw new RangeError('a kept state cannot be changed; restore it, or go back to the hang');
    },
  };
}
